package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.Gravity;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;

/**
 * What is the perfect release of a point mass? One that may take any line and has the grip A in all directions turns
 * its velocity from one direction into another in the shortest time if it pushes in one direction all the time, as
 * gravity pushes a thrown ball. So its line is a parabola, and everything on it has a closed form in the slope q =
 * A·t/v₀, where v₀ is the slowest speed and t the time from there.
 */
public final class PerfectRelease {

    /** Grip, m/s². */
    static final double GRIP = FrictionCircle.FRICTION * Gravity.G;

    /** Speed in and out, m/s. */
    static final double FAST = 30;

    /** Angle of the turn, rad. */
    static final double ANGLE = Math.PI / 2;

    /** Spirals that the line is drawn with. */
    private static final int PIECES = 400;

    /** Share of speed that the library has less at the start: its steps must not ask for more than the grip. */
    private static final double ROUNDING = 1e-4;

    private static final double SLOW = FAST * Math.cos(ANGLE / 2);
    private static final double STEEPEST = Math.tan(ANGLE / 2);

    private PerfectRelease() {}

    /** Way from the slowest point, m: arc length of a parabola. */
    static double way(double q) {
        double root = Math.sqrt(1 + q * q);
        return SLOW * SLOW / (2 * GRIP) * (q * root + Math.log(q + root));
    }

    static double speed(double q) {
        return SLOW * Math.sqrt(1 + q * q);
    }

    /** Positive when slowing, m/s². */
    static double braking(double q) {
        return -GRIP * q / Math.sqrt(1 + q * q);
    }

    static double cornering(double q) {
        return GRIP / Math.sqrt(1 + q * q);
    }

    /** Shortest time for the turn, s: the straight way from one velocity to the other. */
    static double shortestTime() {
        return 2 * FAST * Math.sin(ANGLE / 2) / GRIP;
    }

    /** The library's fastest entry on that line, drawn as a chain of short spirals. */
    static IdealProfile library() {
        double[] q = evenly(-STEEPEST, STEEPEST, PIECES + 1);
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i + 1 < q.length; i++) {
            segments.add(Segment.spiralBetween(way(q[i + 1]) - way(q[i]), radius(q[i]), radius(q[i + 1]), Turn.LEFT));
        }
        Corner corner = new Corner("parabola", FAST * (1 - ROUNDING), SegmentPath.of(0, segments, 0, 5));
        return IdealEntry.solve(FrictionCircle.car(), corner, IdealOptions.DEFAULT.withStep(0.1));
    }

    private static double radius(double q) {
        return speed(q) * speed(q) / cornering(q);
    }

    /** How far a shape is from the perfect release where they differ most, as a part of the peak. */
    static double distance(ReleaseShape shape) {
        double whole = way(STEEPEST);
        double most = 0;
        for (double q : evenly(-STEEPEST, 0, 201)) {
            double off = shape.remaining(1 + way(q) / whole) - braking(q) / braking(-STEEPEST);
            most = Math.max(most, Math.abs(off));
        }
        return most;
    }

    static ReleaseShape nearest() {
        return ReleaseShapes.all().stream()
                .min(Comparator.comparingDouble(PerfectRelease::distance))
                .orElseThrow();
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        say(
                "A point mass with a grip of %.2f m/s² turns by %.0f° as quickly as it can, %.0f m/s in and out.",
                GRIP, Math.toDegrees(ANGLE), FAST);
        say("%nmetres to the slowest point  speed m/s  braking m/s²  cornering m/s²");
        for (double q : evenly(-STEEPEST, 0, 6)) {
            say("%28.1f  %9.2f  %12.2f  %14.2f", Math.abs(way(q)), speed(q), Math.abs(braking(q)), cornering(q));
        }
        say(
                "%nAll its grip is used all the time. It begins with the brake and the corner at once, and the brake "
                        + "comes off steadily as the corner takes over, to nothing just at the slowest point. Of the library's "
                        + "release shapes, '%s' is closest (never more than %.0f %% of the peak away).",
                nearest().name(), 100 * distance(nearest()));
        IdealProfile library = library();
        double straight = (2 * (FAST - SLOW) + ANGLE * SLOW) / GRIP;
        say(
                "%nTime: %.3f s. The library, given the line, finds %.3f s and a slowest speed of %.2f m/s (closed form %.2f).",
                shortestTime(), library.time(), library.minimumSpeed(), SLOW);
        say(
                "Braking first, then turning at that slowest speed, then accelerating takes %.3f s for the same turn of the "
                        + "velocity: %.0f %% longer.",
                straight, 100 * (straight / shortestTime() - 1));

        double[] q = evenly(-STEEPEST, STEEPEST, 121);
        double[] s = each(q, PerfectRelease::way);
        int[] some =
                IntStream.range(0, library.size()).filter(i -> i % 60 == 30).toArray();
        double half = way(STEEPEST);
        XyChart chart = XyChart.of(Axis.of("distance from the slowest point", "m"), Axis.of("acceleration", "m/s²"))
                .line("braking (below 0: driving)", s, each(q, PerfectRelease::braking), Style.FIRST)
                .line("cornering", s, each(q, PerfectRelease::cornering), Style.SECOND)
                .line(
                        "braking, found by the library",
                        IntStream.of(some)
                                .mapToDouble(i -> library.station(i) - half)
                                .toArray(),
                        IntStream.of(some).mapToDouble(library::deceleration).toArray(),
                        Style.points(Style.Ink.BLACK, Style.Marker.RING))
                .markX(0, "slowest");
        String caption =
                "The brake comes off as the cornering builds up: at right angles to each other, the two together always use all of the grip.";
        Story.draw(args, Picture.of("The perfect release of a point mass", caption, chart));
    }
}
