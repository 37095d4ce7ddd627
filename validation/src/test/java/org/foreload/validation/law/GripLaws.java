package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.grip.AccelerationRange;
import org.foreload.grip.Axle;
import org.foreload.grip.AxleUse;
import org.foreload.grip.BrakeDistribution;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GgDiagram;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.load.LoadTransfer;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;

/** What no quasi-steady car may do, whatever its numbers. */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class GripLaws {

    /** Searches of the library stop at a relative 1e-11; sums of them are compared. */
    private static final double CLOSE = 1e-7;

    @Property(seed = Possible.SEED)
    void loadsAddUpFromTheirParts(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 0, max = 60) double speed,
            @ForAll @DoubleRange(min = -4, max = 8) double deceleration,
            @ForAll @DoubleRange(min = -6, max = 6) double lateral) {
        WheelLoads still = LoadTransfer.wheelLoads(car, speed, 0, 0, 0, 0);
        WheelLoads braking = LoadTransfer.wheelLoads(car, speed, deceleration, 0, 0, 0);
        WheelLoads cornering = LoadTransfer.wheelLoads(car, speed, 0, lateral, 0, 0);
        WheelLoads both = LoadTransfer.wheelLoads(car, speed, deceleration, lateral, 0, 0);
        if (both.lifted().isEmpty()
                && braking.lifted().isEmpty()
                && cornering.lifted().isEmpty()) {
            double sum = braking.frontLeft() + cornering.frontLeft() - still.frontLeft();
            assertEquals(sum, both.frontLeft(), CLOSE * still.total());
        }
    }

    @Property(seed = Possible.SEED)
    void frontCapacityFallsWithBrakingBeyondItsBest(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 8, max = 50) double speed,
            @ForAll @DoubleRange(min = 0.05, max = 3) double more,
            @ForAll @DoubleRange(min = 0.05, max = 3) double still) {
        BrakingGrip grip = BrakingGrip.of(car, speed);
        double best = grip.bestDeceleration();
        double first = grip.frontCapacity(best + more);
        double second = grip.frontCapacity(best + more + still);
        assertTrue(second <= first * (1 + CLOSE), () -> first + " then " + second + " beyond " + best);
    }

    @Property(seed = Possible.SEED)
    void noDecelerationGivesTheFrontAxleMoreThanItsBest(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 8, max = 50) double speed,
            @ForAll @DoubleRange(min = 0, max = 12) double deceleration) {
        BrakingGrip grip = BrakingGrip.of(car, speed);
        double best = grip.frontCapacity(grip.bestDeceleration());
        assertTrue(grip.frontCapacity(deceleration) <= best * (1 + CLOSE));
    }

    @Property(seed = Possible.SEED)
    void theRearAxlePaysForEveryBraking(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 8, max = 50) double speed,
            @ForAll @DoubleRange(min = 0, max = 6) double deceleration,
            @ForAll @DoubleRange(min = 0.01, max = 4) double more) {
        double coasting = car.aerodynamics().drag(speed * speed) / car.chassis().mass();
        BrakingGrip grip = BrakingGrip.of(car, speed);
        double before = grip.rearCapacity(coasting + deceleration);
        double after = grip.rearCapacity(coasting + deceleration + more);
        assertTrue(after <= before * (1 + CLOSE), () -> before + " then " + after);
    }

    @Property(seed = Possible.SEED)
    void theGgDiagramIsConvex(@ForAll Car car, @ForAll @DoubleRange(min = 8, max = 50) double speed) {
        var boundary = GgDiagram.of(car, speed, 9).boundary();
        double coasting = car.aerodynamics().drag(speed * speed) / car.chassis().mass();
        for (int i = 1; i + 1 < boundary.size(); i++) {
            var a = boundary.get(i - 1);
            var b = boundary.get(i);
            var c = boundary.get(i + 1);
            // Where the foot changes from throttle to brake the diagram may have a corner that points inward.
            // A lifted wheel bends it, too: its axle then no longer loses by the transfer.
            boolean allDown = lifted(car, speed, a) + lifted(car, speed, b) + lifted(car, speed, c) == 0;
            if (allDown && (a.deceleration() >= coasting || c.deceleration() <= coasting)) {
                double share = (b.deceleration() - a.deceleration()) / (c.deceleration() - a.deceleration());
                double chord = a.lateral() + share * (c.lateral() - a.lateral());
                assertTrue(b.lateral() >= chord - CLOSE * 10, () -> a + " " + b + " " + c);
            }
        }
    }

    private static int lifted(Car car, double speed, GgDiagram.Point point) {
        return LoadTransfer.wheelLoads(car, speed, point.deceleration(), point.lateral(), 0, 0)
                .lifted()
                .size();
    }

    @Property(seed = Possible.SEED)
    void moreFrictionNeverHarms(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 8, max = 50) double speed,
            @ForAll @DoubleRange(min = 0, max = 6) double deceleration,
            @ForAll @DoubleRange(min = 1.01, max = 1.5) double factor) {
        Car better = car.withTyres(grippier(car.frontTyre(), factor), grippier(car.rearTyre(), factor));
        double before = BrakingGrip.of(car, speed).lateralAcceleration(deceleration);
        double after = BrakingGrip.of(better, speed).lateralAcceleration(deceleration);
        assertTrue(after >= before * (1 - CLOSE), () -> before + " then " + after);
    }

    private static FrictionTyre grippier(org.foreload.tyre.Tyre tyre, double factor) {
        FrictionTyre old = (FrictionTyre) tyre;
        return new FrictionTyre(
                old.curve(),
                old.frictionX() * factor,
                old.frictionY() * factor,
                old.loadSensitivity(),
                old.referenceLoad(),
                old.relaxationLength(),
                old.corneringStiffnessPerLoad(),
                old.slipStiffnessPerLoad());
    }

    @Property(seed = Possible.SEED)
    void frictionScalesWhatAxlesUse(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 50) double speed,
            @ForAll @DoubleRange(min = -3, max = 6) double deceleration,
            @ForAll @DoubleRange(min = 0.1, max = 8) double lateral,
            @ForAll @DoubleRange(min = 0.5, max = 2) double factor) {
        Car other = car.withTyres(grippier(car.frontTyre(), factor), grippier(car.rearTyre(), factor));
        GripUse before = GripLimits.of(car).use(Motion.steady(speed, deceleration, lateral));
        GripUse after = GripLimits.of(other).use(Motion.steady(speed, deceleration, lateral));
        same(before.front().utilisation() / factor, after.front().utilisation());
        same(before.rear().utilisation() / factor, after.rear().utilisation());
    }

    /** Lengths by λ, times by √λ, masses by m: with gravity as it is, shares of grip do not change. */
    @Property(seed = Possible.SEED)
    void aLargerWorldUsesTheSameShareOfItsGrip(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 5, max = 50) double speed,
            @ForAll @DoubleRange(min = -3, max = 6) double deceleration,
            @ForAll @DoubleRange(min = -0.02, max = 0.02) @Scale(5) double curvature,
            @ForAll @DoubleRange(min = -0.001, max = 0.001) @Scale(6) double gradient,
            @ForAll @DoubleRange(min = 0.3, max = 3) double length,
            @ForAll @DoubleRange(min = 0.3, max = 3) double mass) {
        Car other = Scaled.car(car, length, mass);
        GripUse before = GripLimits.of(car).use(Motion.onLine(speed, deceleration, curvature, gradient, 0, 0));
        GripUse after = GripLimits.of(other)
                .use(Motion.onLine(
                        speed * Math.sqrt(length),
                        deceleration,
                        curvature / length,
                        gradient / (length * length),
                        0,
                        0));
        same(before.front().utilisation(), after.front().utilisation());
        same(before.rear().utilisation(), after.rear().utilisation());
        same(before.powerUtilisation(), after.powerUtilisation());
    }

    private static void same(double expected, double actual) {
        if (Double.isFinite(expected) || Double.isFinite(actual)) {
            assertEquals(expected, actual, CLOSE * (1 + Math.abs(expected)));
        }
    }

    @Property(seed = Possible.SEED)
    void aTighterCurveLeavesNoMoreBrakingNorDriving(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 8, max = 40) double speed,
            @ForAll @DoubleRange(min = 0, max = 0.02) @Scale(5) double curvature,
            @ForAll @DoubleRange(min = 1.01, max = 2) double tighter) {
        Car point = withoutYawInertia(car);
        Optional<AccelerationRange> wide = GripLimits.of(point).accelerationRange(speed * speed, curvature, 0, 0, 0);
        Optional<AccelerationRange> tight =
                GripLimits.of(point).accelerationRange(speed * speed, curvature * tighter, 0, 0, 0);
        if (tight.isPresent()) {
            assertTrue(wide.isPresent());
            assertTrue(wide.get().lowest() <= tight.get().lowest() + 1e-6);
            assertTrue(wide.get().highest() >= tight.get().highest() - 1e-6);
        }
    }

    private static Car withoutYawInertia(Car car) {
        var c = car.chassis();
        return car.with(new org.foreload.vehicle.Chassis(
                c.mass(), c.wheelbase(), c.cgToFrontAxle(), c.cgHeight(), 0, c.frontTrack(), c.rearTrack()));
    }

    @Property(seed = Possible.SEED)
    void theWholeCarLocksWhereItsBrakeDistributionSays(
            @ForAll Car car, @ForAll @DoubleRange(min = 0.2, max = 1.5) double friction) {
        FrictionTyre even = constant(car.frontTyre(), friction);
        Car plain = car.with(Aerodynamics.NONE).withTyres(even, even);
        BrakeDistribution brakes = BrakeDistribution.of(plain);
        double rate = Math.min(brakes.frontLockRate(friction), brakes.rearLockRate(friction));
        // Beyond this rate the rear axle leaves the road, which the distribution's formulas do not know.
        double lifting = plain.chassis().cgToFrontAxle() / plain.chassis().cgHeight();
        if (rate < lifting) {
            double lowest = GripLimits.of(plain)
                    .accelerationRange(400, 0, 0, 0, 0)
                    .orElseThrow()
                    .lowest();
            assertEquals(rate, -lowest / 9.81, CLOSE);
        }
    }

    private static FrictionTyre constant(org.foreload.tyre.Tyre tyre, double friction) {
        FrictionTyre old = (FrictionTyre) tyre;
        return new FrictionTyre(
                old.curve(),
                friction,
                friction,
                0,
                old.referenceLoad(),
                old.relaxationLength(),
                old.corneringStiffnessPerLoad(),
                old.slipStiffnessPerLoad());
    }

    /** With one friction, tracks without end and no air, the best deceleration has a closed form. */
    @Property(seed = Possible.SEED)
    void theBestDecelerationIsThatOfTheClosedForm(
            @ForAll Car car, @ForAll @DoubleRange(min = 0.4, max = 1.4) double friction) {
        var c = car.chassis();
        FrictionTyre even = constant(car.frontTyre(), friction);
        Car plain = car.with(Aerodynamics.NONE)
                .withTyres(even, even)
                .with(new org.foreload.vehicle.Chassis(
                        c.mass(), c.wheelbase(), c.cgToFrontAxle(), c.cgHeight(), c.yawInertia(), 1e7, 1e7));
        double best = BrakingGrip.bestDecelerationClosedForm(
                friction, c.wheelbase(), c.cgToFrontAxle(), c.cgHeight(), plain.frontBrakeShare());
        double lock = 9.81 * BrakeDistribution.of(plain).frontLockRate(friction);
        double lifting = 9.81 * c.cgToFrontAxle() / c.cgHeight();
        if (best < Math.min(lock, lifting)) {
            BrakingGrip grip = BrakingGrip.of(plain, 20);
            // The maximum is flat: its place is known to the root of the accuracy of its height.
            assertEquals(best, grip.bestDeceleration(), 1e-3);
            assertEquals(grip.frontCapacity(best), grip.frontCapacity(grip.bestDeceleration()), 1e-6 * c.mass());
        }
    }

    @Property(seed = Possible.SEED)
    void theLimitingAxleIsTheFullerOne(
            @ForAll Car car,
            @ForAll @DoubleRange(min = 8, max = 50) double speed,
            @ForAll @DoubleRange(min = 0, max = 5) double deceleration) {
        BrakingGrip grip = BrakingGrip.of(car, speed);
        double lateral = grip.lateralAcceleration(deceleration);
        if (lateral > 0) {
            GripUse use = GripLimits.of(car).use(Motion.steady(speed, deceleration, lateral));
            double fullest = grip.limitingAxle(deceleration)
                    .map(axle -> axle == Axle.FRONT ? use.front() : use.rear())
                    .map(AxleUse::utilisation)
                    .orElse(use.tippingUtilisation());
            assertEquals(1, fullest, 1e-6);
            assertTrue(use.utilisation() <= 1 + 1e-6 && use.tippingUtilisation() <= 1 + 1e-6);
        }
    }
}
