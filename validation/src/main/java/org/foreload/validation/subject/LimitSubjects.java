package org.foreload.validation.subject;

import java.util.List;
import java.util.Map;
import org.foreload.conventions.Gravity;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.validation.subject.HodographLine.Motion;

/** The ideal entry of a point mass, where it is known in closed form. Accelerations A = 10 m/s² = μg unless said. */
final class LimitSubjects {

    private static final double LIMIT = 10;
    private static final double SPEED = 30;
    private static final double FRICTION = LIMIT / Gravity.G;
    private static final IdealOptions FINE = IdealOptions.DEFAULT.withStep(0.02);

    private LimitSubjects() {}

    static Map<String, Subject> all() {
        return Map.ofEntries(
                Map.entry("circle-from-rest-time", LimitSubjects::circleFromRestTime),
                Map.entry("circle-from-rest-speed", LimitSubjects::circleFromRestSpeed),
                Map.entry("circle-braking", LimitSubjects::circleBraking),
                Map.entry("half-turn", LimitSubjects::halfTurn),
                Map.entry("half-turn-exit", LimitSubjects::halfTurnExit),
                Map.entry("free-turn", LimitSubjects::freeTurn),
                Map.entry("free-turn-arc", LimitSubjects::freeTurnArc),
                Map.entry("width-turn", LimitSubjects::widthTurn),
                Map.entry("width-turn-arc", LimitSubjects::widthTurnArc),
                Map.entry("equal-split-speed", LimitSubjects::equalSplitSpeed));
    }

    private static Inputs friction(double value) {
        return new Inputs(Map.of("friction", Double.toString(value)));
    }

    private static IdealProfile solve(Path path, double speed) {
        return IdealEntry.solve(Bench.car(friction(FRICTION)), new Corner("bench", speed, path), FINE);
    }

    /** A circle of 50 m driven from a crawl, as nearly from rest as a line can start. */
    private static IdealProfile circleFromRest(double angle) {
        Path path = SegmentPath.of(0, List.of(Segment.arcThroughAngle(angle, 50, Turn.LEFT)), 0, 5);
        return solve(path, CRAWL);
    }

    private static final double CRAWL = 0.01;

    /** t·√(A/r) over the first angle; the crawl at the start saves the time in which it would have been reached. */
    private static double circleFromRestTime(Inputs in) {
        double time = circleFromRest(in.number("angle_rad")).time() + CRAWL / LIMIT;
        return time * Math.sqrt(LIMIT / 50);
    }

    private static double circleFromRestSpeed(Inputs in) {
        IdealProfile profile = circleFromRest(in.number("angle_rad"));
        return profile.speed(profile.size() - 1) / Math.sqrt(LIMIT * 50);
    }

    /** Braking on a circle from one speed to the limit speed of the tighter circle that follows. */
    private static double circleBraking(Inputs in) {
        double radius = in.number("radius_m");
        double to = in.number("to_mps");
        Path path = SegmentPath.of(
                0, List.of(Segment.arc(40, radius, Turn.LEFT), Segment.arc(10, to * to / LIMIT, Turn.LEFT)), 0, 5);
        IdealProfile profile = solve(path, in.number("from_mps"));
        double from = Bench.lastTrue(s -> profile.speedAt(40 - s) < in.number("from_mps"), 1e-6, 39);
        return in.word("give").equals("distance") ? from : timeAt(profile, 40) - timeAt(profile, 40 - from);
    }

    private static double timeAt(IdealProfile profile, double s) {
        int i = 0;
        while (i + 2 < profile.size() && profile.station(i + 1) <= s) {
            i++;
        }
        return profile.time(i) + 2 * (s - profile.station(i)) / (profile.speed(i) + profile.speedAt(s));
    }

    /**
     * Straight, half a circle, in feet and seconds: time to the end of the half circle, of a car that cannot drive (so
     * the approach is at constant speed, as in the source).
     */
    private static double halfTurn(Inputs in) {
        double foot = 0.3048;
        double radius = in.number("radius_ft") * foot;
        Path path = SegmentPath.of(
                in.number("straight_ft") * foot, List.of(Segment.arcThroughAngle(Math.PI, radius, Turn.LEFT)), 0, 5);
        Inputs car = new Inputs(Map.of("friction", Double.toString(32 * foot / Gravity.G), "power_w", "0"));
        double entry = 100 * 5280 / 3600.0 * foot;
        return IdealEntry.solve(Bench.car(car), new Corner("bench", entry, path), FINE)
                .time();
    }

    /** The straight after it, driven by the front axle alone, which carries half the weight: time or speed in mph. */
    private static double halfTurnExit(Inputs in) {
        double foot = 0.3048;
        double speed = Math.sqrt(32 * in.number("radius_ft")) * foot;
        Path path = SegmentPath.of(in.number("straight_ft") * foot, List.of(), 0, 5);
        Inputs car = new Inputs(Map.of("friction", Double.toString(32 * foot / Gravity.G), "driven_axle", "front"));
        IdealProfile profile = IdealEntry.solve(Bench.car(car), new Corner("bench", speed, path), FINE);
        return in.word("give").equals("time") ? profile.time() : profile.speed(profile.size() - 1) / foot * 3600 / 5280;
    }

    /** Line of constant acceleration that turns the velocity by an angle without changing its size: a parabola. */
    private static HodographLine parabola(double angle) {
        double duration = 2 * SPEED / LIMIT * Math.sin(angle / 2);
        double ax = -LIMIT * Math.sin(angle / 2);
        double ay = LIMIT * Math.cos(angle / 2);
        return new HodographLine(APPROACH, duration, t -> new Motion(SPEED + ax * t, ay * t, ax, ay));
    }

    private static final double APPROACH = 5;

    /** The ideal entry on the free optimum's own line, from turn-in on, scaled: T·A/v₀, v_min/v₀ or v(0)/v₀. */
    private static double freeTurn(Inputs in) {
        return scaled(solve(parabola(Math.toRadians(in.number("angle_deg"))), SPEED), in);
    }

    private static double scaled(IdealProfile profile, Inputs in) {
        return switch (in.word("give")) {
            case "time" -> (profile.time() - timeAt(profile, 0)) * LIMIT / SPEED;
            case "minimum-speed" -> profile.minimumSpeed() / SPEED;
            case "turn-in-speed" -> profile.turnInSpeed() / SPEED;
            case "speed-at-share-of-half" -> {
                double half = (profile.time() - timeAt(profile, 0)) / 2;
                double time = timeAt(profile, 0) + in.number("share") * half;
                double s = Bench.lastTrue(x -> timeAt(profile, x) <= time, 0, profile.station(profile.size() - 1));
                yield profile.speedAt(s) / SPEED;
            }
            default -> throw new IllegalArgumentException("give what?");
        };
    }

    /** Another line for the same turn: braking, an arc of a radius, driving; from v₀ back to v₀. */
    private static double freeTurnArc(Inputs in) {
        double angle = Math.toRadians(in.number("angle_deg"));
        return arc(angle, in.number("radius_share") * SPEED * SPEED / LIMIT);
    }

    /** T·A/v₀ from leaving v₀ to being back at it, on straight, spiral, arc, spiral, straight. */
    private static double arc(double angle, double radius) {
        double spiral = 0.2 * radius;
        double straight = SPEED * SPEED / (2 * LIMIT) + 5;
        Path path = SegmentPath.of(
                straight,
                List.of(
                        Segment.spiralIn(spiral, radius, Turn.LEFT),
                        Segment.arc(radius * angle - spiral, radius, Turn.LEFT),
                        Segment.spiralOut(spiral, radius, Turn.LEFT)),
                straight,
                5);
        IdealProfile profile = IdealEntry.solve(
                Bench.car(friction(FRICTION)), new Corner("bench", SPEED, path), IdealOptions.DEFAULT.withStep(0.05));
        double slow = SPEED * (1 - 1e-6);
        double leaves = Double.NaN;
        double back = Double.NaN;
        double last = profile.station(profile.size() - 1);
        for (double s = profile.station(0); s < last; s += 0.01) {
            // At constant full speed nothing is lost before the braking, so the clock starts with it.
            boolean below = profile.speedAt(s) < slow;
            leaves = below && Double.isNaN(leaves) ? s : leaves;
            back = below ? s : back;
        }
        // The entry ignores the start speed on the way out, where it may be faster than v₀: the clock stops at v₀.
        return (timeAt(profile, back) - timeAt(profile, leaves)) * LIMIT / SPEED;
    }

    /** The half turn of prescribed width: tangent of the acceleration's direction linear in time, parameter s. */
    private static HodographLine linearTangent(double s) {
        double rise = asinh(s);
        double duration = 2 * s / rise * SPEED / LIMIT;
        return new HodographLine(APPROACH, duration, t -> {
            double tangent = s * (1 - 2 * t / duration);
            double root = Math.hypot(1, tangent);
            return new Motion(
                    SPEED * asinh(tangent) / rise,
                    SPEED * (Math.hypot(1, s) - root) / rise,
                    -LIMIT / root,
                    LIMIT * tangent / root);
        });
    }

    private static double asinh(double x) {
        return Math.signum(x) * Math.log(Math.abs(x) + Math.hypot(1, x));
    }

    /** Parameter of the linear tangent law for a width D·A/v₀². */
    private static double parameter(double width) {
        return Bench.lastTrue(s -> (s * Math.hypot(1, s) - asinh(s)) / (asinh(s) * asinh(s)) < width, 1e-3, 50);
    }

    private static double widthTurn(Inputs in) {
        if (in.word("give").equals("parameter")) {
            return parameter(in.number("width"));
        }
        return scaled(solve(linearTangent(parameter(in.number("width"))), SPEED), in);
    }

    /** The same half turn by straights, spirals and an arc as wide as asked. */
    private static double widthTurnArc(Inputs in) {
        double width = in.number("width") * SPEED * SPEED / LIMIT;
        // A spiral of a fifth of the radius widens the half circle a little; the radius is made to fit the width.
        double radius = Bench.lastTrue(r -> width(r) < width, 0.1 * width, width);
        return arc(Math.PI, radius);
    }

    private static double width(double radius) {
        double spiral = 0.2 * radius;
        Path path = SegmentPath.of(
                0,
                List.of(
                        Segment.spiralIn(spiral, radius, Turn.LEFT),
                        Segment.arc(radius * Math.PI - spiral, radius, Turn.LEFT),
                        Segment.spiralOut(spiral, radius, Turn.LEFT)),
                0,
                5);
        return path.position(path.end()).y();
    }

    /** Speed over v₀ where the heading has turned by an angle, on the line of equal braking and cornering. */
    private static double equalSplitSpeed(Inputs in) {
        double angle = Math.toRadians(in.number("angle_deg"));
        double share = LIMIT / Math.sqrt(2);
        double lowest = SPEED * Math.exp(-angle - 0.2);
        HodographLine line = new HodographLine(APPROACH, (SPEED - lowest) / share, t -> {
            double speed = SPEED - share * t;
            double turned = Math.log(SPEED / speed);
            double cos = Math.cos(turned);
            double sin = Math.sin(turned);
            return new Motion(speed * cos, speed * sin, share * (-cos - sin), share * (-sin + cos));
        });
        double s = Bench.lastTrue(x -> line.heading(x) < angle, 0, line.end());
        // The line ends where the law ends: behind it waits a circle as tight as its end, which holds the speed down.
        Path held = new HeldLine(line, lowest);
        return solve(held, SPEED).speedAt(s) / SPEED;
    }

    /** A line with a circle added behind its end that can just be driven at a speed. */
    private record HeldLine(HodographLine line, double speed) implements Path {

        private static final double LENGTH = 5;

        @Override
        public double start() {
            return line.start();
        }

        @Override
        public double end() {
            return line.end() + LENGTH;
        }

        @Override
        public double curvature(double s) {
            return s < line.end() ? line.curvature(s) : LIMIT / (speed * speed);
        }

        @Override
        public double curvatureGradient(double s) {
            return s < line.end() ? line.curvatureGradient(s) : 0;
        }

        @Override
        public double heading(double s) {
            return line.heading(s) + Math.max(0, s - line.end()) * LIMIT / (speed * speed);
        }

        @Override
        public Point position(double s) {
            return line.position(s);
        }

        @Override
        public double grade(double s) {
            return 0;
        }

        @Override
        public double banking(double s) {
            return 0;
        }

        @Override
        public double widthLeft(double s) {
            return line.widthLeft(s);
        }

        @Override
        public double widthRight(double s) {
            return line.widthRight(s);
        }

        @Override
        public double[] kinks() {
            return new double[] {0, line.end()};
        }
    }
}
