package org.foreload.conventions;

import java.util.Arrays;
import java.util.Objects;

/** Reads tables over an axis that rises from row to row. */
public final class Rising {

    private Rising() {}

    /**
     * The cell between two rows that holds a place, by the index of its first row.
     *
     * @param axis two or more strictly rising values
     * @param at where, in the unit of the axis; at a row the cell that begins there
     * @return the outermost cell beyond the ends; the last for NaN
     * @throws NullPointerException if the axis is null; its name is the message
     */
    public static int cell(double[] axis, double at) {
        int found = Arrays.binarySearch(Objects.requireNonNull(axis, "axis"), at);
        return Math.max(0, Math.min(found >= 0 ? found : -found - 2, axis.length - 2));
    }

    /**
     * Straight between the rows, and kept beyond the ends.
     *
     * @param axis two or more strictly rising values
     * @param values one for each of them
     * @param at where, in the unit of the axis
     * @return in the unit of the values; NaN at NaN
     * @throws NullPointerException if an array is null; its name is the message
     */
    public static double straight(double[] axis, double[] values, double at) {
        int i = cell(axis, at);
        double share = Math.max(0, Math.min(1, (at - axis[i]) / (axis[i + 1] - axis[i])));
        return Objects.requireNonNull(values, "values")[i] + share * (values[i + 1] - values[i]);
    }
}
