package org.foreload.examples.recording;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
            if (!found.containsKey(quantity)) {
                guess(quantity, headers, units, found).ifPresent(column -> found.put(quantity, column));
            }
        }
        return found;
    }

    /** The column whose name fits and whose unit is one of the quantity's; one with a unit rather than one without. */
    private static Optional<Column> guess(
            Quantity quantity, List<String> headers, List<String> units, Map<Quantity, Column> taken) {
        Column best = null;
        for (int i = 0; i < headers.size(); i++) {
            int index = i;
            boolean free = taken.values().stream().noneMatch(column -> column.index() == index);
            Header header = header(quantity, headers.get(i));
            String unit = unitOf(header, units.get(i));
            boolean fits = unit.isEmpty() || Units.factor(quantity, unit).isPresent();
            if (free && fits && quantity.named(header.name())) {
                Column column = column(quantity, i, headers, units, "", true);
                boolean better = best == null
                        || unitOf(header(quantity, best.header()), units.get(best.index()))
                                        .isEmpty()
                                && !unit.isEmpty();
                best = better ? column : best;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * A header read so that it names the quantity, if it can: {@code Lat g} does as a whole, {@code Speed km/h} less
     * its unit.
     */
    private static Header header(Quantity quantity, String text) {
        Header whole = Header.of(text);
        Header spaced = Header.spaced(text);
        boolean better = !quantity.named(whole.name())
                && quantity.named(spaced.name())
                && Units.factor(quantity, spaced.unit()).isPresent();
        return better ? spaced : whole;
    }

    private static String unitOf(Header header, String below) {
        return header.unit().isEmpty() ? below.strip() : header.unit();
    }

    private static Column column(
            Quantity quantity, int index, List<String> headers, List<String> units, String said, boolean guessed) {
        Header header = header(quantity, headers.get(index));
        boolean minus = said.startsWith("-");
        String wanted = minus ? said.substring(1) : said;
        String unit = wanted.isEmpty() ? unitOf(header, units.get(index)) : wanted;
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
