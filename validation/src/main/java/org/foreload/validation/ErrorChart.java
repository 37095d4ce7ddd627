package org.foreload.validation;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Draws the error of each check over its budget, on a logarithmic scale, as SVG. */
public final class ErrorChart {

    private static final int WIDTH = 960;
    private static final int LEFT = 70;
    private static final int RIGHT = 20;
    private static final int TOP = 40;
    private static final int BOTTOM = 330;

    /** Shares of the budget below a ten-thousandth are drawn as one: there rounding decides. */
    private static final int DECADES = 4;

    private ErrorChart() {}

    /** The picture of results in their order. */
    public static String draw(List<CheckResult> results) {
        StringBuilder svg = new StringBuilder();
        svg.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d 390\" font-family=\"sans-serif\""
                        + " font-size=\"12\">%n",
                WIDTH));
        svg.append("<title>Error of each check over its budget</title>\n");
        svg.append("<rect width=\"100%\" height=\"100%\" fill=\"white\"/>\n");
        svg.append("<text x=\"70\" y=\"20\" font-size=\"14\">Error over budget, one mark per check, in the order of the"
                + " tables</text>\n");
        for (int decade = 0; decade <= DECADES; decade++) {
            double y = height(Math.pow(10, -decade));
            String label = decade == 0 ? "budget" : decade == DECADES ? "≤ 1e-4" : "1e-" + decade;
            svg.append(String.format(
                    Locale.ROOT,
                    "<line x1=\"%d\" y1=\"%.1f\" x2=\"%d\" y2=\"%.1f\" stroke=\"%s\"/>"
                            + "<text x=\"62\" y=\"%.1f\" text-anchor=\"end\">%s</text>%n",
                    LEFT,
                    y,
                    WIDTH - RIGHT,
                    y,
                    decade == 0 ? "#b00020" : "#dddddd",
                    y + 4,
                    label));
        }
        for (int i = 0; i < results.size(); i++) {
            svg.append(dot(results.get(i), i, results.size()));
        }
        int x = LEFT;
        for (Status status : Status.values()) {
            svg.append(String.format(
                    Locale.ROOT,
                    "<path d=\"M%d,365%s\" fill=\"%s\"/><text x=\"%d\" y=\"369\">%s</text>%n",
                    x,
                    mark(status),
                    color(status),
                    x + 9,
                    status.words()));
            x += 150;
        }
        return svg.append("</svg>\n").toString();
    }

    private static String dot(CheckResult result, int index, int count) {
        double x = LEFT + (index + 0.5) * (WIDTH - LEFT - RIGHT) / count;
        double share = Double.isNaN(result.budgetUsed()) ? 10 : result.budgetUsed();
        return String.format(
                Locale.ROOT,
                "<path d=\"M%.1f,%.1f%s\" fill=\"%s\"><title>%s</title></path>%n",
                x,
                height(share),
                mark(result.check().status()),
                color(result.check().status()),
                escaped(result.check().id()));
    }

    /** Where a share of the budget stands; ten times the budget and more at the upper edge. */
    private static double height(double share) {
        double decades = Math.max(-1, Math.min(DECADES, -Math.log10(Math.max(share, 1e-300))));
        return TOP + (decades + 1) * (BOTTOM - TOP) / (DECADES + 1);
    }

    private static String escaped(String text) {
        return text.chars()
                .mapToObj(c -> c == '&' ? "&amp;" : c == '<' ? "&lt;" : String.valueOf((char) c))
                .collect(Collectors.joining());
    }

    /** The shape of a mark, drawn from its middle: shows the status without its colour. */
    private static String mark(Status status) {
        return switch (status) {
            case READ -> "m-3,0a3,3 0 1,0 6,0a3,3 0 1,0 -6,0z"; // disc
            case FROM_MEMORY -> "m0,-4l4,7h-8z"; // triangle
            case COMMON_PRACTICE -> "m0,4l4,-7h-8z"; // triangle on its point
            case EXACT -> "m-3,-3h6v6h-6z"; // square
            case INDEPENDENT -> "m0,-4l4,4l-4,4l-4,-4z"; // diamond
        };
    }

    private static String color(Status status) {
        return switch (status) {
            case READ -> "#0072b2";
            case FROM_MEMORY -> "#e69f00";
            case COMMON_PRACTICE -> "#999999";
            case EXACT -> "#009e73";
            case INDEPENDENT -> "#cc79a7";
        };
    }
}
