package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.grip.GripLimits;
import org.foreload.grip.LocalGrip;
import org.foreload.load.LoadTransfer;
import org.foreload.load.SampleCars;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The highest start of a step: what is found can be driven, and a plain search over all accelerations, with a library's
 * optimiser and the utilisations alone, finds nothing higher.
 */
class FastestStartTest {

    /** Relative to the speed squared: the promised gap of the search and the accuracy of an edge, with room. */
    private static final double CLOSE = 1e-7;

    /**
     * How far below the highest the found start may lie: where a gentler end would allow a higher start, but by less
     * than one part in ten thousand per m/s², the search is content.
     */
    private static final double CONTENT = 2e-6;

    /** One step to be solved. */
    private record Step(
            double curvature, double gradient, double grade, double banking, double length, double end, double start) {

        Step withEnd(double other) {
            return new Step(curvature, gradient, grade, banking, length, other, start);
        }

        Step withStart(double other) {
            return new Step(curvature, gradient, grade, banking, length, end, other);
        }

        /** Whether any braking or driving near this speed lifts a wheel. */
        boolean lifts(Car car, double speedSquared) {
            double speed = Math.sqrt(Math.max(0, 1.02 * speedSquared));
            double lateral = speed * speed * curvature;
            for (double deceleration = -8; deceleration <= 16; deceleration++) {
                WheelLoads loads = LoadTransfer.wheelLoads(car, speed, deceleration, lateral, grade, banking);
                if (!loads.lifted().isEmpty()) {
                    return true;
                }
            }
            return false;
        }

        LocalGrip grip(Car car) {
            return GripLimits.of(car).at(curvature, gradient, grade, banking);
        }
    }

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.possible();
    }

    /** Straights, arcs and spirals; ends from a crawl to far too fast; starts that are bounded or not. */
    @Provide
    Arbitrary<Step> steps() {
        Arbitrary<Double> curvature = number(-0.08, 0.08);
        Arbitrary<Double> gradient = number(-0.003, 0.003);
        Arbitrary<Double> length = number(0.05, 2);
        Arbitrary<Double> end = number(1, 3000);
        Arbitrary<Double> start = Arbitraries.oneOf(number(1, 3000), Arbitraries.just(1e4));
        return Combinators.combine(curvature, gradient, number(-0.08, 0.08), number(-0.08, 0.08), length, end, start)
                .as(Step::new);
    }

    private static Arbitrary<Double> number(double low, double high) {
        return Arbitraries.doubles().between(low, high).ofScale(4);
    }

    /** Highest start with an acceleration: its fastest feasible middle, by scan and bisection; −∞ if there is none. */
    private static double startWith(Step step, LocalGrip grip, double a) {
        double top = Math.min(step.end - a * step.length, step.start + a * step.length);
        if (!(top > 0)) {
            return Double.NEGATIVE_INFINITY;
        }
        int parts = 60;
        for (int k = 0; k < parts; k++) {
            double good = top * (1 - (double) k / parts);
            if (feasible(grip, good, a)) {
                double bad = k == 0 ? good : top * (1 - (k - 1.0) / parts);
                for (int i = 0; i < 60; i++) {
                    double middle = (good + bad) / 2;
                    boolean inside = feasible(grip, middle, a);
                    good = inside ? middle : good;
                    bad = inside ? bad : middle;
                }
                return good - a * step.length;
            }
        }
        return Double.NEGATIVE_INFINITY;
    }

    private static boolean feasible(LocalGrip grip, double w, double a) {
        return grip.utilisation(w, -a) <= 1 && a <= grip.powerAcceleration(w);
    }

    private static UnivariatePointValuePair highest(Step step, LocalGrip grip) {
        double best = Double.NEGATIVE_INFINITY;
        double at = 0;
        double spacing = 0.25;
        for (double a = -40; a <= 20; a += spacing) {
            double value = startWith(step, grip, a);
            if (value > best) {
                best = value;
                at = a;
            }
        }
        return new BrentOptimizer(1e-12, 1e-12)
                .optimize(
                        new MaxEval(1000),
                        GoalType.MAXIMIZE,
                        new UnivariateObjectiveFunction(a -> startWith(step, grip, a)),
                        new SearchInterval(at - spacing, at + spacing, at));
    }

    private static void check(Car car, Step asked, LocalGrip grip, FastestStart search) {
        // As in a pass, nothing is asked for that the engine could not reach.
        double reach = asked.start + 2 * asked.length * grip.powerAccelerationOverStep(asked.start, asked.length);
        Step step = asked.withEnd(Math.min(asked.end, Math.max(0, reach)));
        if (!(step.end > 0)) {
            return;
        }
        double found = search.solve(grip, step.length, step.end, step.start);
        double a = search.acceleration();
        if (found > 0) {
            double middle = found + a * step.length;
            assertTrue(found <= step.start * (1 + CLOSE), "starts at " + found + ": " + step);
            assertTrue(middle + a * step.length <= step.end + CLOSE * (found + step.end), "ends too fast: " + step);
            assertTrue(grip.utilisation(middle, -a) <= 1 + CLOSE, "beyond the grip: " + step);
            assertTrue(a <= grip.powerAcceleration(middle) + CLOSE * (1 + Math.abs(a)), "beyond the power: " + step);
        }
        UnivariatePointValuePair best = highest(step, grip);
        double highest = best.getValue();
        if (step.lifts(car, highest + best.getPoint() * step.length)) {
            return; // a lifted wheel bends the feasible set: there the highest is not promised
        }
        assertTrue(found >= highest * (1 - CONTENT), found + " is lower than " + highest + ": " + step);
    }

    @Property
    void nothingHigherCanBeStartedFrom(@ForAll("cars") Car car, @ForAll("steps") Step step) {
        check(car, step, step.grip(car), new FastestStart(1));
    }

    /** One instance serves a whole pass: what it keeps as a first guess must not change the answer. */
    @Property
    void earlierStepsDoNotMatter(@ForAll("cars") Car car, @ForAll("steps") Step one, @ForAll("steps") Step other) {
        FastestStart search = new FastestStart(1);
        LocalGrip first = one.grip(car);
        check(car, one, first, search);
        check(car, one.withStart(one.start / 2), first, search);
        check(car, one.withEnd(one.end / 2), first, search);
        check(car, one.withEnd(one.end * 2), first, search);
        check(car, other, other.grip(car), search);
    }

    /**
     * The step of no length: the fastest speed with whatever acceleration it needs, here for a point mass: v² = μgR.
     */
    @Test
    void atAPlaceThePointMassTakesTheFrictionCircle() {
        Car car = SampleCars.pointMass(1.2);
        LocalGrip grip = GripLimits.of(car).at(1 / 40.0, 0, 0, 0);
        double limit = 1.2 * 9.81 * 40;
        assertEquals(limit, new FastestStart(1).atPlace(grip, 1e4), 1e-6 * limit);
        assertEquals(0.8 * limit, new FastestStart(0.8).atPlace(grip, 1e4), 1e-6 * limit);
        assertEquals(100, new FastestStart(1).atPlace(grip, 100), 1e-9);
    }

    /** On a straight the hardest braking: μ·g from any speed, so w₀ = w₁ + 2·μ·g·Δs; and no more than was asked. */
    @Test
    void onAStraightTheStartIsHardestBrakingAway() {
        Car car = SampleCars.pointMass(0.9);
        LocalGrip grip = GripLimits.of(car).at(0, 0, 0, 0);
        FastestStart search = new FastestStart(1);
        assertEquals(400 + 2 * 0.9 * 9.81 * 0.5, search.solve(grip, 0.5, 400, 1e4), 1e-6);
        assertEquals(-0.9 * 9.81, search.acceleration(), 1e-6);
        assertEquals(405, search.solve(grip, 0.5, 400, 405));
        assertEquals(-5, search.acceleration(), 1e-12);
    }

    /** A car without power that coasts uphill: it can only start faster than it ends. */
    @Test
    void withoutPowerAHillMustBeTakenWithSpeed() {
        Car car = SampleCars.pointMass(0.9).with(new Driveline(0, DrivenAxle.ALL));
        LocalGrip grip = GripLimits.of(car).at(0, 0, 0.05, 0);
        double hardest = 9.81 * (0.9 * Math.cos(0.05) + Math.sin(0.05));
        assertEquals(100 + 2 * hardest * 0.5, new FastestStart(1).solve(grip, 0.5, 100, 1e4), 1e-6);
    }

    /**
     * A car of little power, held by its rear axle where the bend opens: the harder it drives, the higher it may start,
     * up to the limit of its power, which is no convex one.
     */
    @Test
    void theHighestStartMayNeedAllThePower() {
        Car car = SampleCars.ROAD_CAR
                .with(new Chassis(600, 2.2, 0.81, 0.06, 436, 1.6, 1.3))
                .with(new Driveline(40_000, DrivenAxle.FRONT))
                .withFrontBrakeShare(0.5)
                .withTyres(SampleCars.tyre(1.33, 1.33, 0), SampleCars.tyre(0.51, 0.53, 0));
        Step step = new Step(0.0177, -0.001, -0.0322, 0, 0.2573, 450, 1e4);
        LocalGrip grip = step.grip(car);
        FastestStart search = new FastestStart(1);
        check(car, step, grip, search);
        double middle = search.solve(grip, step.length, step.end, step.start) + search.acceleration() * step.length;
        assertEquals(grip.powerAcceleration(middle), search.acceleration(), 1e-6);
    }

    /** Most steps of a pass end at the speed asked for: there nothing is tried, one root along the line is enough. */
    @Test
    void stepsThatEndAsAskedNeedNoTrial() {
        LocalGrip straight = GripLimits.of(SampleCars.ROAD_CAR).at(0, 0, 0, 0);
        LocalGrip bend = GripLimits.of(SampleCars.ROAD_CAR).at(0.01, 0, 0, 0);
        FastestStart search = new FastestStart(1);
        double w = 300;
        for (int i = 0; i < 60; i++) {
            w = search.solve(i < 30 ? bend : straight, 0.5, w, 1e4);
        }
        assertTrue(w > 800);
        assertEquals(0, search.trials());
    }

    /** In an arc that holds the speed step after step is equal, but for rounding: the answer is taken over. */
    @Test
    void anEqualStepNeedsNoTrial() {
        LocalGrip arc = GripLimits.of(SampleCars.ROAD_CAR).at(0.02, 0, 0, 0);
        FastestStart search = new FastestStart(1);
        double start = search.solve(arc, 0.5, 2000, 1e4);
        double end = start + 2 * search.acceleration() * 0.5;
        int trials = search.trials();
        assertTrue(trials > 0 && start < 1000, start + " after " + trials);
        assertEquals(start, search.solve(arc, 0.5 * (1 + 1e-12), 2000, 1e4));
        assertEquals(start, search.solve(arc, 0.5 * (1 - 1e-12), 2000, 1e4));
        assertEquals(start, search.solve(arc, 0.5, end + 1e-9, start));
        assertEquals(trials, search.trials());
        search.solve(arc, 0.4, 2000, 1e4);
        assertTrue(search.trials() > trials, "another length is another step");
    }

    /** What was held by its start or its end is no answer for a step that asks for more. */
    @Test
    void aHeldStepIsNotTakenOver() {
        LocalGrip straight = GripLimits.of(SampleCars.ROAD_CAR).at(0, 0, 0, 0);
        FastestStart search = new FastestStart(1);
        assertEquals(400, search.solve(straight, 0.5, 420, 400));
        assertEquals(405, search.solve(straight, 0.5, 420, 405));
        double hardest = search.solve(straight, 0.5, 390, 1e4);
        assertTrue(search.solve(straight, 0.5, 400, 1e4) > hardest + 9);
    }

    /** Through a spiral every step is a search over all accelerations. Tangents need few trials for each. */
    @ParameterizedTest
    @CsvSource({"1.10, 1.12, 5.2", "0.98, 1.25, 6.9", "1.20, 0.98, 8"})
    void aSpiralNeedsFewTrialsForEachStep(double front, double rear, double most) {
        Car car = SampleCars.ROAD_CAR.withTyres(SampleCars.tyre(1.15, front, 0.08), SampleCars.tyre(1.17, rear, 0.08));
        FastestStart search = new FastestStart(1);
        double w = 1e4;
        int steps = 100;
        for (int i = 0; i < steps; i++) {
            LocalGrip grip = GripLimits.of(car).at(0.02 + 0.0002 * i, 0.0004, 0, 0);
            w = search.solve(grip, 0.5, 1e4, 1e4);
        }
        assertTrue(search.trials() <= most * steps, search.trials() + " trials");
    }
}
