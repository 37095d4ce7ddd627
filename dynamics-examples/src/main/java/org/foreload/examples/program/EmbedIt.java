package org.foreload.examples.program;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.foreload.entry.EntryResult;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.optimum.ShapeRanking;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/**
 * How is it built into a program of yours? With the core alone: a car and a corner from numbers, a sweep that reports
 * its progress and can be stopped, and an answer as JSON. Only the picture needs more than {@code foreload-core}.
 */
public final class EmbedIt {

    private EmbedIt() {}

    static Car car() {
        FrictionTyre front = new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.05, 0.08, 2800, 0.4, 15, 18);
        FrictionTyre rear = new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.1, 0.08, 2800, 0.4, 18, 18);
        return new Car(
                "my car",
                new Chassis(1150, 2.5, 1.15, 0.48, 1600, 1.48, 1.48),
                new Suspension(0.58, 0.03, 0.08, new Response(1.6, 0.4), Response.RIGID),
                new Aerodynamics(0.62, 0, 0, 1.2, 0),
                0.74,
                new Driveline(120_000, Driveline.DrivenAxle.REAR),
                front,
                rear);
    }

    static Corner corner() {
        List<Segment> bend = List.of(
                Segment.spiralIn(25, 45, Turn.LEFT),
                Segment.arcThroughAngle(Math.toRadians(64), 45, Turn.LEFT),
                Segment.spiralOut(25, 45, Turn.LEFT));
        return new Corner("my corner", 42, SegmentPath.of(220, bend, 150, 5));
    }

    /**
     * The main job, as the command line does it: the standard sweep and the best of each shape refined, on two threads.
     */
    static Exploration explore(Sweep.Progress progress) {
        ReleaseSweep standard = new ReleaseSweep(CornerStudy.of(car(), corner()), SweepPlan.standard());
        return ShapeRanking.explore(standard, new Sweep(2, progress));
    }

    /** The answer in a line of JSON; {@code null} where there is none. */
    static String json(Exploration answer) {
        String best = answer.best().map(candidate -> json(candidate.entry())).orElse("null");
        String gain = Double.isNaN(answer.gain()) ? "null" : String.format(Locale.ROOT, "%.4f", answer.gain());
        return String.format(
                Locale.ROOT, "{\"complete\": %b, \"gain_s\": %s, \"best\": %s}", answer.complete(), gain, best);
    }

    private static String json(EntryResult entry) {
        return String.format(
                Locale.ROOT,
                "{\"shape\": \"%s\", \"brake_point_m\": %.2f, \"release_end_m\": %.2f, \"time_s\": %.4f}",
                entry.plan().release().shape().name(),
                entry.plan().brakePoint(),
                entry.plan().release().end(),
                entry.time());
    }

    /** Reports its progress on standard error, and stops when there is no more time. */
    private static final class Patience implements Sweep.Progress {

        private final long end = System.nanoTime() + 60_000_000_000L;

        @Override
        public void update(int done, int total) {
            System.err.println(done + " of " + total);
        }

        @Override
        public boolean stopped() {
            return System.nanoTime() > end;
        }
    }

    /**
     * Runs the sweep and prints the answer.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        Exploration answer = explore(new Patience());
        System.out.println(json(answer));
        if (answer.best().isPresent() && answer.baseline().isPresent()) {
            for (String file : args) {
                picture(answer).save(Path.of(file));
            }
        }
    }

    private static Picture picture(Exploration answer) {
        XyChart chart = XyChart.of(Axis.of("distance from turn-in", "m").between(-130, 150), Axis.of("speed", "m/s"))
                .line(
                        "best release",
                        answer.best().orElseThrow().entry().profile().orElseThrow(),
                        "s_m",
                        "speed_mps",
                        Style.FIRST)
                .line(
                        "straight-line braking",
                        answer.baseline().orElseThrow().entry().profile().orElseThrow(),
                        "s_m",
                        "speed_mps",
                        Style.SECOND)
                .markX(0, "turn-in");
        String caption = String.format(
                Locale.ROOT,
                "Where the solid line is the higher one, the best release gains on straight-line braking: %.2f s in all.",
                answer.gain());
        return Picture.of("A sweep in a program of yours", caption, chart);
    }
}
