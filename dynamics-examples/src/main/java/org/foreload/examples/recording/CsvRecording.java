package org.foreload.examples.recording;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
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
                        Layout.suspicion(head)
                                .orElse("has no line of column names with numbers below it within the first "
                                        + Layout.MOST_LINES + " lines")));
        Map<Quantity, Columns.Column> columns = Columns.find(file, layout.headers(), layout.units(), wish);
        require(file, columns, layout.headers(), course);
        LeftOut leftOut = new LeftOut();
        LapCollector collector = new LapCollector(file, cut, columns.keySet(), leftOut);
        List<Columns.Column> used = List.copyOf(columns.values());
        double[] values = new double[Quantity.values().length];
        LogRow row = new LogRow(layout);
        int before = layout.before();
        long number = before;
        line = before < head.size() ? head.get(before) : lines.next();
        while (line != null) {
            number++;
            row.read(line);
            if (!(row.size() == 1 && row.blank(0)) && fill(values, row, number, used, leftOut)) {
                collector.add(number, values);
            }
            line = number < head.size() ? head.get((int) number) : lines.next();
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
    private static boolean fill(double[] values, LogRow row, long line, List<Columns.Column> columns, LeftOut leftOut) {
        Arrays.fill(values, Double.NaN);
        boolean any = false;
        boolean whole = true;
        for (Columns.Column column : columns) {
            whole &= column.index() < row.size();
            if (column.index() < row.size() && !row.blank(column.index())) {
                double value = row.number(column.index()) * column.factor();
                if (Double.isNaN(value)) {
                    leftOut.add(line, column.quantity().word() + " that is no number: read as missing");
                }
                values[column.quantity().ordinal()] = value;
                any |= !Double.isNaN(value);
            }
        }
        if (!any) {
            leftOut.add(line, "no number in any column that is used");
        } else if (!whole) {
            leftOut.add(line, "fewer values than the head line: the rest read as missing");
        }
        return any;
    }
}
