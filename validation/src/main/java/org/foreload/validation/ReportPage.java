package org.foreload.validation;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes the report as a page of Markdown: what was checked, where the values come from, what came out, and what no
 * check covers. Numbers are rounded so far that the last digits of a machine do not show.
 */
public final class ReportPage {

    private static final MathContext VALUE = new MathContext(7);
    private static final MathContext ERROR = new MathContext(2);

    /** Share of the budget below which an error is written as zero. */
    private static final double NOTHING = 0.005;

    private static final Map<String, String> CHAPTERS = chapters();

    private ReportPage() {}

    private static Map<String, String> chapters() {
        Map<String, String> chapters = new LinkedHashMap<>();
        chapters.put("1", "Longitudinal load transfer and straight-line braking");
        chapters.put("2", "Brake-force distribution, adhesion, stopping rules");
        chapters.put("3", "Lateral load transfer, skidding, rolling over, the start of a turn");
        chapters.put("4", "Highway tables: grade, banking, spirals");
        chapters.put("5", "Handling, and open-loop tests in the manner of ISO 4138, 7975 and 7401");
        chapters.put("6", "Tyre");
        chapters.put("7", "Corner entry of a point at the friction limit");
        chapters.put("8", "Drag and downforce");
        chapters.put("9", "The deceleration that helps the front axle most");
        chapters.put("10", "Rule of the trade");
        chapters.put("11", "A second program of the same physics");
        return chapters;
    }

    /** The page of results in their order. */
    public static String write(List<CheckResult> results) {
        StringBuilder page = new StringBuilder();
        page.append(text("report-head.md"));
        page.append('\n').append(summary(results)).append('\n');
        page.append("![Error of each check over its budget](validation.svg)\n");
        for (Map.Entry<String, String> chapter : CHAPTERS.entrySet()) {
            page.append("\n## ")
                    .append(chapter.getKey())
                    .append(". ")
                    .append(chapter.getValue())
                    .append("\n\n")
                    .append(
                            "| check | what | source | status | expected | computed | error | budget | used | holds |\n")
                    .append("| --- | --- | --- | --- | ---: | ---: | ---: | ---: | ---: | --- |\n");
            results.stream()
                    .filter(result -> chapterOf(result.check()).equals(chapter.getKey()))
                    .forEach(result -> page.append(row(result)));
        }
        page.append('\n').append(text("report-notes.md"));
        return page.toString();
    }

    private static String chapterOf(Check check) {
        String id = check.id();
        String chapter = id.substring(0, Math.max(0, id.indexOf('.')));
        if (!CHAPTERS.containsKey(chapter)) {
            throw new IllegalArgumentException("check " + id + " belongs to no chapter");
        }
        return chapter;
    }

    private static String summary(List<CheckResult> results) {
        StringBuilder table = new StringBuilder("| status | checks | hold |\n| --- | ---: | ---: |\n");
        for (Status status : Status.values()) {
            List<CheckResult> those = results.stream()
                    .filter(result -> result.check().status() == status)
                    .toList();
            table.append(line(
                    status.words(),
                    String.valueOf(those.size()),
                    String.valueOf(those.stream().filter(CheckResult::passed).count())));
        }
        return table.append(line(
                        "**all**",
                        String.valueOf(results.size()),
                        String.valueOf(
                                results.stream().filter(CheckResult::passed).count())))
                .toString();
    }

    private static String row(CheckResult result) {
        Check check = result.check();
        String unit = check.unit().isEmpty() ? "" : " " + check.unit();
        boolean nothing = result.budgetUsed() < NOTHING;
        return line(
                check.id(),
                check.name(),
                check.source(),
                check.status().words(),
                check.relation().sign() + " " + rounded(check.expected(), VALUE) + unit,
                rounded(smoothed(result), VALUE),
                nothing ? "0" : rounded(result.error(), ERROR),
                rounded(check.budget(), ERROR) + " (" + check.reason() + ")",
                nothing ? "0 %" : rounded(100 * result.budgetUsed(), ERROR) + " %",
                result.passed() ? "yes" : "**no**");
    }

    /** A computed value whose distance from zero is rounding only is zero. */
    private static double smoothed(CheckResult result) {
        boolean zero = result.check().expected() == 0
                && Math.abs(result.computed()) < NOTHING * result.check().budget();
        return zero ? 0 : result.computed();
    }

    private static String line(String... cells) {
        return "| " + String.join(" | ", List.of(cells)).replace("\n", " ") + " |\n";
    }

    private static String rounded(double value, MathContext digits) {
        if (!Double.isFinite(value)) {
            return "none";
        }
        BigDecimal number = new BigDecimal(value).round(digits).stripTrailingZeros();
        boolean plain = value == 0 || Math.abs(value) >= 1e-4 && Math.abs(value) < 1e9;
        return plain ? number.toPlainString() : number.toString();
    }

    private static String text(String name) {
        try (InputStream stream = ReportPage.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException(name + " is not in the jar");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
