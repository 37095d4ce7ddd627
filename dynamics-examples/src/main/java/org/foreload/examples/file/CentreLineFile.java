package org.foreload.examples.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.MeasuredLine;

/**
 * A measured line as a CSV file: a head line with the names of the columns, then one point a line, in driving order.
 *
 * <p>Columns, in any order: {@code x_m, y_m} in the plane, right-handed as seen from above (x east, y north, or any
 * frame turned from that); and if known {@code width_left_m, width_right_m} from the line to the edges,
 * {@code banking_deg} (positive where the left edge is the lower one: it helps a left turn), {@code grade_percent}
 * (positive uphill). Separated by commas, with decimal points; quotes, CRLF and a byte-order mark are fine. Errors
 * count rows from 1 at the first point.
 */
final class CentreLineFile {

    static final List<String> COLUMNS =
            List.of("x_m", "y_m", "width_left_m", "width_right_m", "banking_deg", "grade_percent");

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setIgnoreEmptyLines(true)
            .setIgnoreSurroundingSpaces(true)
            .setTrim(true)
            .get();

    private final String file;
    private final List<String> columns = new ArrayList<>();
    private final Map<String, List<Double>> values = new HashMap<>();

    private CentreLineFile(String file) {
        this.file = file;
    }

    /**
     * Reads the columns of a line.
     *
     * @throws InputException if the file or a value in it cannot be used; the field names column and row
     */
    static CentreLineFile read(Path path, String file) {
        CentreLineFile line = new CentreLineFile(file);
        line.parse(TextFile.read(path, file));
        return line;
    }

    /** Whether the edges of the track are known. */
    boolean hasWidths() {
        return columns.contains("width_left_m");
    }

    /**
     * The line.
     *
     * @param halfWidth distance to either edge where the file does not know it, m
     * @throws InputException if the points make no line
     */
    MeasuredLine line(double halfWidth) {
        try {
            MeasuredLine line = MeasuredLine.of(column("x_m", 1), column("y_m", 1), halfWidth);
            if (hasWidths()) {
                line = line.withWidths(column("width_left_m", 1), column("width_right_m", 1));
            }
            if (columns.contains("banking_deg")) {
                line = line.withBankingAngles(column("banking_deg", Math.PI / 180));
            }
            if (columns.contains("grade_percent")) {
                line = line.withGradeFractions(column("grade_percent", 0.01));
            }
            return line;
        } catch (InvalidValueException e) {
            throw refusal(e);
        }
    }

    /** A refusal of the points, which names this file. */
    InputException refusal(InvalidValueException e) {
        return new InputException(file, e.field(), e.value(), "must be " + e.allowed());
    }

    private double[] column(String name, double unit) {
        return values.get(name).stream().mapToDouble(value -> value * unit).toArray();
    }

    private void parse(String text) {
        try (CSVParser parser = CSVParser.parse(text, FORMAT)) {
            for (CSVRecord line : parser) {
                if (columns.isEmpty()) {
                    head(line);
                } else {
                    point(line);
                }
            }
        } catch (CSVException e) {
            throw new InputException(file, null, null, "is not CSV: " + e.getMessage());
        } catch (UncheckedIOException e) {
            throw new InputException(
                    file, null, null, "is not CSV: " + e.getCause().getMessage());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (columns.isEmpty()) {
            throw new InputException(file, null, null, "is empty; it must begin with the columns x_m,y_m");
        }
    }

    private void head(CSVRecord line) {
        for (String column : line) {
            if (!COLUMNS.contains(column)) {
                String hint = column.contains(";") || column.contains("\t")
                        ? "; columns are separated by commas"
                        : NearestName.of(column, COLUMNS)
                                .map(nearest -> "; did you mean " + nearest + "?")
                                .orElse("; known are " + String.join(", ", COLUMNS));
                throw new InputException(file, "column " + column, null, "unknown column" + hint);
            }
            if (columns.contains(column)) {
                throw new InputException(file, "column " + column, null, "is given twice");
            }
            columns.add(column);
            values.put(column, new ArrayList<>());
        }
        require("x_m", true);
        require("y_m", true);
        require("width_left_m", columns.contains("width_right_m"));
        require("width_right_m", columns.contains("width_left_m"));
    }

    private void require(String column, boolean needed) {
        if (needed && !columns.contains(column)) {
            throw new InputException(file, "column " + column, "missing", "must be given");
        }
    }

    private void point(CSVRecord line) {
        int row = values.get("x_m").size() + 1;
        if (line.size() != columns.size()) {
            String count = line.size() == 1 ? "1 value" : line.size() + " values";
            throw new InputException(file, "row " + row, count, "must have " + columns.size() + ", as the head line");
        }
        for (int i = 0; i < columns.size(); i++) {
            double value = DecimalText.parse(line.get(i));
            if (!Double.isFinite(value)) {
                throw new InputException(file, columns.get(i) + ", row " + row, line.get(i), "must be a finite number");
            }
            values.get(columns.get(i)).add(value);
        }
    }
}
