package org.foreload.examples.gallery;

import java.util.List;
import org.foreload.examples.answer.Words;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.recording.Channel;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.trace.Trace;

/** Recorded runs. */
public final class RecordingPictures {

    /** Distance between the points of a line, m. */
    private static final double STEP = 2;

    private RecordingPictures() {}

    /** Speed, brake and lateral acceleration of the first of some laps over distance, with what was measured. */
    public static Picture of(String file, List<MeasuredLap> laps) {
        MeasuredLap lap = laps.get(0);
        Trace trace = lap.run().resampled(STEP);
        Axis distance = Axis.of("distance along the lap", "m");
        XyChart speed = XyChart.of(distance, Axis.of("speed", "m/s"))
                .line("", trace, Channel.DISTANCE.field(), Channel.SPEED.field(), Style.FIRST)
                .tall(220);
        double[] brake = trace.column(Channel.BRAKE.field()).values();
        XyChart pedal = XyChart.of(distance, Axis.of("brake, share of its peak", "%"))
                .line("", trace.column(Channel.DISTANCE.field()).values(), percent(brake), Style.FIRST)
                .tall(180);
        XyChart lateral = XyChart.of(distance, Axis.of("lateral acceleration", "m/s²"))
                .line("", trace, Channel.DISTANCE.field(), Channel.LATERAL.field(), Style.FIRST)
                .tall(220);
        for (RecordedCorner corner : lap.corners()) {
            speed = marked(speed, corner);
            pedal = marked(pedal, corner);
            lateral = marked(lateral, corner);
        }
        return Picture.of(
                file + ", lap " + lap.number(), caption(lap) + others(laps), ChartStack.of(speed, pedal, lateral));
    }

    private static XyChart marked(XyChart chart, RecordedCorner corner) {
        Estimate on = corner.get(Measure.BRAKE_ON);
        Estimate off = corner.get(Measure.RELEASE_END);
        Estimate eased = corner.get(Measure.FIRST_EASE);
        XyChart more = on.known() ? chart.markX(on.value(), "brake point") : chart;
        more = eased.known() ? more.markX(eased.value(), "release point") : more;
        more = more.markX(
                corner.get(Measure.TURN_IN).value(), "turn-in " + corner.bend().number());
        return off.known() ? more.markX(off.value(), "brake off") : more;
    }

    private static String caption(MeasuredLap lap) {
        StringBuilder text = new StringBuilder(
                "Upright lines: brake point, release point, turn-in, brake off. Lateral acceleration is positive to the left.");
        for (RecordedCorner corner : lap.corners()) {
            Estimate share = corner.get(Measure.TRAIL_SHARE);
            if (share.known()) {
                text.append(Say.of(
                        " Corner %d: brake point %s, release point %s, brake off %s, %.0f %% of the slowing done while turning.",
                        corner.bend().number(),
                        board(corner, Measure.BRAKE_ON),
                        board(corner, Measure.FIRST_EASE),
                        board(corner, Measure.RELEASE_END),
                        100 * share.value()));
            }
        }
        return text.toString();
    }

    private static String others(List<MeasuredLap> laps) {
        return laps.size() == 1 ? "" : " The first of " + laps.size() + " laps is drawn; --lap chooses another.";
    }

    private static String board(RecordedCorner corner, Measure place) {
        return Words.board(corner.fromTurnIn(place).value());
    }

    /** Shares of the greatest, %. */
    static double[] percent(double[] brake) {
        double most = 0;
        for (double value : brake) {
            most = Math.max(most, value);
        }
        double[] shares = new double[brake.length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = most > 0 ? 100 * brake[i] / most : 0;
        }
        return shares;
    }
}
