package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The committed report is what the checks give today, but for the last digits of the machine. */
abstract class CommittedReport {

    private static final Path DOCS = Path.of("..", "docs");
    private static final String AGAIN = " is stale; make it anew: dynamics-examples/foreload validate --report docs";

    /** Columns of a row in which the last digits may differ: computed, error, used. */
    private static final List<Integer> LOOSE = List.of(6, 7, 9);

    /** Two machines may differ in the last of seven digits, or by a hundredth of the budget. */
    private static final double DIGITS = 2e-6;

    private static final double POINTS = 1;

    @Test
    void thePageIsUpToDate() throws IOException {
        List<String> committed = Files.readAllLines(DOCS.resolve("validation.md"));
        List<String> today = ReportPage.write(Results.ALL).lines().toList();
        assertEquals(skeleton(today), skeleton(committed), "docs/validation.md" + AGAIN);
        for (int i = 0; i < today.size(); i++) {
            List<String> now = cells(today.get(i));
            List<String> then = cells(committed.get(i));
            if (isCheck(now)) {
                double used = percent(now.get(9));
                assertEquals(percent(then.get(9)), used, POINTS + 0.1 * used, now.get(1) + AGAIN);
                double value = number(now.get(6));
                double budget = number(now.get(8).substring(0, now.get(8).indexOf(' ')));
                assertEquals(number(then.get(6)), value, DIGITS * Math.abs(value) + 0.01 * budget, now.get(1) + AGAIN);
            }
        }
    }

    private static double percent(String cell) {
        return number(cell.replace("%", "").strip());
    }

    private static double number(String cell) {
        return cell.equals("none") ? Double.POSITIVE_INFINITY : Double.parseDouble(cell);
    }

    private static List<String> cells(String line) {
        return Arrays.stream(line.split("\\|", -1)).map(String::strip).toList();
    }

    private static boolean isCheck(List<String> cells) {
        return cells.size() == 12 && cells.get(1).matches("[0-9]+\\..*");
    }

    private static List<String> skeleton(List<String> lines) {
        List<String> skeleton = new ArrayList<>();
        for (String line : lines) {
            List<String> cells = new ArrayList<>(cells(line));
            if (isCheck(cells)) {
                LOOSE.forEach(column -> cells.set(column, "#"));
            }
            skeleton.add(String.join("|", cells));
        }
        return skeleton;
    }

    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+\\.[0-9]+");

    @Test
    void theChartIsUpToDate() throws IOException {
        String committed = Files.readString(DOCS.resolve("validation.svg"));
        String today = ErrorChart.draw(Results.ALL);
        assertEquals(
                NUMBER.matcher(today).replaceAll("#"),
                NUMBER.matcher(committed).replaceAll("#"),
                "docs/validation.svg" + AGAIN);
        Matcher now = NUMBER.matcher(today);
        Matcher then = NUMBER.matcher(committed);
        // Dots of errors near the rounding of the machine may stand elsewhere; those above a hundredth of the budget
        // not.
        while (now.find() && then.find()) {
            double a = Double.parseDouble(now.group());
            double b = Double.parseDouble(then.group());
            boolean low = a > LOW && b > LOW;
            assertTrue(low || Math.abs(a - b) <= 2, () -> a + " for " + b + AGAIN);
        }
    }

    /** Height in the chart below which errors are under a hundredth of their budget. */
    private static final double LOW = 213;

    @Test
    void everyCheckStandsInThePage() {
        String page = ReportPage.write(Results.ALL);
        Results.ALL.forEach(result -> assertTrue(
                page.contains("| " + result.check().id() + " |"),
                () -> result.check().id()));
    }
}
