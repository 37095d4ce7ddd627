package org.foreload.examples.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** A report's first list as CSV: comma, point, a head line, LF. */
final class CsvOutput {

    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setRecordSeparator('\n').get();

    private CsvOutput() {}

    static String render(Report report) {
        List<Map<String, Object>> rows = rows(report);
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
            if (!rows.isEmpty()) {
                printer.printRecord(rows.get(0).keySet());
            }
            for (Map<String, Object> row : rows) {
                printer.printRecord(row.values().stream().map(CsvOutput::text));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static List<Map<String, Object>> rows(Report report) {
        for (Object value : report.values().values()) {
            if (value instanceof Report.Rows list) {
                return list.rows().stream().map(Report::plainValues).toList();
            }
        }
        return List.of(report.plainValues());
    }

    private static String text(Object value) {
        if (value instanceof Double number) {
            return Double.isFinite(number) ? number.toString() : "";
        }
        return value == Report.NONE ? "" : value.toString();
    }
}
