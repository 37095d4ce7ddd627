package org.foreload.examples.gallery;

import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.validation.CheckResult;
import org.foreload.validation.Status;

/** How well the library holds against the outside world. */
public final class CheckPictures {

    /** Shares of the budget below a ten-thousandth are drawn as one: there rounding decides. */
    private static final double DECADES = 4;

    private CheckPictures() {}

    /** Error of each check over its budget, as powers of ten, in the order of the catalogue. */
    public static Picture of(List<CheckResult> results) {
        XyChart chart = XyChart.of(
                        Axis.of("check, in the order of the catalogue", "–").counted(),
                        Axis.of("error over budget", "–")
                                .between(-DECADES - 0.2, 1.2)
                                .powersOfTen())
                .markY(0, "budget")
                .tall(380);
        for (Status status : Status.values()) {
            List<double[]> points = new ArrayList<>();
            for (int i = 0; i < results.size(); i++) {
                if (results.get(i).check().status() == status) {
                    points.add(new double[] {i + 1, power(results.get(i).budgetUsed())});
                }
            }
            if (!points.isEmpty()) {
                chart = chart.line(
                        status.words(),
                        points.stream().mapToDouble(one -> one[0]).toArray(),
                        points.stream().mapToDouble(one -> one[1]).toArray(),
                        style(status));
            }
        }
        long held = results.stream().filter(CheckResult::passed).count();
        return Picture.of(
                "Checks of the library against the outside world",
                Say.of(
                        "%d of %d checks pass: their error is within its budget, below the line. Errors under a "
                                + "ten-thousandth of the budget stand at the bottom, those over ten budgets at the top.",
                        held, results.size()),
                chart);
    }

    private static double power(double share) {
        return Double.isNaN(share) ? 1 : Math.max(-DECADES, Math.min(1, Math.log10(Math.max(share, 1e-300))));
    }

    private static Style style(Status status) {
        return switch (status) {
            case READ -> Style.points(Ink.BLUE, Marker.DISC);
            case FROM_MEMORY -> Style.points(Ink.ORANGE, Marker.TRIANGLE);
            case COMMON_PRACTICE -> Style.points(Ink.GREY, Marker.CROSS);
            case EXACT -> Style.points(Ink.GREEN, Marker.SQUARE);
            case INDEPENDENT -> Style.points(Ink.PURPLE, Marker.DIAMOND);
        };
    }
}
