package org.foreload.examples.recording;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.foreload.file.InputException;

/** Reads a logger's table line by line. */
final class CsvRecording {

    private CsvRecording() {}

    static RecordedFile read(InputStream in, String file, ColumnWish wish, Cut cut, boolean course) throws IOException {
        LineReader lines = new LineReader(TextEncoding.reader(in));
        List<String> head = new ArrayList<>();
        String line = lines.next();
        while (line != null) {
            head.add(line);
            line = head.size() < Layout.MOST_LINES ? lines.next() : null;
        }
        Layout layout = Layout.of(head)
                .orElseThrow(() -> new InputException(
                        file,
                        null,
                        null,
                        "has no line of column names with numbers below it within the first " + Layout.MOST_LINES
                                + " lines"));
        Map<Quantity, Columns.Column> columns = Columns.find(file, layout.headers(), layout.units(), wish);
        require(file, columns, layout.headers(), course);
        LeftOut leftOut = new LeftOut();
        LapCollector collector = new LapCollector(file, cut, columns.keySet(), leftOut);
        List<Columns.Column> used = List.copyOf(columns.values());
        try (CSVParser parser = CSVParser.builder()
                .setReader(new Rest(head.subList(layout.before(), head.size()), lines))
                .setFormat(layout.format())
                .get()) {
            double[] values = new double[Quantity.values().length];
            for (CSVRecord row : parser) {
                long number = layout.before() + row.getRecordNumber();
                if (row.size() == 1 && row.get(0).isBlank()) {
                    continue;
                }
                if (fill(values, row, number, used, layout, leftOut)) {
                    collector.add(number, values);
                }
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        return collector.result(used);
    }

    private static void require(
            String file, Map<Quantity, Columns.Column> columns, List<String> headers, boolean course) {
        boolean position = columns.containsKey(Quantity.X) && columns.containsKey(Quantity.Y)
                || columns.containsKey(Quantity.LATITUDE) && columns.containsKey(Quantity.LONGITUDE);
        String there = "; the columns are " + String.join(", ", headers);
        if (!columns.containsKey(Quantity.TIME) && !columns.containsKey(Quantity.DISTANCE)) {
            throw new InputException(
                    file, "time", "missing", "no column looks like time or distance: name one by --columns" + there);
        }
        if (!columns.containsKey(Quantity.SPEED)
                && !(columns.containsKey(Quantity.TIME) && (columns.containsKey(Quantity.DISTANCE) || position))) {
            throw new InputException(
                    file, "speed", "missing", "no column looks like speed: name one by --columns" + there);
        }
        boolean known = columns.containsKey(Quantity.LATERAL) || columns.containsKey(Quantity.YAW_RATE) || position;
        if (course && !known) {
            throw new InputException(
                    file,
                    "lateral",
                    "missing",
                    "without lateral acceleration, yaw rate or position no corner is found: name one by --columns"
                            + there);
        }
    }

    /** Whether there is anything in the row. */
    private static boolean fill(
            double[] values, CSVRecord row, long line, List<Columns.Column> columns, Layout layout, LeftOut leftOut) {
        Arrays.fill(values, Double.NaN);
        boolean any = false;
        for (Columns.Column column : columns) {
            if (column.index() < row.size()) {
                String cell = row.get(column.index());
                double value = cell.isBlank() ? Double.NaN : layout.number(cell) * column.factor();
                if (Double.isNaN(value) && !cell.isBlank()) {
                    leftOut.add(line, column.quantity().word() + " that is no number: read as missing");
                }
                values[column.quantity().ordinal()] = value;
                any |= !Double.isNaN(value);
            }
        }
        if (!any) {
            leftOut.add(line, "no number in any column that is used");
        }
        return any;
    }

    /** The lines looked at already, then the rest of the file, each ended by LF. */
    private static final class Rest extends Reader {

        private final List<String> head;
        private final LineReader lines;
        private int next;
        private String line = "";
        private int at;

        Rest(List<String> head, LineReader lines) {
            this.head = head;
            this.lines = lines;
            this.at = 1;
        }

        @Override
        public int read(char[] target, int offset, int length) throws IOException {
            int done = 0;
            while (done < length) {
                if (at > line.length()) {
                    line = next < head.size() ? head.get(next++) : lines.next();
                    at = 0;
                    if (line == null) {
                        line = "";
                        at = 1;
                        return done == 0 ? -1 : done;
                    }
                }
                if (at == line.length()) {
                    target[offset + done++] = '\n';
                    at++;
                } else {
                    int count = Math.min(length - done, line.length() - at);
                    line.getChars(at, at + count, target, offset + done);
                    at += count;
                    done += count;
                }
            }
            return done;
        }

        @Override
        public void close() {
            // Whoever opened the file closes it.
        }
    }
}
