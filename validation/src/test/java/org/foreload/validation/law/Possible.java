package org.foreload.validation.law;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiFunction;
import java.util.function.IntFunction;
import java.util.random.RandomGenerator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Provide;
import net.jqwik.api.domains.DomainContextBase;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/**
 * Whole cars, corners and releases that could be: drawn from one seed each, so that a failing case is named by a
 * number.
 */
public final class Possible extends DomainContextBase {

    /** Seed of the draws, so that a build which passes once passes again; the soak draws others. */
    static final String SEED = "20261127";

    /** A car, a corner and a brake plan that belong together. */
    public record Case(long seed, Car car, Corner corner, BrakePlan plan) {}

    @Provide
    Arbitrary<Case> cases() {
        return Arbitraries.longs().map(seed -> drawn(seed, Possible::known)).dontShrink();
    }

    @Provide
    Arbitrary<Car> cars() {
        return Arbitraries.longs()
                .map(seed -> car(random(seed), Possible::known))
                .dontShrink();
    }

    /** The case of a seed, with curves of its own; the laws' differ from it by no more than a step of a curve. */
    public static Case drawn(long seed) {
        return drawn(seed, SlipCurve.MagicFormula::new);
    }

    private static Case drawn(long seed, BiFunction<Double, Double, SlipCurve> curves) {
        RandomGenerator random = random(seed);
        Car car = car(random, curves);
        Corner corner = corner(random);
        return new Case(seed, car, corner, plan(random, corner));
    }

    private static RandomGenerator random(long seed) {
        return new java.util.SplittableRandom(seed);
    }

    private static double in(RandomGenerator random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Steps of the factors of the laws' curves. */
    private static final double SHAPE_STEP = 0.02;

    private static final double CURVATURE_STEP = 0.05;

    /** The laws' curves by their factors: to make the tables of a new one takes longer than most laws take to try. */
    private static final Map<List<Long>, SlipCurve> KNOWN = new ConcurrentHashMap<>();

    private static SlipCurve known(double shape, double curvature) {
        return KNOWN.computeIfAbsent(
                List.of(Math.round(shape / SHAPE_STEP), Math.round(curvature / CURVATURE_STEP)),
                steps -> new SlipCurve.MagicFormula(steps.get(0) * SHAPE_STEP, steps.get(1) * CURVATURE_STEP));
    }

    private static Car car(RandomGenerator random, BiFunction<Double, Double, SlipCurve> curves) {
        double mass = in(random, 500, 2400);
        double wheelbase = in(random, 2.1, 3.1);
        double toFront = wheelbase * in(random, 0.38, 0.58);
        double height = in(random, 0.2, 0.6);
        double track = in(random, 1.35, 1.75);
        double inertia = mass * toFront * (wheelbase - toFront) * in(random, 0.75, 1.2);
        boolean wings = random.nextInt(3) == 0;
        double load = mass * 9.81 / 4;
        double friction = in(random, 0.7, 1.6);
        double sensitivity = in(random, 0, 0.15);
        IntFunction<FrictionTyre> tyre = rear -> {
            double here = friction * in(random, 0.95, 1.05);
            SlipCurve curve = random.nextBoolean()
                    ? new SlipCurve.Brush()
                    : curves.apply(in(random, 1.2, 1.6), in(random, -1, 0.3));
            return new FrictionTyre(
                    curve,
                    here * in(random, 0.95, 1.1),
                    here,
                    sensitivity,
                    load,
                    in(random, 0.15, 0.6),
                    in(random, 13, 20) + 4 * rear,
                    in(random, 15, 25));
        };
        return new Car(
                "possible",
                new Chassis(mass, wheelbase, toFront, height, inertia, track, track * in(random, 0.95, 1.05)),
                new Suspension(
                        in(random, 0.45, 0.7),
                        in(random, 0, 0.1),
                        in(random, 0, 0.15),
                        new Response(in(random, 1.2, 3), in(random, 0.25, 0.8)),
                        new Response(in(random, 1.2, 3), in(random, 0.25, 0.8))),
                new Aerodynamics(
                        in(random, 0.4, 1.2),
                        wings ? in(random, 0.3, 1.5) : 0,
                        wings ? in(random, 0.4, 1.8) : 0,
                        1.2,
                        wings ? in(random, 0, 0.4) : 0),
                in(random, 0.55, 0.8),
                new Driveline(mass * in(random, 50, 300), DrivenAxle.values()[random.nextInt(3)]),
                tyre.apply(0),
                tyre.apply(1));
    }

    private static Corner corner(RandomGenerator random) {
        double radius = Math.exp(in(random, Math.log(15), Math.log(160)));
        double angle = in(random, 0.6, Math.PI);
        double spiral = in(random, 0.15, 0.9) * radius * Math.min(1, angle);
        double arc = Math.max(1, radius * angle - spiral);
        Turn turn = random.nextBoolean() ? Turn.LEFT : Turn.RIGHT;
        List<Segment> segments = new ArrayList<>();
        segments.add(Segment.spiralIn(spiral, radius, turn));
        segments.add(Segment.arc(arc, radius, turn));
        segments.add(Segment.spiralOut(spiral * in(random, 0.7, 1.3), radius, turn));
        double speed = Math.min(70, Math.sqrt(8 * radius) * in(random, 1.1, 2.5));
        SegmentPath path = SegmentPath.of(speed * speed / 8 + 60, segments, 80, 5);
        return new Corner("possible", speed, path);
    }

    private static BrakePlan plan(RandomGenerator random, Corner corner) {
        ReleaseShape shape =
                ReleaseShapes.all().get(random.nextInt(ReleaseShapes.all().size()));
        double apex = corner.path().end() / 3;
        double end = in(random, -0.2, 1.2) * apex;
        double start = end - in(random, 0, 1) * apex;
        double peak = in(random, 1, 11);
        double needed = corner.approachSpeed() * corner.approachSpeed() / (2 * peak) * in(random, 0.2, 0.9);
        double point = Math.max(corner.path().start() + 5, start - needed);
        return Braking.of(peak, in(random, 0.05, 0.4), new Release(shape, start, end))
                .from(point);
    }
}
