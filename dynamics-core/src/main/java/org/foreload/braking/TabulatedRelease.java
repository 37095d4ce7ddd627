package org.foreload.braking;

import java.util.Arrays;
import java.util.Objects;
import org.foreload.conventions.InvalidValueException;

/** A release shape read from a table, straight between its rows: a shape of one's own, or a measured one. */
public final class TabulatedRelease implements ReleaseShape {

    private static final String FIELD = "release_shape";
    private static final String SHARE = "released";
    private static final String REMAINING = "remaining";

    private final String name;
    private final double[] u;
    private final double[] remaining;

    /** A table called {@code table}; see {@link #TabulatedRelease(String, double[], double[])}. */
    public TabulatedRelease(double[] u, double[] remaining) {
        this("table", u, remaining);
    }

    /**
     * A table of at least two rows.
     *
     * @param name for reports
     * @param u share of the release that has passed, strictly rising from 0 to 1
     * @param remaining share of the peak that is on at each {@code u}, from 1 to 0, never rising
     * @throws InvalidValueException if the table is not of that kind; it names the column, {@code released} or
     *     {@code remaining}, and the row, counted from 1
     */
    public TabulatedRelease(String name, double[] u, double[] remaining) {
        this.name = Objects.requireNonNull(name, "name");
        this.u = Objects.requireNonNull(u, "u").clone();
        this.remaining = Objects.requireNonNull(remaining, "remaining").clone();
        int rows = u.length;
        if (rows < 2 || remaining.length != rows) {
            throw new InvalidValueException(
                    FIELD, rows + " and " + remaining.length + " values", "two columns of the same length, 2 or more");
        }
        require(u[0] == 0, SHARE, 0, u[0], "0 in the first row");
        require(remaining[0] == 1, REMAINING, 0, remaining[0], "1 in the first row");
        require(u[rows - 1] == 1, SHARE, rows - 1, u[rows - 1], "1 in the last row");
        require(remaining[rows - 1] == 0, REMAINING, rows - 1, remaining[rows - 1], "0 in the last row");
        for (int i = 1; i < rows; i++) {
            require(u[i] > u[i - 1] && u[i] <= 1, SHARE, i, u[i], "above " + u[i - 1] + " and at most 1");
            require(
                    remaining[i] <= remaining[i - 1] && remaining[i] >= 0,
                    REMAINING,
                    i,
                    remaining[i],
                    "from 0 to " + remaining[i - 1]);
        }
    }

    private static void require(boolean kept, String column, int row, double value, String allowed) {
        if (!kept) {
            throw new InvalidValueException(FIELD + ", " + column + ", row " + (row + 1), value, allowed);
        }
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public double remaining(double at) {
        int found = Arrays.binarySearch(u, Math.max(0, Math.min(1, at)));
        if (found >= 0) {
            return remaining[found];
        }
        int right = -found - 1;
        if (right == u.length) {
            return Double.NaN; // only a NaN sorts behind 1
        }
        int left = right - 1;
        double share = (at - u[left]) / (u[right] - u[left]);
        return remaining[left] + share * (remaining[right] - remaining[left]);
    }

    @Override
    public double[] kinks() {
        return Arrays.copyOfRange(u, 1, u.length - 1);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TabulatedRelease table
                && name.equals(table.name)
                && Arrays.equals(u, table.u)
                && Arrays.equals(remaining, table.remaining);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * name.hashCode() + Arrays.hashCode(u)) + Arrays.hashCode(remaining);
    }

    @Override
    public String toString() {
        return name;
    }
}
