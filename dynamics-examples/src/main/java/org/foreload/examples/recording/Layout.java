package org.foreload.examples.recording;

import com.fasterxml.jackson.core.io.NumberInput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.foreload.file.DecimalText;

/**
 * How a table is written, found from its first lines: some loggers put lines about the session before the header, and a
 * row of units behind it.
 *
 * @param format separator and quotes
 * @param headers of the columns
 * @param units of the columns; empty texts where there is no such row
 * @param before lines before the first row of numbers
 * @param decimalComma whether decimals follow a comma
 */
record Layout(CSVFormat format, List<String> headers, List<String> units, int before, boolean decimalComma) {

    /** Lines in which the header must come. */
    static final int MOST_LINES = 200;

    /** Lines between a header and the numbers: units, and perhaps a blank one. */
    private static final int MOST_BETWEEN = 3;

    private static final char[] SEPARATORS = {',', ';', '\t', '|'};

    private static final Pattern COMMA_NUMBER = Pattern.compile("[+-]?\\d+,\\d+");

    /** The layout with the most columns among all separators; nothing if no header with numbers below it is found. */
    static Optional<Layout> of(List<String> lines) {
        Layout best = null;
        for (char separator : SEPARATORS) {
            CSVFormat format = CSVFormat.DEFAULT
                    .builder()
                    .setDelimiter(separator)
                    .setIgnoreEmptyLines(false)
                    .setIgnoreSurroundingSpaces(separator != '\t')
                    .setTrailingData(true)
                    .setLenientEof(true)
                    .get();
            Layout layout = of(lines, format, separator);
            if (layout != null && (best == null || layout.headers.size() > best.headers.size())) {
                best = layout;
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * What may be wrong with lines that have no layout, for an error: commas that separate and commas before decimals
     * look alike, and then a line of numbers has up to twice as many cells as the names above it.
     */
    static Optional<String> suspicion(List<String> lines) {
        for (int i = 0; i + 1 < lines.size(); i++) {
            int names = lines.get(i).split(",", -1).length;
            String below = lines.get(i + 1);
            int cells = below.split(",", -1).length;
            boolean letters = lines.get(i).chars().filter(Character::isLetter).count() >= names;
            boolean doubled = names >= 3 && cells > names + 1 && cells <= 2 * names;
            if (letters && doubled && DIGITS_AND_COMMAS.matcher(below).matches()) {
                return Optional.of("line " + (i + 1) + " names " + names + " columns and the line below has " + cells
                        + ": separating commas and decimal commas look alike; write semicolons between columns");
            }
        }
        return Optional.empty();
    }

    private static final Pattern DIGITS_AND_COMMAS = Pattern.compile("[\\d,\\s+-]+");

    private static Layout of(List<String> lines, CSVFormat format, char separator) {
        List<List<String>> rows = new ArrayList<>();
        for (String line : lines) {
            rows.add(line.indexOf(separator) < 0 ? List.of(line) : cells(line, format));
        }
        for (int i = 0; i + 1 < rows.size(); i++) {
            List<String> headers = rows.get(i);
            if (headers.size() < 2 || numbers(headers, separator) > 0) {
                continue;
            }
            for (int k = i + 1; k <= i + MOST_BETWEEN && k < rows.size(); k++) {
                List<String> row = rows.get(k);
                // Some loggers end each line with a separator, or leave out the last empty cells.
                boolean fits = Math.abs(row.size() - headers.size()) <= 1;
                if (fits && 2 * numbers(row, separator) >= filled(row) && numbers(row, separator) >= 2) {
                    List<String> units = lastFilled(rows.subList(i + 1, k));
                    return new Layout(
                            format,
                            List.copyOf(headers),
                            padded(units, headers.size()),
                            k,
                            separator != ',' && comma(rows.subList(k, rows.size())));
                }
            }
        }
        return null;
    }

    /** The last of some rows that is not blank, as that of the units is; nothing if all are. */
    private static List<String> lastFilled(List<List<String>> rows) {
        return rows.stream()
                .filter(row -> filled(row) > 0)
                .reduce((before, last) -> last)
                .orElse(List.of());
    }

    private static List<String> padded(List<String> units, int size) {
        List<String> padded = new ArrayList<>(units.subList(0, Math.min(size, units.size())));
        padded.addAll(Collections.nCopies(size - padded.size(), ""));
        padded.replaceAll(unit -> {
            String bare = unit.strip().replaceAll("^[(\\[]|[)\\]]$", "");
            return Units.known(bare) ? bare : "";
        });
        return List.copyOf(padded);
    }

    private static int numbers(List<String> cells, char separator) {
        int count = 0;
        for (String cell : cells) {
            String text = cell.strip();
            boolean number = !Double.isNaN(DecimalText.parse(text))
                    || separator != ',' && COMMA_NUMBER.matcher(text).matches()
                    || !Double.isNaN(ClockText.parse(text));
            count += number ? 1 : 0;
        }
        return count;
    }

    private static int filled(List<String> cells) {
        return (int) cells.stream().filter(cell -> !cell.isBlank()).count();
    }

    private static boolean comma(List<List<String>> rows) {
        boolean commas = false;
        for (List<String> row : rows) {
            for (String cell : row) {
                commas |= COMMA_NUMBER.matcher(cell.strip()).matches();
            }
        }
        return commas;
    }

    /** The cells of a line, which may be quoted. */
    List<String> cells(String line) {
        return cells(line, format);
    }

    private static List<String> cells(String line, CSVFormat format) {
        try (CSVParser parser = CSVParser.parse(line, format)) {
            for (CSVRecord row : parser) {
                return row.toList();
            }
        } catch (IOException | RuntimeException e) {
            return List.of(line);
        }
        return List.of(line);
    }

    /** The number in a cell; NaN if there is none. */
    double number(String cell) {
        double quick = ShortDecimal.parse(cell, decimalComma ? ',' : '.');
        return Double.isNaN(quick) ? longNumber(cell.toCharArray(), 0, cell.length()) : quick;
    }

    /** The same for a cell that is known to hold no {@link ShortDecimal}, as part of a line. */
    double longNumber(char[] line, int start, int end) {
        int from = start;
        int to = end;
        while (from < to && Character.isWhitespace(line[from])) {
            from++;
        }
        while (to > from && Character.isWhitespace(line[to - 1])) {
            to--;
        }
        if (from == to) {
            return Double.NaN;
        }
        if (!plain(line, from, to)) {
            return ClockText.parse(new String(line, from, to - from));
        }
        try {
            return decimalComma
                    ? NumberInput.parseDouble(new String(line, from, to - from).replace(',', '.'), true)
                    : NumberInput.parseDouble(line, from, to - from, true);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    /** Whether there is nothing but what a decimal number is written with: quicker than a pattern, row by row. */
    private boolean plain(char[] line, int from, int to) {
        for (int i = from; i < to; i++) {
            char c = line[i];
            boolean digit = c >= '0' && c <= '9' || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E';
            if (!digit && !(decimalComma && c == ',')) {
                return false;
            }
        }
        return true;
    }
}
