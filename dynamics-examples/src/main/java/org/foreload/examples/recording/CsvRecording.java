package org.foreload.examples.recording;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.foreload.file.InputException;

/** Reads a logger's table line by line. */
final class CsvRecording {

    private CsvRecording() {}

    static RecordedFile read(InputStream in, String file, ColumnWish wish, Cut cut, Need need) throws IOException {
        LineReader lines = new LineReader(TextEncoding.reader(in));
        List<String> head = new ArrayList<>();
        while (head.size() < Layout.MOST_LINES && lines.next()) {
            head.add(lines.text());
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
        require(file, columns, layout.headers(), need.course());
        LeftOut leftOut = new LeftOut();
        ColumnCheck check = new ColumnCheck(file, leftOut);
        LapCollector collector = new LapCollector(
                file,
                cut,
                columns.keySet(),
                leftOut,
                (line, value) -> check.impossible(line, columns.get(Quantity.BRAKE), value));
        List<Columns.Column> used = List.copyOf(columns.values());
        double[] values = new double[Quantity.values().length];
        LogRow row = new LogRow(layout);
        for (long i = layout.before(); i < head.size() || lines.next(); i++) {
            if (i < head.size()) {
                row.read(head.get((int) i));
            } else {
                row.read(lines);
            }
            long number = i + 1;
            if (!(row.size() == 1 && row.blank(0)) && fill(values, row, number, used, check, leftOut)) {
                collector.add(number, values);
            }
        }
        collector.end();
        Set<Quantity> needed = need.of(columns.keySet());
        if ((cut.from().isPresent() || cut.to().isPresent()) && columns.containsKey(Quantity.DISTANCE)) {
            needed.add(Quantity.DISTANCE);
        }
        ColumnCheck.Verdict verdict = check.verdict(used, collector.read(), needed);
        if (need.course()) {
            check.requireCourse(verdict);
        }
        return collector.result(verdict);
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

    /** Reads a row; says whether there is anything in it. */
    private static boolean fill(
            double[] values, LogRow row, long line, List<Columns.Column> columns, ColumnCheck check, LeftOut leftOut) {
        Arrays.fill(values, Double.NaN);
        boolean any = false;
        boolean whole = true;
        boolean readable = true;
        for (int i = 0; i < columns.size(); i++) {
            Columns.Column column = columns.get(i);
            int cell = column.index();
            if (cell >= row.size()) {
                whole = false;
                continue;
            }
            double value = row.number(cell) * column.factor();
            if (ColumnCheck.possible(column.quantity(), value)) {
                values[column.quantity().ordinal()] = value;
                check.value(column.quantity(), value);
                any = true;
            } else {
                readable &= row.blank(cell);
            }
        }
        if (!any) {
            leftOut.add(line, "no number in any column that is used");
            return false;
        }
        for (int i = 0; i < columns.size() && !readable; i++) {
            if (Double.isNaN(values[columns.get(i).quantity().ordinal()])) {
                unreadable(row, line, columns.get(i), check);
            }
        }
        if (!whole) {
            leftOut.add(line, "fewer values than the head line: the rest is missing");
        }
        return true;
    }

    /** Reports a cell without a value, if something stands in it. */
    private static void unreadable(LogRow row, long line, Columns.Column column, ColumnCheck check) {
        int cell = column.index();
        if (cell < row.size() && !ColumnCheck.nothing(row.text(cell))) {
            boolean number = !Double.isNaN(row.number(cell));
            check.unreadable(line, column.quantity(), column.header(), row.text(cell), number);
        }
    }
}
