package org.foreload.examples.recording;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.foreload.file.InputException;

/** Which column of a file holds what: as the user says, and for the rest a guess from names and units. */
final class Columns {

    private Columns() {}

    /**
     * One column that is read.
     *
     * @param quantity what it holds
     * @param index from 0
     * @param header as written
     * @param unit as understood
     * @param factor from the written to the kept unit
     * @param guessed whether nobody said so
     */
    record Column(Quantity quantity, int index, String header, String unit, double factor, boolean guessed) {}

    /**
     * Finds the columns.
     *
     * @param file for errors
     * @param headers of all columns
     * @param units a row of units below the headers; empty texts where there is none
     * @param wish what the user says
     * @throws InputException if the user names a column that is not there
     */
    static Map<Quantity, Column> find(String file, List<String> headers, List<String> units, ColumnWish wish) {
        Map<Quantity, Column> found = new EnumMap<>(Quantity.class);
        wish.columns().forEach((quantity, wanted) -> {
            if (wanted.none()) {
                return;
            }
            int index = headers.indexOf(wanted.header());
            if (index < 0) {
                throw new InputException(
                        file,
                        quantity.word(),
                        wanted.header(),
                        "no such column; there are " + String.join(", ", headers));
            }
            found.put(quantity, column(quantity, index, headers, units, wanted.unit(), false));
        });
        for (Quantity quantity : Quantity.values()) {
            boolean said = wish.columns().containsKey(quantity);
            if (!said) {
                guess(quantity, headers, units, found).ifPresent(column -> found.put(quantity, column));
            }
        }
        return found;
    }

    /** The column that fits best; of two that fit alike one with a unit, then the first. */
    private static Optional<Column> guess(
            Quantity quantity, List<String> headers, List<String> units, Map<Quantity, Column> taken) {
        int best = -1;
        int most = 0;
        for (int i = 0; i < headers.size(); i++) {
            int index = i;
            boolean free = taken.values().stream().noneMatch(column -> column.index() == index);
            Header header = header(quantity, headers.get(i));
            String unit = unitOf(quantity, header, units.get(i));
            boolean fits = unit.isEmpty() || Units.factor(quantity, unit).isPresent();
            Quantity.Fit fit = free && fits ? quantity.fit(header.name(), unit) : Quantity.Fit.NONE;
            int rank = fit == Quantity.Fit.NONE ? 0 : 2 * fit.ordinal() + (unit.isEmpty() ? 0 : 1);
            if (rank > most) {
                best = i;
                most = rank;
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(column(quantity, best, headers, units, "", true));
    }

    /** A header read so that it names the quantity, if it can: {@code Speed km/h} does less its unit. */
    private static Header header(Quantity quantity, String text) {
        Header spaced = Header.spaced(text);
        boolean better = Units.factor(quantity, spaced.unit()).isPresent()
                && quantity.fit(spaced.name(), spaced.unit()) != Quantity.Fit.NONE;
        return better ? spaced : Header.of(text);
    }

    /**
     * The unit in a header, or else in the row below, or else in the name: who calls an acceleration g means shares.
     */
    private static String unitOf(Quantity quantity, Header header, String below) {
        String unit = header.unit().isEmpty() ? below.strip() : header.unit();
        boolean acceleration = quantity == Quantity.LATERAL || quantity == Quantity.LONGITUDINAL;
        return unit.isEmpty()
                        && acceleration
                        && SHARE_OF_GRAVITY.matcher(header.name()).find()
                ? "g"
                : unit;
    }

    private static final Pattern SHARE_OF_GRAVITY = Pattern.compile("^g|\\bg\\b");

    private static Column column(
            Quantity quantity, int index, List<String> headers, List<String> units, String said, boolean guessed) {
        Header header = header(quantity, headers.get(index));
        boolean minus = said.startsWith("-");
        String wanted = minus ? said.substring(1) : said;
        String unit = wanted.isEmpty() ? unitOf(quantity, header, units.get(index)) : wanted;
        double factor = Units.factor(quantity, unit).orElse(unit(quantity));
        String known = Units.factor(quantity, unit).isPresent() ? unit : quantity.unit();
        boolean slowing = quantity == Quantity.LONGITUDINAL && header.name().equals("deceleration");
        return new Column(quantity, index, headers.get(index), known, minus != slowing ? -factor : factor, guessed);
    }

    /** Factor where no unit is written: that of the kept unit. */
    private static double unit(Quantity quantity) {
        return Units.factor(quantity, quantity.unit()).orElse(1.0);
    }
}
