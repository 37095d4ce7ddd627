package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.SimulationSettings;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.validation.law.Possible.Case;
import org.foreload.validation.subject.Hodograph;
import org.foreload.vehicle.Car;

/**
 * What holds of every simulated entry, made or not. An entry takes some milliseconds, so these run some tens of tries
 * each; the soak runs as many as one has patience for.
 */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class EntryLaws {

    private static final int TRIES = 60;

    private static final SimulationSettings FINE = new SimulationSettings(1e-9, 1);

    /** The study of a case; empty where the car comes too fast for any braking. */
    static Optional<CornerStudy> study(Case one, SimulationSettings settings) {
        return study(one.car(), one.corner(), settings);
    }

    private static Optional<CornerStudy> study(Car car, Corner corner, SimulationSettings settings) {
        try {
            return Optional.of(CornerStudy.of(car, corner, DriverSettings.practised(), settings, Allowance.STANDARD));
        } catch (InvalidValueException tooFast) {
            return Optional.empty();
        }
    }

    @Property(tries = TRIES, seed = Possible.SEED)
    void everyEntryIsClassifiedAndNothingIsNotANumber(@ForAll Case one) {
        study(one, SimulationSettings.STANDARD)
                .ifPresent(study -> classified(study.simulator().run(one.plan())));
    }

    /** What the soak asks of each entry, too. */
    static void classified(EntryResult entry) {
        assertNotNull(entry.outcome());
        assertTrue(!entry.cause().isBlank(), "a cause");
        assertEquals(entry.made(), entry.made() && Double.isFinite(entry.time()), "a made entry has a time");
        for (Trace.Column column : entry.profile().orElseThrow().columns()) {
            for (double value : column.values()) {
                assertTrue(Double.isFinite(value), column.name());
            }
        }
        double before = Double.NEGATIVE_INFINITY;
        for (double time : entry.profile().orElseThrow().column("time_s").values()) {
            assertTrue(time > before, "time runs forward");
            before = time;
        }
    }

    @Property(tries = TRIES, seed = Possible.SEED)
    void theSamePlanGivesTheSameBits(@ForAll Case one) {
        study(one, SimulationSettings.STANDARD).ifPresent(study -> {
            EntryResult first = study.simulator().run(one.plan());
            EntryResult second = study.simulator().run(one.plan());
            assertEquals(first.outcome(), second.outcome());
            assertEquals(first.cause(), second.cause());
            Trace a = first.profile().orElseThrow();
            Trace b = second.profile().orElseThrow();
            for (int i = 0; i < a.columns().size(); i++) {
                assertArrayEquals(
                        a.columns().get(i).values(), b.columns().get(i).values());
            }
        });
    }

    @Property(tries = TRIES, seed = Possible.SEED)
    void aProbeEndsAsTheRunDoes(@ForAll Case one) {
        study(one, FINE).ifPresent(study -> {
            EntryResult run = study.simulator().run(one.plan());
            EntryResult probe = study.simulator().probe(one.plan());
            assertEquals(run.outcome(), probe.outcome());
            if (run.made()) {
                // The run watches more events, which bend the steps; both are right to the tolerance.
                assertEquals(run.time(), probe.time(), 1e-4);
            }
        });
    }

    @Property(tries = TRIES, seed = Possible.SEED)
    void theMirroredCornerGivesTheMirroredRun(@ForAll Case one) {
        Corner mirror = new Corner(
                "mirror", one.corner().approachSpeed(), one.corner().path().mirrored());
        study(one, SimulationSettings.STANDARD).ifPresent(study -> {
            EntryResult left = study.simulator().run(one.plan());
            EntryResult right = study(one.car(), mirror, SimulationSettings.STANDARD)
                    .orElseThrow()
                    .simulator()
                    .run(one.plan());
            assertEquals(left.outcome(), right.outcome());
            if (left.made()) {
                assertEquals(left.time(), right.time(), 1e-6);
            }
        });
    }

    /** Masses, inertias, forces and powers by one factor: nothing that one sees changes. */
    @Property(tries = TRIES, seed = Possible.SEED)
    void massAloneChangesNothing(@ForAll Case one, @ForAll @DoubleRange(min = 0.3, max = 3) double mass) {
        study(one, FINE).ifPresent(study -> {
            EntryResult before = study.simulator().run(one.plan());
            EntryResult after = study(Scaled.car(one.car(), 1, mass), one.corner(), FINE)
                    .orElseThrow()
                    .simulator()
                    .run(one.plan());
            if (before.made() && after.made()) {
                assertEquals(before.time(), after.time(), 1e-4);
            }
        });
    }

    /**
     * No entry is quicker than the bound by more than the driver's freedom within the track gives. Cutting a bend by n
     * metres over an angle shortens the way by n times the angle; driving its middle n metres wide adds n/(1 −
     * cos(angle/2)) to its radius, and speed goes with the root of that. Where cornering lifts a wheel, the bound does
     * not claim to be one.
     */
    @Property(tries = TRIES, seed = Possible.SEED)
    void noEntryIsFasterThanTheBound(@ForAll Case one) {
        study(one, SimulationSettings.STANDARD).ifPresent(study -> {
            EntryResult entry = study.simulator().run(one.plan());
            if (entry.made() && !liftsAWheel(entry)) {
                IdealProfile bound = study.bound();
                double angle =
                        Math.abs(one.corner().path().heading(one.corner().path().end()));
                double wider = entry.farthestOffset() / (1 - Math.cos(Math.min(Math.PI, angle / 2)));
                double tightest =
                        Math.abs(one.corner().path().curvature(study.simulator().apex()));
                double quicker = bound.minimumSpeed() * Math.sqrt(1 + wider * tightest);
                double freedom = entry.farthestOffset() * (angle / entry.minimumSpeed())
                        + saved(bound, quicker)
                        + 0.01 * bound.time();
                assertTrue(
                        entry.time() >= bound.time() - freedom,
                        () -> entry.time() + " beats " + bound.time() + " by more than " + freedom);
            }
        });
    }

    private static boolean liftsAWheel(EntryResult entry) {
        return Stream.of("front_left_load_n", "front_right_load_n", "rear_left_load_n", "rear_right_load_n")
                .flatMapToDouble(wheel -> Arrays.stream(
                        entry.profile().orElseThrow().column(wheel).values()))
                .anyMatch(load -> load <= 0);
    }

    /** Time, s, that a bound saves if it is nowhere slower than this speed, m/s. */
    private static double saved(IdealProfile bound, double slowest) {
        double saved = 0;
        for (int i = 1; i < bound.size(); i++) {
            double speed = (bound.speed(i - 1) + bound.speed(i)) / 2;
            saved += Math.max(0, (bound.station(i) - bound.station(i - 1)) * (1 / speed - 1 / slowest));
        }
        return saved;
    }

    /** The law behind the free optimum: the velocity vector changes no faster than all tyres together can push. */
    @Property(tries = TRIES, seed = Possible.SEED)
    void noEntryBeatsTheFreeOptimum(@ForAll Case one) {
        study(one, SimulationSettings.STANDARD).ifPresent(study -> {
            EntryResult entry = study.simulator().run(one.plan());
            if (entry.profile().orElseThrow().rows() > 20) {
                double share = Hodograph.largestShare(entry, one.corner().path(), limit(one.car(), entry));
                assertTrue(share <= 1.01, () -> "share " + share);
            }
        });
    }

    /** More than any instant of a run can have: friction of an unloaded tyre, weight and downforce at the top speed. */
    private static double limit(Car car, EntryResult entry) {
        double top = entry.profile().orElseThrow().column("speed_mps").values()[0];
        for (double speed : entry.profile().orElseThrow().column("speed_mps").values()) {
            top = Math.max(top, speed);
        }
        double load = 9.81
                + (car.aerodynamics().frontDownforce(top * top)
                                + car.aerodynamics().rearDownforce(top * top))
                        / car.chassis().mass();
        double friction = Math.max(friction(car.frontTyre()), friction(car.rearTyre()));
        return friction * load
                + car.aerodynamics().drag(top * top) / car.chassis().mass();
    }

    private static double friction(Tyre tyre) {
        FrictionTyre t = (FrictionTyre) tyre;
        return Math.max(t.peakFrictionX(0), t.peakFrictionY(0));
    }

    /** A foot that comes down a tenth of a millimetre later changes the run by next to nothing. */
    @Property(tries = TRIES, seed = Possible.SEED)
    void timeIsContinuousInTheBrakePoint(@ForAll Case one) {
        study(one, FINE).ifPresent(study -> {
            EntrySimulator simulator = study.simulator();
            EntryResult here = simulator.run(one.plan());
            EntryResult beside =
                    simulator.run(one.plan().withBrakePoint(one.plan().brakePoint() + 1e-4));
            if (here.made()
                    && beside.made()
                    && here.event(org.foreload.entry.EntryEvent.Kind.FRONT_LOCKS)
                            .isEmpty()
                    && here.event(org.foreload.entry.EntryEvent.Kind.REAR_LOCKS).isEmpty()) {
                assertEquals(here.time(), beside.time(), 1e-3);
            }
        });
    }
}
