package org.foreload.examples.recording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.foreload.file.InputException;

/**
 * What stands in each column of a file, counted over all its rows: values, texts that are no number, and whether the
 * values ever differ. A cell that cannot be read is reported by line with what stood there; the row is used without it.
 */
final class ColumnCheck {

    /** Share of the filled cells beyond which a column with texts in it is a column of text. */
    private static final double TEXT = 0.5;

    /** Digits of a number that is shown: a change of unit there and back leaves nothing behind them. */
    private static final MathContext SHOWN = new MathContext(9);

    private final String file;
    private final LeftOut leftOut;
    private final Tally[] tallies = new Tally[Quantity.values().length];

    /**
     * @param file for errors
     * @param leftOut takes the cells that cannot be read
     */
    ColumnCheck(String file, LeftOut leftOut) {
        this.file = file;
        this.leftOut = leftOut;
        for (int i = 0; i < tallies.length; i++) {
            tallies[i] = new Tally();
        }
    }

    /** What one column holds. */
    private static final class Tally {

        private long values;
        private long unreadable;
        private double least = Double.POSITIVE_INFINITY;
        private double most = Double.NEGATIVE_INFINITY;
        private long firstLine;
        private String firstText = "";

        long filled() {
            return values + unreadable;
        }

        boolean changes() {
            return least < most;
        }

        boolean text() {
            return unreadable > TEXT * filled();
        }
    }

    /** Whether a number can be meant: far beyond any car, but not beyond reason. NaN cannot. */
    static boolean possible(Quantity quantity, double value) {
        return switch (quantity) {
            case TIME, DISTANCE, X, Y, BRAKE, THROTTLE -> Math.abs(value) < 1e12;
            case SPEED -> value >= -1 && value <= 200;
            case LONGITUDINAL, LATERAL -> Math.abs(value) <= 150;
            case YAW_RATE -> Math.abs(value) <= 20;
            case STEERING -> Math.abs(value) <= 50;
            case LATITUDE -> Math.abs(value) < 90;
            case LONGITUDE -> Math.abs(value) <= 360;
            case LAP -> Math.abs(value) < 1e9;
        };
    }

    /** What loggers write where there is no value: as good as an empty cell. */
    private static final Pattern NOTHING = Pattern.compile("(?i)-+|\\?+|nan|n\\.?/?a\\.?|null|none|nil|inv(alid)?");

    /** Whether a text says that there is no value. */
    static boolean nothing(String text) {
        String bare = text.strip();
        return bare.isEmpty() || NOTHING.matcher(bare).matches();
    }

    /** Whether anything stood in a column. */
    boolean any(Quantity quantity) {
        return tallies[quantity.ordinal()].filled() > 0;
    }

    /** A number that can be meant. */
    void value(Quantity quantity, double value) {
        Tally tally = tallies[quantity.ordinal()];
        tally.values++;
        tally.least = value < tally.least ? value : tally.least;
        tally.most = value > tally.most ? value : tally.most;
    }

    /**
     * A cell that cannot be read.
     *
     * @param quantity what the column holds
     * @param column its header
     * @param text what stood there
     * @param number whether it is a number, but one that cannot be meant
     */
    void unreadable(long line, Quantity quantity, String column, String text, boolean number) {
        Tally tally = tallies[quantity.ordinal()];
        if (tally.unreadable++ == 0) {
            tally.firstLine = line;
            tally.firstText = text;
        }
        leftOut.add(line, column, text, quantity.word() + (number ? " that cannot be" : " that is no number"));
    }

    /** A number that only the rest of its column shows to be none that can be meant. */
    void impossible(long line, Columns.Column column, double value) {
        tallies[column.quantity().ordinal()].values--;
        String text = plain(value / column.factor());
        unreadable(line, column.quantity(), column.header(), text, true);
    }

    private static String plain(double value) {
        return new BigDecimal(value).round(SHOWN).stripTrailingZeros().toPlainString();
    }

    /**
     * What is to be made of the columns.
     *
     * @param channels columns that are used
     * @param ignored columns that are not
     * @param dropped what these hold
     */
    record Verdict(
            List<RecordedFile.FoundChannel> channels, List<RecordedFile.Ignored> ignored, Set<Quantity> dropped) {}

    /**
     * Which columns can be used.
     *
     * @param columns that were found
     * @param rows of the file
     * @param needed what the file cannot do without
     * @throws InputException if a column that is needed holds text, nothing, or one and the same number; an empty one
     *     for a brake is as good as none
     */
    Verdict verdict(List<Columns.Column> columns, long rows, Set<Quantity> needed) {
        if (rows == 0) {
            return new Verdict(List.of(), List.of(), Set.of());
        }
        List<RecordedFile.FoundChannel> channels = new ArrayList<>();
        List<RecordedFile.Ignored> ignored = new ArrayList<>();
        Set<Quantity> dropped = EnumSet.noneOf(Quantity.class);
        boolean moves = moves(Quantity.X, Quantity.Y) || moves(Quantity.LATITUDE, Quantity.LONGITUDE);
        for (Columns.Column column : columns) {
            Quantity quantity = column.quantity();
            Tally tally = tallies[quantity.ordinal()];
            String why = fault(column, tally, moves);
            if (why == null) {
                channels.add(new RecordedFile.FoundChannel(
                        quantity.word(),
                        column.header(),
                        column.unit(),
                        column.guessed(),
                        rows - tally.filled(),
                        tally.unreadable));
            } else if (needed.contains(quantity) && !(quantity == Quantity.BRAKE && tally.filled() == 0)) {
                String value = tally.text() ? tally.firstText : constant(column, tally);
                throw new InputException(file, quantity.word(), value, why + hint(quantity));
            } else {
                ignored.add(new RecordedFile.Ignored(quantity.word(), column.header(), why));
                dropped.add(quantity);
            }
        }
        return new Verdict(channels, ignored, dropped);
    }

    /**
     * Refuses a file whose columns with a course cannot be used, all of them.
     *
     * @throws InputException if so
     */
    void requireCourse(Verdict verdict) {
        Set<String> course = Set.of("lateral", "yaw-rate", "x", "y", "latitude", "longitude");
        boolean known = verdict.channels().stream().anyMatch(one -> course.contains(one.name()));
        verdict.ignored().stream()
                .filter(one -> !known && course.contains(one.name()))
                .findFirst()
                .ifPresent(one -> {
                    throw new InputException(
                            file,
                            one.name(),
                            null,
                            one.reason() + "; without lateral acceleration, yaw rate or position no corner is found");
                });
    }

    /** Why a column cannot be used; null if it can. */
    private String fault(Columns.Column column, Tally tally, boolean moves) {
        if (tally.filled() == 0) {
            return "column " + column.header() + " is empty";
        }
        if (tally.text()) {
            return "column " + column.header() + " is text: " + tally.unreadable + " of " + tally.filled()
                    + " cells are no number that can be, the first in line " + tally.firstLine;
        }
        boolean changes = switch (column.quantity()) {
            // A row is only used where its time or distance rises; a file may hold a single lap.
            case TIME, DISTANCE, LAP -> true;
            // A straight road may lie along an axis: positions stand still where both coordinates do.
            case X, Y, LATITUDE, LONGITUDE -> moves;
            default -> tally.changes();
        };
        return changes
                ? null
                : "column " + column.header() + " never changes: it is " + constant(column, tally) + " in all "
                        + tally.values + " rows that have a value";
    }

    private boolean moves(Quantity one, Quantity other) {
        return tallies[one.ordinal()].changes() || tallies[other.ordinal()].changes();
    }

    /** The number that a column holds throughout, in the unit of the file; null if there is none. */
    private static String constant(Columns.Column column, Tally tally) {
        return tally.values == 0 ? null : plain(tally.least / column.factor());
    }

    private static String hint(Quantity quantity) {
        return switch (quantity) {
            case BRAKE ->
                "; name another by --columns, or leave it out by --columns brake=, and braking is read from the "
                        + "deceleration";
            case SPEED ->
                "; name another by --columns, or leave it out by --columns speed=, if it can be made from time with "
                        + "distance or position";
            case DISTANCE ->
                "; name another by --columns, or leave it out by --columns distance=, and it is made from speed";
            default -> "; name another by --columns";
        };
    }
}
