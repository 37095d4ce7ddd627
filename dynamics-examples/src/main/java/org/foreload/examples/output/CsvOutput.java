package org.foreload.examples.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * A report as CSV: comma, point, a head line, LF. The rows are those of its first list; after their columns each row
 * has the report's single values.
 */
final class CsvOutput {

    private static final CSVFormat FORMAT =
            CSVFormat.DEFAULT.builder().setRecordSeparator('\n').get();

    /** Before the name of a single value where the rows have one of the same name. */
    private static final String ANSWER = "answer.";

    private CsvOutput() {}

    static String render(Report report) {
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
            Optional<Report.Rows> list = firstList(report);
            if (list.isEmpty()) {
                Map<String, Object> only = report.plainValues();
                printer.printRecord(only.keySet());
                print(printer, only);
                return out.toString();
            }
            Map<String, Object> single = singleValues(report);
            boolean first = true;
            for (Report row : list.get().rows()) {
                Map<String, Object> values = joined(row.plainValues(), single);
                if (first) {
                    printer.printRecord(values.keySet());
                    first = false;
                }
                print(printer, values);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private static void print(CSVPrinter printer, Map<String, Object> row) throws IOException {
        printer.printRecord(row.values().stream().map(CsvOutput::text));
    }

    private static Optional<Report.Rows> firstList(Report report) {
        return report.values().values().stream()
                .filter(Report.Rows.class::isInstance)
                .map(Report.Rows.class::cast)
                .findFirst();
    }

    /**
     * The single values of a report, without the parts that have lists of their own: these are answers by themselves.
     */
    private static Map<String, Object> singleValues(Report report) {
        Map<String, Object> single = new LinkedHashMap<>(report.plainValues());
        report.values().forEach((name, value) -> {
            if (value instanceof Report part && firstList(part).isPresent()) {
                single.keySet().removeIf(key -> key.startsWith(name + "."));
            }
        });
        return single;
    }

    /** A row with the single values of its report after it. */
    private static Map<String, Object> joined(Map<String, Object> row, Map<String, Object> single) {
        Map<String, Object> joined = new LinkedHashMap<>(row);
        single.forEach((name, value) -> joined.put(row.containsKey(name) ? ANSWER + name : name, value));
        return joined;
    }

    private static String text(Object value) {
        if (value instanceof Double number) {
            return Double.isFinite(number) ? number.toString() : "";
        }
        return value == Report.NONE ? "" : value.toString();
    }
}
