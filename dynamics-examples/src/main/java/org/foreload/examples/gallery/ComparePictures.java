package org.foreload.examples.gallery;

import org.foreload.comparison.Comparison;
import org.foreload.comparison.CornerGap;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.recording.Measure;
import org.foreload.trace.Trace;

/** Two recorded runs side by side. */
public final class ComparePictures {

    private static final double STEP = 2;

    private ComparePictures() {}

    /** Speed and brake of both over the reference's distance, and the gap. */
    public static Picture of(String first, MeasuredLap mine, String second, MeasuredLap theirs, Comparison comparison) {
        Trace curve = comparison.curve(STEP);
        Axis distance = Axis.of("distance along the reference's lap", "m");
        double[] s = curve.column("s_m").values();
        XyChart speed = XyChart.of(distance, Axis.of("speed", "m/s"))
                .line("first", curve, "s_m", "first_mps", Style.FIRST)
                .line("reference", curve, "s_m", "second_mps", Style.SECOND)
                .tall(240);
        XyChart brake = XyChart.of(distance, Axis.of("brake, share of its peak", "%"))
                .line("first", s, brakes(comparison, mine, true, s.length), Style.FIRST)
                .line("reference", s, brakes(comparison, theirs, false, s.length), Style.SECOND)
                .tall(190);
        XyChart gap = XyChart.of(distance, Axis.of("gap", "s"))
                .line("", curve, "s_m", "gap_s", Style.FIRST)
                .markY(0, "")
                .tall(190);
        StringBuilder caption = new StringBuilder("Where the gap rises, the first loses time to the reference.");
        for (CornerGap corner : comparison.corners()) {
            double turnIn = corner.second().get(Measure.TURN_IN).value();
            speed = speed.markX(turnIn, "turn-in " + corner.number());
            brake = brake.markX(turnIn, "");
            gap = gap.markX(turnIn, "");
            caption.append(Say.of(
                    " Corner %d: %+.2f s (to turn-in %+.2f, to the apex %+.2f, from there %+.2f).",
                    corner.number(),
                    hundredths(corner.gap().value()),
                    hundredths(corner.toTurnIn().value()),
                    hundredths(corner.toApex().value()),
                    hundredths(corner.toExit().value())));
        }
        return Picture.of(
                first + ", lap " + mine.number() + ", against " + second + ", lap " + theirs.number(),
                caption.toString(),
                ChartStack.of(speed, brake, gap));
    }

    /** To the digits that are shown, and no zero below zero. */
    private static double hundredths(double seconds) {
        return Math.rint(100 * seconds) / 100 + 0.0;
    }

    private static double[] brakes(Comparison comparison, MeasuredLap lap, boolean first, int rows) {
        Trace run = lap.run().resampled(STEP);
        double[] axis = run.column("s_m").values();
        double[] brake = RecordingPictures.percent(run.column("brake").values());
        double[] read = new double[rows];
        for (int i = 0; i < rows; i++) {
            double place = i == rows - 1 ? comparison.end() : comparison.start() + i * STEP;
            double s = first
                    ? comparison.alignment().first(place)
                    : comparison.alignment().second(place);
            int row = (int) Math.max(0, Math.min(axis.length - 1, Math.round((s - axis[0]) / STEP)));
            read[i] = brake[row];
        }
        return read;
    }
}
