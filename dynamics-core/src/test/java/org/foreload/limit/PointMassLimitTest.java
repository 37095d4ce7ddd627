package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The limit of a car that is nearly a point mass: a foot between its axles, no CG height, hardly any yaw inertia, stiff
 * tyres without lag, any power, quick hands and feet.
 */
class PointMassLimitTest {

    /** Greatest acceleration, m/s². */
    private static final double MOST = 10;

    private static final double GRAVITY = 9.81;
    private static final double SPEED = 40;

    private static final Hands HANDS =
            new Hands(20, 0, 0, 0.01, 1.1 * MOST, 0.9995, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    static Car car(double friction, DrivenAxle driven) {
        Tyre tyre = new FrictionTyre(new SlipCurve.Brush(), friction, friction, 0, 4000, 0, 60, 60);
        return new Car(
                "point",
                new Chassis(1000, 0.3, 0.15, 0, 0.45, 1, 1),
                new Suspension(0.5, 0, 0, Response.RIGID, Response.RIGID),
                Aerodynamics.NONE,
                0.5,
                new Driveline(1e8, driven),
                tyre,
                tyre);
    }

    /** A road by its pieces: approach, then arcs given by radius and angle in degrees, then exit; lengths in m. */
    static Path road(double halfWidth, double approach, double exit, double... arcs) {
        List<Segment> segments = new ArrayList<>();
        for (int i = 0; i < arcs.length; i += 2) {
            segments.add(Segment.arcThroughAngle(Math.toRadians(arcs[i + 1]), arcs[i], Turn.LEFT));
        }
        return SegmentPath.of(approach, segments, exit, halfWidth);
    }

    static LimitResult solve(Car car, Path path, Band band, double speed) {
        return Limit.solve(
                car,
                new Corner("road", speed, path),
                band,
                HANDS,
                new LimitOptions(80, 1e-5, 300),
                (step, residual) -> {});
    }

    private static double returnTime(LimitResult result, double speed) {
        boolean slower = false;
        for (int i = 1; i < result.points().size(); i++) {
            LimitPoint from = result.points().get(i - 1);
            LimitPoint to = result.points().get(i);
            slower |= to.speed() < 0.99 * speed;
            if (slower && to.speed() >= speed) {
                double share = (speed - from.speed()) / (to.speed() - from.speed());
                return from.time() + share * (to.time() - from.time());
            }
        }
        return Double.NaN;
    }

    /**
     * A turn with free positions has one constant acceleration: T = 2·v₀/A·sin(ψ/2), slowest v₀·cos(ψ/2). On the way to
     * a line across which the car may go anywhere and at any speed, the quickest acceleration is constant, too, and at
     * right angles to that line (its multipliers do not change with time). On a road that turns through 90° + ψ/2 the
     * car comes back to its first speed after turning through ψ: up to there it is the turn with free positions.
     * Derived here; problem class: P. Palffy-Muhoray, W. G. Unruh, Turning quickly, American Journal of Physics 49, 685
     * (1981), title and abstract. Agreed accuracy: 0.3 % in time, 1 % in speed. A turn through 180° is one on the spot:
     * its lowest speed is zero, and no equation per metre of a road can describe it.
     */
    @ParameterizedTest
    @CsvSource({"60, 30, 69, 2.2, '47.5 120'", "135, 26, 20, 62, '160 20 40 137.5'"})
    void aFreeTurnHasOneAcceleration(double turn, double halfWidth, double approach, double exit, String arcs) {
        double half = Math.toRadians(turn / 2);
        double[] pieces = java.util.Arrays.stream(arcs.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Path path = road(halfWidth + 0.5, approach, exit, pieces);
        LimitResult result = solve(car(MOST / GRAVITY, DrivenAxle.ALL), path, Band.road(), SPEED);
        assertTrue(result.converged(), "residual " + result.optimality());
        double time = 2 * SPEED / MOST * Math.sin(half);
        assertEquals(time, returnTime(result, SPEED), 0.003 * time);
        assertEquals(SPEED * Math.cos(half), result.minimumSpeed(), 0.01 * SPEED * Math.cos(half));
        assertEquals(wholeTime(path, half), result.time(), 0.003 * result.time());
    }

    /** The same of a right angle. */
    @Tag("long")
    @ParameterizedTest
    @CsvSource("90, 28, 54, 6.3, '70 135'")
    void soHasARightAngle(double turn, double halfWidth, double approach, double exit, String arcs) {
        aFreeTurnHasOneAcceleration(turn, halfWidth, approach, exit, arcs);
    }

    /** Time to the end of the road with that acceleration. */
    private static double wholeTime(Path path, double half) {
        Path.Point from = path.position(path.start());
        Path.Point to = path.position(path.end());
        double heading = path.heading(path.end());
        double way = (to.x() - from.x()) * Math.cos(heading) + (to.y() - from.y()) * Math.sin(heading);
        double against = SPEED * Math.sin(half);
        return (against + Math.sqrt(against * against + 2 * MOST * way)) / MOST;
    }

    private static final double UNIT = SPEED * SPEED / MOST;

    private static PrescribedWidth halfTurn(double width, double spirals) {
        return new PrescribedWidth(car(MOST / GRAVITY, DrivenAxle.ALL), HANDS, width * UNIT, SPEED, spirals);
    }

    /** The points up to the lane. */
    private static List<LimitPoint> turn(PrescribedWidth problem, LimitResult result) {
        assertTrue(result.converged(), "residual " + result.optimality());
        return result.points().stream()
                .filter(point -> point.station() <= problem.end() + 1e-6)
                .toList();
    }

    /**
     * Half a turn of width D·A/v₀², from v₀ back to v₀: the tangent of the acceleration's direction is linear in time.
     * T in v₀/A, derived by an ODE of the same law and by direct optimisation; problem class as above. Agreed accuracy:
     * 0.3 % in time, 1 % in speed. The search starts on lines of that width with more or less of the turn in spirals,
     * none of which is the quickest.
     */
    @ParameterizedTest
    @CsvSource("2, 0, 3.11195038, 0.914039")
    void aHalfTurnOfPrescribedWidthFollowsTheLinearTangent(double width, double spirals, double time, double slowest) {
        PrescribedWidth problem = halfTurn(width, spirals);
        followsTheLinearTangent(problem, problem.solve(), width, time, slowest);
    }

    private static void followsTheLinearTangent(
            PrescribedWidth problem, LimitResult result, double width, double time, double slowest) {
        List<LimitPoint> turn = turn(problem, result);
        assertEquals(time, turn.get(turn.size() - 1).time() * MOST / SPEED, 0.003 * time);
        assertEquals(slowest, result.minimumSpeed() / SPEED, 0.01 * slowest);
        double off = turn.stream()
                .mapToDouble(point -> Math.abs(point.offset()))
                .max()
                .orElseThrow();
        assertTrue(off > 0.03 * width * UNIT, "the line was the quickest already: " + off + " m off it");
    }

    /** The same turn is found from other lines, and one of a narrow road. */
    @Tag("long")
    @ParameterizedTest
    @CsvSource({
        "0.5, 1, 2.15930007, 0.355144",
        "0.5, 0, 2.15930007, 0.355144",
        "0.7, 1, 2.27798230, 0.478250",
        "2, 0.3, 3.11195038, 0.914039"
    })
    void whereverTheSearchStartsItIsTheSame(double width, double spirals, double time, double slowest) {
        aHalfTurnOfPrescribedWidthFollowsTheLinearTangent(width, spirals, time, slowest);
    }

    /** Shares of the time to the slowest point, and there the speed over v₀ and the heading, °. */
    private static final double[][] RELEASE = {
        {0.10, 0.931825, 6.1246},
        {0.25, 0.841372, 16.6121},
        {0.50, 0.727290, 37.7339},
        {0.75, 0.662673, 62.7980},
        {0.90, 0.645892, 79.0009}
    };

    /**
     * How the brake is let off in a half turn of width v₀²/A, by the same law. Agreed accuracy: 0.5 %, half a degree.
     */
    @Test
    void theBrakeIsLetOffByTheLinearTangent() {
        PrescribedWidth problem = halfTurn(1, 1);
        LimitResult result = problem.solve();
        followsTheLinearTangent(problem, result, 1, 2.47293003, 0.642791);
        List<LimitPoint> turn = turn(problem, result);
        for (double[] row : RELEASE) {
            double time = row[0] * turn.get(turn.size() - 1).time() / 2;
            int i = 1;
            while (turn.get(i).time() < time) {
                i++;
            }
            LimitPoint from = turn.get(i - 1);
            LimitPoint to = turn.get(i);
            double part = (time - from.time()) / (to.time() - from.time());
            double speed = from.speed() + part * (to.speed() - from.speed());
            double direction = problem.direction(from) + part * (problem.direction(to) - problem.direction(from));
            assertEquals(row[1], speed / SPEED, 0.005 * row[1], "speed at " + row[0]);
            assertEquals(row[2], Math.toDegrees(direction), 0.5, "heading at " + row[0]);
        }
    }

    /** How much larger than in the table all lengths are. */
    private static final double LARGER = 25;

    /**
     * Half a turn between straights of 650 ft less what the arc begins earlier, from 100 mph, with constant speed on
     * the arc: B. Beckman, The Physics of Racing, Parts 17 and 18 (2000), whose table has 17.541 s and 17.301 s for
     * radii of 150 ft and 152 ft, brakes of 1 g and an exit of g/2; g = 32 ft/s² and 100 mph are inferred, and give
     * every digit of the table. The car comes at constant speed up to its brake point; that stretch is reckoned here,
     * since perfect feet would use it. An exit of g/2 is that of one driven axle of two that carry the same. The car of
     * the table jumps from the straight into the arc; the narrowest band, a centimetre to each side, would already
     * round that jump and be 0.4 % quicker. So all lengths are 25 times as large, and times five times. Agreed
     * accuracy: 0.3 %.
     */
    @Test
    void theFirstRowOfTheTableOfHalfTurnsIsReproduced() {
        theTableOfHalfTurnsIsReproduced(150, 17.5414);
    }

    /** The other row. */
    @Tag("long")
    @Test
    void theSecondRowOfTheTableIsReproduced() {
        theTableOfHalfTurnsIsReproduced(152, 17.3008);
    }

    private static void theTableOfHalfTurnsIsReproduced(double radius, double time) {
        double foot = 0.3048 * LARGER;
        double gravity = 32 * 0.3048;
        double speed = 100 * 5280.0 / 3600 * 0.3048 * Math.sqrt(LARGER);
        double earlier = Math.sqrt((radius - 100) * (radius - 100) - (200 - radius) * (200 - radius)) * foot;
        double straight = 650 * foot - earlier;
        double braking = (speed * speed - gravity * radius * foot) / (2 * gravity);
        Path path = road(10, braking, straight, radius * foot, 180);
        LimitResult result = solve(car(gravity / GRAVITY, DrivenAxle.REAR), path, Band.within(0.01), speed);
        assertTrue(result.converged(), "residual " + result.optimality());
        double whole = (result.time() + (straight - braking) / speed) / Math.sqrt(LARGER);
        assertEquals(time, whole, 0.003 * time);
    }
}
