package org.foreload.file;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Columns of numbers in a CSV file: a head line with the names of the columns, in any order, then one row a line.
 * Separated by commas, with decimal points; quotes, CRLF and a byte-order mark are fine. Errors count rows from 1 at
 * the first one with numbers.
 */
final class NumberColumns {

    private static final ObjectReader READER = CsvMapper.builder()
            .enable(CsvParser.Feature.WRAP_AS_ARRAY)
            .enable(CsvParser.Feature.TRIM_SPACES)
            .enable(CsvParser.Feature.SKIP_EMPTY_LINES)
            .build()
            .readerFor(String[].class);

    private final String file;
    private final List<String> known;
    private final List<String> columns = new ArrayList<>();
    private final Map<String, List<Double>> values = new HashMap<>();
    private int rows;

    private NumberColumns(String file, List<String> known) {
        this.file = file;
        this.known = known;
    }

    /**
     * Reads the columns of a file.
     *
     * @param path where
     * @param file the name that errors give
     * @param known the names that columns may have
     * @throws InputException if the file, a column's name or a value cannot be used; the field names column and row
     */
    static NumberColumns read(Path path, String file, List<String> known) {
        NumberColumns read = new NumberColumns(file, known);
        read.parse(TextFile.read(path, file));
        return read;
    }

    /** Whether the file has this column. */
    boolean has(String column) {
        return columns.contains(column);
    }

    /** Requires a column if {@code needed} holds. */
    void require(String column, boolean needed) {
        if (needed && !has(column)) {
            throw new InputException(file, "column " + column, "missing", "must be given");
        }
    }

    /** Requires the numbers of a column, if it is there, to lie between two that are themselves not allowed. */
    void between(String column, double low, double high, String unit) {
        List<Double> numbers = values.getOrDefault(column, List.of());
        for (int i = 0; i < numbers.size(); i++) {
            if (!(numbers.get(i) > low && numbers.get(i) < high)) {
                throw new InputException(
                        file,
                        column + ", row " + (i + 1),
                        DecimalText.of(numbers.get(i)),
                        "must be between " + DecimalText.of(low) + " and " + DecimalText.of(high) + " " + unit);
            }
        }
    }

    /** The numbers of a column, each times {@code unit}. */
    double[] column(String name, double unit) {
        return values.get(name).stream().mapToDouble(value -> value * unit).toArray();
    }

    private void parse(String text) {
        try (MappingIterator<String[]> lines = READER.readValues(text)) {
            while (lines.hasNextValue()) {
                String[] line = lines.nextValue();
                if (columns.isEmpty()) {
                    head(line);
                } else {
                    row(line);
                }
            }
        } catch (JsonProcessingException e) {
            throw new InputException(file, null, null, "is not CSV: " + e.getOriginalMessage());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (columns.isEmpty()) {
            String first = known.get(0) + "," + known.get(1);
            throw new InputException(file, null, null, "is empty; it must begin with the columns " + first);
        }
    }

    private void head(String[] line) {
        for (String column : line) {
            if (!known.contains(column)) {
                String hint = column.contains(";") || column.contains("\t")
                        ? "; columns are separated by commas"
                        : NearestName.of(column, known)
                                .map(nearest -> "; did you mean " + nearest + "?")
                                .orElse("; known are " + String.join(", ", known));
                throw new InputException(file, "column " + column, null, "unknown column" + hint);
            }
            if (columns.contains(column)) {
                throw new InputException(file, "column " + column, null, "is given twice");
            }
            columns.add(column);
            values.put(column, new ArrayList<>());
        }
    }

    private void row(String[] line) {
        rows++;
        if (line.length != columns.size()) {
            String count = line.length == 1 ? "1 value" : line.length + " values";
            String needed = "must have " + columns.size() + ", as the head line; row 1 is the line below it";
            throw new InputException(file, "row " + rows, count, needed);
        }
        for (int i = 0; i < columns.size(); i++) {
            double value = DecimalText.parse(line[i]);
            if (!Double.isFinite(value)) {
                throw new InputException(file, columns.get(i) + ", row " + rows, line[i], "must be a finite number");
            }
            values.get(columns.get(i)).add(value);
        }
    }
}
