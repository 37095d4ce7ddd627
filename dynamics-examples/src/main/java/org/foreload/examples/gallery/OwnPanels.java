package org.foreload.examples.gallery;

import java.util.Arrays;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Units;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.recording.Channel;
import org.foreload.recording.Run;
import org.foreload.trace.Trace;

/** A driver's own entry and the plan, on one axis. */
public final class OwnPanels {

    /** Distance between the points of a line, m. */
    private static final double STEP = 1;

    private OwnPanels() {}

    /**
     * Brake, deceleration and speed of both.
     *
     * @param run the recorded run
     * @param turnIn station of the run that lies on turn-in, m
     * @param plan with its profile
     * @param apex station of the apex, m
     * @param from first station that is shown, m from turn-in
     * @param to last one, m from turn-in
     * @param units of the speeds
     */
    public static Panel of(Run run, double turnIn, EntryResult plan, double apex, double from, double to, Units units) {
        Trace own = run.resampled(STEP);
        double[] s = own.column(Channel.DISTANCE.field()).values();
        for (int i = 0; i < s.length; i++) {
            s[i] -= turnIn;
        }
        int first = 0;
        while (first < s.length && s[first] < from) {
            first++;
        }
        int end = first;
        while (end < s.length && s[end] <= to) {
            end++;
        }
        double[] places = Arrays.copyOfRange(s, first, end);
        Stretch planned = new Stretch(plan.profile().orElseThrow(), from, to);
        Axis distance = Axis.of("distance, 0 at turn-in", "m").between(from, to);
        XyChart brake = XyChart.of(distance, Axis.of("brake", "% of peak").between(0, 105))
                .line("the plan", planned.stations(), shares(planned.column("brake_mps2")), Style.SECOND)
                .line("your own", places, shares(part(own, Channel.BRAKE, first, end)), Style.FIRST)
                .tall(190);
        double[] slowing = Say.times(-1, part(own, Channel.LONGITUDINAL, first, end));
        XyChart deceleration = XyChart.of(distance, Axis.of("deceleration", "m/s²"))
                .line("", planned.stations(), planned.column("deceleration_mps2"), Style.SECOND)
                .line("", places, slowing, Style.FIRST)
                .markY(0, "")
                .tall(170);
        XyChart speed = XyChart.of(distance, Axis.of("speed", units.speedUnit()))
                .line("", planned.stations(), Say.times(units.ofSpeed(1), planned.column("speed_mps")), Style.SECOND)
                .line("", places, Say.times(units.ofSpeed(1), part(own, Channel.SPEED, first, end)), Style.FIRST)
                .tall(170);
        return ChartStack.of(places(brake, apex), places(deceleration, apex), places(speed, apex));
    }

    private static XyChart places(XyChart chart, double apex) {
        return chart.markX(0, "turn-in").markX(apex, "apex");
    }

    private static double[] part(Trace run, Channel channel, int first, int end) {
        return Arrays.copyOfRange(run.column(channel.field()).values(), first, end);
    }

    private static double[] shares(double[] brake) {
        double most = Arrays.stream(brake).max().orElse(0);
        return Arrays.stream(brake)
                .map(value -> most > 0 ? Math.max(0, 100 * value / most) : 0)
                .toArray();
    }
}
