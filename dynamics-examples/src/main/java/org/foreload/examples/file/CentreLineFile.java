package org.foreload.examples.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A measured line as a CSV file: a head line with the names of the columns, then one point a line, in driving order.
 *
 * <p>Columns, in any order: {@code x_m, y_m} in the plane, x east (or any way) and y 90° to its left; and if known {@code
 * width_left_m, width_right_m} from the line to the edges, {@code banking_deg} (positive where the left edge is the lower
 * one: it helps a left turn), {@code grade_percent} (positive uphill). Separated by commas, with decimal points; quotes,
 * CRLF and a byte-order mark are fine.
 */
final class CentreLineFile {

    static final List<String> COLUMNS =
            List.of("x_m", "y_m", "width_left_m", "width_right_m", "banking_deg", "grade_percent");

    /** Fewest points that make a smooth line. */
    private static final int FEWEST = 4;

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setIgnoreEmptyLines(true)
            .setIgnoreSurroundingSpaces(true)
            .setTrim(true)
            .get();

    private final String file;
    private final List<String> columns = new ArrayList<>();

    private CentreLineFile(String file) {
        this.file = file;
    }

    /**
     * Reads a line.
     *
     * @throws InputException if the file or a value in it cannot be used; the field names column and line
     */
    static CentreLine read(Path path, String file) {
        return new CentreLineFile(file).parse(TextFile.read(path, file));
    }

    private CentreLine parse(String text) {
        List<CentreLine.Point> points = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(text, FORMAT)) {
            for (CSVRecord line : parser) {
                if (columns.isEmpty()) {
                    head(line);
                } else {
                    points.add(point(line, parser.getCurrentLineNumber()));
                }
            }
        } catch (CSVException e) {
            throw new InputException(file, null, null, "is not CSV: " + e.getMessage());
        } catch (UncheckedIOException e) {
            throw new InputException(file, null, null, "is not CSV: " + e.getCause().getMessage());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (columns.isEmpty()) {
            throw new InputException(file, null, null, "is empty; it must begin with the columns x_m,y_m");
        }
        if (points.size() < FEWEST) {
            throw new InputException(file, null, points.size() + " points", "must hold at least " + FEWEST);
        }
        return new CentreLine(points, columns.contains("width_left_m"));
    }

    private void head(CSVRecord line) {
        Set<String> seen = new HashSet<>();
        for (String column : line) {
            if (!COLUMNS.contains(column)) {
                String hint = column.contains(";") || column.contains("\t")
                        ? "; columns are separated by commas"
                        : NearestName.of(column, COLUMNS)
                                .map(nearest -> "; did you mean " + nearest + "?")
                                .orElse("; known are " + String.join(", ", COLUMNS));
                throw new InputException(file, "column " + column, null, "unknown column" + hint);
            }
            if (!seen.add(column)) {
                throw new InputException(file, "column " + column, null, "is given twice");
            }
            columns.add(column);
        }
        for (Map.Entry<String, String> pair : Map.of(
                        "x_m", "y_m", "y_m", "x_m", "width_left_m", "width_right_m", "width_right_m", "width_left_m")
                .entrySet()) {
            boolean needed = pair.getKey().length() == 3 || seen.contains(pair.getValue());
            if (needed && !seen.contains(pair.getKey())) {
                throw new InputException(file, "column " + pair.getKey(), "missing", "must be given");
            }
        }
    }

    private CentreLine.Point point(CSVRecord line, long number) {
        if (line.size() != columns.size()) {
            throw new InputException(
                    file, "line " + number, line.size() + " values", "must have " + columns.size() + ", as the head line");
        }
        double widthLeft = number(line, number, "width_left_m", Double.NaN);
        double widthRight = number(line, number, "width_right_m", Double.NaN);
        if (widthLeft < 0 || widthRight < 0) {
            String name = widthLeft < 0 ? "width_left_m" : "width_right_m";
            throw refusal(name, number, line.get(columns.indexOf(name)), "must be a number of 0 or more");
        }
        double banking = number(line, number, "banking_deg", 0);
        if (!(Math.abs(banking) < 90)) {
            throw refusal("banking_deg", number, line.get(columns.indexOf("banking_deg")), "must be between -90 and 90");
        }
        return new CentreLine.Point(
                number(line, number, "x_m", 0),
                number(line, number, "y_m", 0),
                widthLeft,
                widthRight,
                Math.toRadians(banking),
                Math.atan(number(line, number, "grade_percent", 0) / 100));
    }

    private double number(CSVRecord line, long number, String name, double absent) {
        int column = columns.indexOf(name);
        if (column < 0) {
            return absent;
        }
        String text = line.get(column);
        double value = DecimalText.parse(text);
        if (!Double.isFinite(value)) {
            throw refusal(name, number, text, "must be a finite number");
        }
        return value;
    }

    private InputException refusal(String column, long number, String text, String message) {
        return new InputException(file, column + " in line " + number, text, message);
    }
}
