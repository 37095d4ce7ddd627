package org.foreload.examples.output;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A report as aligned text: headlines, plain values, each list as a table, notes, in this order. No line is longer than
 * {@link Prose#WIDTH}: sentences are wrapped, and {@link WideTable} makes room for tables.
 */
final class TextTable {

    /** Longest table that is printed whole; a longer one is thinned to about as many rows. */
    private static final int MOST_ROWS = 40;

    private static final String GAP = "  ";

    private TextTable() {}

    static String render(Report whole) {
        Report report = whole.people();
        StringBuilder out = new StringBuilder();
        if (!report.title().isEmpty()) {
            out.append(Prose.wrapped(report.title())).append("\n\n");
        }
        report.headlines()
                .forEach(headline -> out.append(Prose.wrapped(headline)).append('\n'));
        if (!report.headlines().isEmpty() && !report.plainValues().isEmpty()) {
            out.append('\n');
        }
        values(report, out);
        lists(report, out);
        if (!report.notes().isEmpty()) {
            out.append('\n');
            report.notes().forEach(note -> out.append(Prose.wrapped(note)).append('\n'));
        }
        return out.toString();
    }

    private static void values(Report report, StringBuilder out) {
        List<List<String>> lines = new ArrayList<>();
        Map<String, String> sentences = new LinkedHashMap<>();
        report.plainValues().forEach((name, value) -> {
            Quantity quantity = Quantity.of(name);
            String cell = cell(value, quantity);
            if (Prose.width(cell) > WideTable.SENTENCE) {
                sentences.put(quantity.label(), cell);
            } else {
                lines.add(List.of(quantity.label(), cell, quantity.unit()));
            }
        });
        align(lines, List.of(false, true, false), out);
        sentences.forEach(
                (label, text) -> out.append(Prose.wrapped(label + ": " + text)).append('\n'));
    }

    private static void lists(Report report, StringBuilder out) {
        for (Object value : report.values().values()) {
            if (value instanceof Report part) {
                lists(part, out);
            } else if (value instanceof Report.Rows list && !list.rows().isEmpty()) {
                out.append('\n').append(Prose.wrapped(list.caption())).append('\n');
                table(list, out);
            }
        }
    }

    private static void table(Report.Rows list, StringBuilder out) {
        List<Map<String, Object>> rows =
                list.rows().stream().map(Report::plainValues).toList();
        List<Quantity> quantities =
                rows.get(0).keySet().stream().map(Quantity::of).toList();
        List<Boolean> right = new ArrayList<>();
        rows.get(0).values().forEach(value -> right.add(value instanceof Number));
        List<List<String>> lines = new ArrayList<>();
        int step = list.whole() ? 1 : (rows.size() + MOST_ROWS - 1) / MOST_ROWS;
        for (int i = 0; i < rows.size(); i++) {
            if (i % step == 0 || i == rows.size() - 1) {
                lines.add(cells(rows.get(i), quantities));
            }
        }
        WideTable table =
                new WideTable(quantities.stream().map(Quantity::heading).toList(), lines, right);
        boolean first = true;
        for (WideTable part : table.parts()) {
            if (!first) {
                out.append('\n');
            }
            align(part.lines(), part.right(), out);
            first = false;
        }
        table.reasons().forEach(line -> out.append(line).append('\n'));
        if (step > 1) {
            out.append("(one row in ").append(step).append(" of ").append(rows.size());
            out.append("; --format json gives all)\n");
        }
    }

    private static List<String> cells(Map<String, Object> row, List<Quantity> quantities) {
        List<String> cells = new ArrayList<>();
        int column = 0;
        for (Object value : row.values()) {
            cells.add(cell(value, quantities.get(column++)));
        }
        return cells;
    }

    private static String cell(Object value, Quantity quantity) {
        if (value instanceof Double number) {
            return Numbers.rounded(number, quantity.decimals());
        }
        if (value instanceof Boolean flag) {
            return flag ? "yes" : "no";
        }
        return value == Report.NONE ? "-" : value.toString();
    }

    private static void align(List<List<String>> lines, List<Boolean> right, StringBuilder out) {
        int[] widths = new int[right.size()];
        for (List<String> line : lines) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], Prose.width(line.get(i)));
            }
        }
        for (List<String> line : lines) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String pad = " ".repeat(widths[i] - Prose.width(line.get(i)));
                text.append(i == 0 ? "" : GAP);
                text.append(right.get(i) ? pad + line.get(i) : line.get(i) + pad);
            }
            out.append(text.toString().stripTrailing()).append('\n');
        }
    }
}
