package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.conventions.InvalidValueException;
import org.foreload.grip.GripLimits;
import org.foreload.grip.Motion;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.validation.law.Possible.Case;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/** What holds of the fastest quasi-steady entry, whatever the car and the corner. */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class IdealLaws {

    /** Coarse steps: the laws hold at any step, and a thousand tries shall be quick. */
    private static final IdealOptions COARSE = IdealOptions.DEFAULT.withStep(4);

    /** Two solutions of the same equations differ by what greedy steps leave open at kinks of the line. */
    private static final double STEPS = 1e-3;

    private static Optional<IdealProfile> solved(Car car, Corner corner, IdealOptions options) {
        try {
            return Optional.of(IdealEntry.solve(car, corner, options));
        } catch (InvalidValueException tooFast) {
            return Optional.empty();
        }
    }

    private static Optional<IdealProfile> solved(Car car, Corner corner) {
        return solved(car, corner, COARSE);
    }

    @Property(seed = Possible.SEED)
    void noStepAsksForMoreThanThereIs(@ForAll Case one) {
        GripLimits limits = GripLimits.of(one.car());
        Path path = one.corner().path();
        solved(one.car(), one.corner()).ifPresent(profile -> {
            for (int i = 0; i + 1 < profile.size(); i++) {
                double s = (profile.station(i) + profile.station(i + 1)) / 2;
                double speed = profile.speedAt(s);
                Motion motion = Motion.onLine(
                        speed, profile.deceleration(i), path.curvature(s), path.curvatureGradient(s), 0, 0);
                double most = Math.max(
                        limits.use(motion).utilisation(), limits.use(motion).powerUtilisation());
                assertTrue(most <= 1 + 1e-6, () -> most + " at " + s);
            }
        });
    }

    @Property(seed = Possible.SEED)
    void theMirroredCornerTakesTheSameTime(@ForAll Case one) {
        Corner mirrored = new Corner(
                "mirrored", one.corner().approachSpeed(), one.corner().path().mirrored());
        Optional<IdealProfile> ours = solved(one.car(), one.corner());
        Optional<IdealProfile> other = solved(one.car(), mirrored);
        assertEquals(ours.isPresent(), other.isPresent());
        ours.ifPresent(
                profile -> assertEquals(profile.time(), other.orElseThrow().time(), 1e-9));
    }

    /** Lengths by λ, masses by m: times by √λ. */
    @Property(seed = Possible.SEED)
    void aLargerWorldTakesTheRootOfItsSizeLonger(
            @ForAll Case one,
            @ForAll @DoubleRange(min = 0.4, max = 2.5) double length,
            @ForAll @DoubleRange(min = 0.4, max = 2.5) double mass) {
        Optional<IdealProfile> ours = solved(one.car(), one.corner());
        Optional<IdealProfile> other = solved(
                Scaled.car(one.car(), length, mass),
                Scaled.corner(one.corner(), length),
                COARSE.withStep(COARSE.step() * length));
        assertEquals(ours.isPresent(), other.isPresent());
        ours.ifPresent(profile -> assertEquals(
                profile.time() * Math.sqrt(length), other.orElseThrow().time(), STEPS * profile.time()));
    }

    @Property(seed = Possible.SEED)
    void moreFrictionIsNeverSlower(@ForAll Case one, @ForAll @DoubleRange(min = 1.01, max = 1.5) double factor) {
        solved(one.car(), one.corner())
                .ifPresent(profile ->
                        assertNotSlower(solved(one.car(), one.corner(), COARSE.withFrictionScale(factor)), profile));
    }

    @Property(seed = Possible.SEED)
    void morePowerIsNeverSlower(@ForAll Case one, @ForAll @DoubleRange(min = 1.01, max = 2) double factor) {
        Driveline old = one.car().driveline();
        Car stronger = one.car().with(new Driveline(old.power() * factor, old.drivenAxle()));
        solved(one.car(), one.corner()).ifPresent(profile -> assertNotSlower(solved(stronger, one.corner()), profile));
    }

    @Property(seed = Possible.SEED)
    void comingFasterIsNeverSlower(@ForAll Case one, @ForAll @DoubleRange(min = 0.5, max = 0.99) double share) {
        Corner slower = new Corner(
                "slower", one.corner().approachSpeed() * share, one.corner().path());
        solved(one.car(), one.corner()).ifPresent(profile -> {
            IdealProfile later = solved(one.car(), slower).orElseThrow();
            assertTrue(profile.time() <= later.time() * (1 + STEPS));
        });
    }

    /** No jump: a millionth of the friction, or of the approach speed, is worth next to nothing. */
    @Property(seed = Possible.SEED)
    void timeIsContinuousInFrictionAndSpeed(@ForAll Case one) {
        solved(one.car(), one.corner()).ifPresent(profile -> {
            Corner beside = new Corner(
                    "beside",
                    one.corner().approachSpeed() * (1 - 1e-6),
                    one.corner().path());
            IdealProfile slower = solved(one.car(), beside).orElseThrow();
            assertEquals(profile.time(), slower.time(), STEPS * profile.time());
            solved(one.car(), beside, COARSE.withFrictionScale(1 - 1e-6))
                    .ifPresent(less -> assertEquals(profile.time(), less.time(), STEPS * profile.time()));
        });
    }

    private static void assertNotSlower(Optional<IdealProfile> better, IdealProfile than) {
        assertTrue(better.isPresent(), "a better car must make it, too");
        assertTrue(
                better.get().time() <= than.time() * (1 + STEPS),
                () -> better.get().time() + " after " + than.time());
    }

    /** A speed that a car can have at a place, it can have with a wider margin for the rest: profiles never cross. */
    @Property(seed = Possible.SEED)
    void lessGripIsNowhereFasterBeforeTheMinimum(
            @ForAll Case one, @ForAll @DoubleRange(min = 0.8, max = 0.99) double share) {
        Corner careful = new Corner(
                "careful", one.corner().approachSpeed() * 0.8, one.corner().path());
        Optional<IdealProfile> full = solved(one.car(), careful);
        Optional<IdealProfile> less = solved(one.car(), careful, COARSE.withFrictionScale(share));
        if (full.isPresent() && less.isPresent()) {
            for (double s = careful.path().start(); s < careful.path().end(); s += 5) {
                assertTrue(less.get().speedAt(s) <= full.get().speedAt(s) * (1 + 10 * STEPS), "at " + s);
            }
        }
    }

    /** A point mass brakes as well as it drives, so the line driven backward gives the same speeds in the bend. */
    @Property(seed = Possible.SEED)
    void timeReversed(
            @ForAll @DoubleRange(min = 0.5, max = 1.5) double friction,
            @ForAll @DoubleRange(min = 20, max = 90) double radius,
            @ForAll @DoubleRange(min = 10, max = 60) double in,
            @ForAll @DoubleRange(min = 10, max = 60) double out,
            @ForAll @DoubleRange(min = 1, max = 90) double arc) {
        double length = in + arc + out;
        double cap = Math.sqrt(friction * 9.81 * radius);
        // Straights long enough to brake from well above anything that the bend allows.
        double speed = 4 * cap;
        double straight = speed * speed / (2 * friction * 9.81) + 10;
        Corner forward = bend(speed, straight, in, arc, out, radius);
        Corner backward = bend(speed, straight, out, arc, in, radius);
        IdealProfile there = IdealEntry.solve(pointMass(friction), forward, IdealOptions.DEFAULT.withStep(2));
        IdealProfile back = IdealEntry.solve(pointMass(friction), backward, IdealOptions.DEFAULT.withStep(2));
        for (double s = 0; s <= length; s += length / 16) {
            assertEquals(there.speedAt(s), back.speedAt(length - s), 0.01 * there.speedAt(s), "at " + s);
        }
    }

    private static Corner bend(double speed, double straight, double in, double arc, double out, double radius) {
        SegmentPath path = SegmentPath.of(
                straight,
                List.of(
                        Segment.spiralIn(in, radius, Turn.LEFT),
                        Segment.arc(arc, radius, Turn.LEFT),
                        Segment.spiralOut(out, radius, Turn.LEFT)),
                straight,
                5);
        return new Corner("bend", speed, path);
    }

    private static Car pointMass(double friction) {
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Linear(), friction, friction, 0, 3000, 0, 20, 20);
        return new Car(
                "point mass",
                new Chassis(1000, 2.5, 1.25, 0, 0, 1.5, 1.5),
                new Suspension(0.5, 0, 0, Response.RIGID, Response.RIGID),
                Aerodynamics.NONE,
                0.5,
                new Driveline(1e9, DrivenAxle.ALL),
                tyre,
                tyre);
    }
}
