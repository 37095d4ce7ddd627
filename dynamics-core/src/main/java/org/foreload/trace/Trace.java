package org.foreload.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Rising;

/**
 * Columns of numbers over one axis: a run as a table. The first column is the axis.
 *
 * @param columns at least one, all of the same length, each with its own name
 */
public record Trace(List<Column> columns) {

    /** Checks that the columns fit together. */
    public Trace {
        columns = List.copyOf(Objects.requireNonNull(columns, "columns"));
        if (columns.isEmpty()) {
            throw new IllegalArgumentException("a trace needs a column");
        }
        int rows = columns.get(0).size();
        for (Column column : columns) {
            if (column.size() != rows) {
                throw new IllegalArgumentException(
                        "column " + column.name() + " has " + column.size() + " values, not " + rows);
            }
        }
        if (columns.stream().map(Column::name).distinct().count() != columns.size()) {
            throw new IllegalArgumentException("two columns share a name");
        }
    }

    /** Number of rows. */
    public int rows() {
        return columns.get(0).size();
    }

    /** The column of this name, if there is one. */
    public Optional<Column> find(String name) {
        Objects.requireNonNull(name, "name");
        return columns.stream().filter(column -> column.name().equals(name)).findFirst();
    }

    /**
     * The column of this name.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    public Column column(String name) {
        Objects.requireNonNull(name, "name");
        return find(name)
                .orElseThrow(() -> new IllegalArgumentException("no column " + name + "; there are "
                        + columns.stream().map(Column::name).toList()));
    }

    /**
     * One column. Two with the same name, unit and numbers are equal.
     *
     * @param name with the unit at its end: {@code speed_mps}
     * @param unit for people: {@code m/s}; empty for a plain number
     * @param values the numbers; copied
     */
    public record Column(String name, String unit, double[] values) {

        /** Copies the numbers. */
        public Column {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(unit, "unit");
            values = Objects.requireNonNull(values, "values").clone();
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Column column
                    && name.equals(column.name)
                    && unit.equals(column.unit)
                    && Arrays.equals(values, column.values);
        }

        @Override
        public int hashCode() {
            return 31 * Objects.hash(name, unit) + Arrays.hashCode(values);
        }

        /** A copy of the numbers. */
        @Override
        public double[] values() {
            return values.clone();
        }

        /** The number in a row. */
        public double at(int row) {
            return values[row];
        }

        /**
         * The number at a place between rows: straight between them, kept beyond the ends.
         *
         * @param axis a column of two or more rows that rises
         * @param place in its unit; NaN there is NaN here
         */
        public double at(Column axis, double place) {
            return Rising.straight(Objects.requireNonNull(axis, "axis").values, values, place);
        }

        /** Number of rows. */
        public int size() {
            return values.length;
        }
    }

    /** Collects rows, then makes the trace. */
    public static final class Builder {
        private final List<String> names = new ArrayList<>();
        private final List<String> units = new ArrayList<>();
        private final List<double[]> rows = new ArrayList<>();

        /**
         * Adds a column; before the first row.
         *
         * @throws IllegalStateException after it
         */
        public Builder column(String name, String unit) {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(unit, "unit");
            if (!rows.isEmpty()) {
                throw new IllegalStateException("column " + name + " comes after the first row");
            }
            names.add(name);
            units.add(unit);
            return this;
        }

        /** Adds a row with one number per column. */
        public void row(double... numbers) {
            Objects.requireNonNull(numbers, "numbers");
            if (numbers.length != names.size()) {
                throw new IllegalArgumentException(numbers.length + " numbers for " + names.size() + " columns");
            }
            rows.add(numbers.clone());
        }

        /** The trace. */
        public Trace build() {
            List<Column> columns = new ArrayList<>();
            for (int c = 0; c < names.size(); c++) {
                double[] values = new double[rows.size()];
                for (int r = 0; r < values.length; r++) {
                    values[r] = rows.get(r)[c];
                }
                columns.add(new Column(names.get(c), units.get(c), values));
            }
            return new Trace(columns);
        }
    }
}
