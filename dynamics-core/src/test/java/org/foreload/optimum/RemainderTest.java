package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Rounds;
import org.foreload.study.StopAfter;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the time above the bound is made of. */
class RemainderTest {

    /** Two searches of one thing end within some hundredths of a second of each other. */
    private static final double LUCK = 0.03;

    private static final BestRelease EACH = new BestRelease(1, 0, 20, 0);

    /** The road car on springs that do not move and tyres that do not lag. */
    private static Car withoutLags() {
        Car car = SampleCars.ROAD_CAR;
        return car.with(car.suspension().withPitch(Response.RIGID).withRoll(Response.RIGID))
                .withTyres(withoutLag(car.frontTyre()), withoutLag(car.rearTyre()));
    }

    private static Tyre withoutLag(Tyre tyre) {
        return ((FrictionTyre) tyre).withRelaxationLength(0);
    }

    private static CornerStudy study(Car car) {
        return CornerStudy.of(
                car,
                SampleStudies.shortCorner(),
                DriverSettings.practised(),
                new SimulationSettings(1e-4, 1),
                Allowance.NO_MARGIN);
    }

    private static EntryResult straightLine(CornerStudy study) {
        Braking braking = Braking.of(0.8 * study.lockLimit(), 0.25, new Release(ReleaseShapes.ABRUPT, 0, 0));
        return study.latest(braking).entry();
    }

    /** What no search could take away is left to the rest, which says that it holds more than the driver. */
    @Test
    void stoppedAtOnceItLeavesAllToTheRest() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        EntryResult entry = straightLine(study);
        Remainder remainder = Remainder.of(study, entry, EACH, 1, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {}

            @Override
            public boolean stopped() {
                return true;
            }
        });
        assertFalse(remainder.complete());
        assertEquals(entry.time() - study.bound().time(), remainder.gap(), 1e-12);
        assertEquals(1, remainder.parts().size());
        assertEquals(
                "causes not searched, and driver, sideslip and cornering drag",
                remainder.parts().get(0).cause());
        assertEquals(remainder.gap(), remainder.parts().get(0).time(), 1e-12);
    }

    /** A stop in a later round leaves what an earlier one found, each with its own cause. */
    @Test
    void whatAStopLeftOutIsWhatWasKnownBefore() {
        BrakePlan plan = SampleStudies.straightLine();
        List<Neighbourhood.Best> before = IntStream.range(0, 3)
                .mapToObj(i -> new Neighbourhood.Best(plan, 10 + i))
                .toList();
        Neighbourhood.Best quicker = new Neighbourhood.Best(plan, 9);
        assertEquals(
                List.of(before.get(0), quicker, before.get(2)),
                Remainder.or(List.of(Optional.empty(), Optional.of(quicker), Optional.empty()), before));
        assertEquals(
                List.of(quicker),
                Remainder.first(List.of(Optional.of(quicker), Optional.empty(), Optional.of(before.get(2)))));
    }

    /** Stopped in its last tenth, every cause has its part still. */
    @Tag("long")
    @Test
    void stoppedLateItKeepsEachCause() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        AtomicBoolean late = new AtomicBoolean();
        Remainder remainder = Remainder.of(study, straightLine(study), EACH, 2, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                late.set(done > 0.9 * total);
            }

            @Override
            public boolean stopped() {
                return late.get();
            }
        });
        assertFalse(remainder.complete());
        assertEquals(6, remainder.parts().size());
        assertEquals(
                "driver, sideslip and cornering drag", remainder.parts().get(5).cause());
    }

    /**
     * Each of five cases has a search of its own and one from the release that is known; all but the last, and all but
     * the first, have one from a neighbour's.
     */
    @Test
    void theCountIsThatOfAllSearches() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        StopAfter stop = new StopAfter(1);
        Remainder.of(study, straightLine(study), EACH, 1, stop);
        assertEquals(5 * (EACH.total() + 20) + 2 * 4 * 20, stop.total());
        StopAfter ofBest = new StopAfter(1);
        Remainder.ofBest(study, straightLine(study), new BestRelease(1, 0, 500, 0), 1, ofBest);
        assertEquals(4 * (EACH.total() + 120) + 2 * 3 * 120, ofBest.total());
    }

    /** Springs, then tyres, then the foot, then the exit: each case is without one cause more than the one before. */
    @Test
    void eachCaseIsWithoutOneCauseMore() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        List<Remainder.Variant> cases = Remainder.variants(study, 0.25);
        assertEquals(study, cases.get(0).study());
        assertTrue(cases.get(0).asGiven());
        Car withoutLags = withoutLags();
        Car onStiffSprings = withoutLags.withTyres(SampleCars.ROAD_CAR.frontTyre(), SampleCars.ROAD_CAR.rearTyre());
        assertEquals(onStiffSprings, cases.get(1).study().simulator().car());
        for (Remainder.Variant one : cases.subList(2, 5)) {
            assertEquals(withoutLags, one.study().simulator().car(), one.cause());
            assertFalse(one.asGiven());
        }
        DriverSettings given = study.simulator().driver();
        for (Remainder.Variant one : cases.subList(0, 3)) {
            assertEquals(given, one.study().simulator().driver(), one.cause());
            assertEquals(0.25, one.buildUpTime());
        }
        for (Remainder.Variant one : cases.subList(3, 5)) {
            assertEquals(0.005, one.study().simulator().driver().leftFoot().lag());
            assertEquals(0.01, one.buildUpTime());
        }
        assertEquals(
                given.rightFoot(), cases.get(3).study().simulator().driver().rightFoot());
        assertEquals(
                0.999, cases.get(4).study().simulator().driver().rightFoot().exitFriction());
        assertEquals(0.002, Remainder.variants(study, 0.002).get(4).buildUpTime(), "a quicker foot stays");
    }

    /** What is known is only left for something quicker, wherever the search began. */
    @Test
    void theQuickestOfAllSearchesCounts() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        Remainder.Variant given = Remainder.variants(study, 0.25).get(0);
        BrakePlan gentle = Braking.of(0.6 * study.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -5, 20))
                .from(-60);
        Neighbourhood.Best slow = new Neighbourhood.Best(gentle, 99);
        AtomicInteger last = new AtomicInteger();
        Rounds rounds = new Rounds(1, (done, total) -> last.set(done), 40);
        Neighbourhood.Best found = Remainder.better(given, slow, List.of(slow), 40, rounds);
        assertTrue(found.time() < 99);
        EntryResult entry = study.simulator().probe(found.plan());
        assertEquals(entry.time(), found.time(), 1e-9);
        assertTrue(study.allowance().met(entry));
        assertEquals(40, last.get());
        Neighbourhood.Best quick = new Neighbourhood.Best(gentle, 1);
        assertSame(quick, Remainder.better(given, quick, List.of(slow), 20, rounds));
        assertSame(quick, Remainder.better(given, quick, List.of(), 20, rounds));
        assertTrue(found.time() < slowest(study, gentle) - 0.05, "beside the release that it began with");
    }

    /** A case with a cause less takes what it finds; the car as it is, only what is quicker than what is known. */
    @Test
    void whatIsKnownStaysWhereTheCarIsAsItIs() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        List<Remainder.Variant> cases = Remainder.variants(study, 0.25);
        Neighbourhood.Best known = new Neighbourhood.Best(SampleStudies.straightLine(), 1);
        assertSame(known, Remainder.own(cases.get(0), EACH, known, few()));
        Neighbourhood.Best other = Remainder.own(cases.get(3), EACH, known, few());
        assertTrue(other.time() > 1);
        assertEquals(0.01, other.plan().buildUpTime());
    }

    /** A search that is stopped early: what it finds by then is enough here. */
    private static Rounds few() {
        return new Rounds(1, new StopAfter(12), 4000);
    }

    @Test
    void neighboursAreTheCasesOnBothSides() {
        List<Neighbourhood.Best> all = IntStream.range(0, 3)
                .mapToObj(i -> new Neighbourhood.Best(SampleStudies.straightLine(), i))
                .toList();
        assertEquals(List.of(all.get(1)), Remainder.neighbours(all, 0));
        assertEquals(List.of(all.get(0), all.get(2)), Remainder.neighbours(all, 1));
        assertEquals(List.of(all.get(1)), Remainder.neighbours(all, 2));
    }

    private static double slowest(CornerStudy study, BrakePlan plan) {
        return study.latest(plan.braking(), plan.brakePoint()).entry().time();
    }

    /** What locks a wheel as it is begins with less of its peak, and with the foot of the case. */
    @Test
    void aReleaseThatLocksBeginsWithLess() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        Remainder.Variant sudden = Remainder.variants(study, 0.25).get(4);
        double limit = sudden.study().lockLimit();
        Release release = new Release(ReleaseShapes.LINEAR, -5, 20);
        BrakePlan hard = Braking.of(1.1 * limit, 0.25, release).from(-50);
        BrakePlan start = Remainder.start(sudden, List.of(new Neighbourhood.Best(hard, 9)));
        assertEquals(0.01, start.buildUpTime());
        assertTrue(start.peakDeceleration() < 1.1 * limit, "with " + start.peakDeceleration());
        EntryResult entry = sudden.study().simulator().probe(start);
        assertTrue(entry.made());
        BrakePlan other = Braking.of(0.3 * limit, 0.25, release).from(-90);
        BrakePlan best =
                Remainder.start(sudden, List.of(new Neighbourhood.Best(other, 9), new Neighbourhood.Best(hard, 9)));
        assertEquals(start, best, "the quicker of two");
        BrakePlan alone = Remainder.start(sudden, List.of(new Neighbourhood.Best(other, 9)));
        assertTrue(sudden.study().simulator().probe(alone).time() >= entry.time());
    }

    /** The gap is that of entry and bound, and the parts are kept as they were given. */
    @Test
    void whatIsReadOffTheParts() {
        List<Remainder.Part> parts = new ArrayList<>(List.of(new Remainder.Part("tyre lags", 0.125)));
        Remainder remainder = new Remainder(8, 8.5, parts, true);
        parts.clear();
        assertEquals(0.5, remainder.gap());
        assertEquals(List.of(new Remainder.Part("tyre lags", 0.125)), remainder.parts());
    }

    @Tag("long")
    @Test
    void aCarWithoutLagsLosesNothingToThem() {
        CornerStudy study = study(withoutLags());
        Remainder remainder = Remainder.of(study, straightLine(study), EACH, 2, Sweep.Progress.SILENT);
        List<Remainder.Part> parts = remainder.parts();
        assertTrue(remainder.complete());
        assertEquals(6, parts.size());
        assertEquals("pitch and roll lags", parts.get(1).cause());
        assertEquals(0, parts.get(1).time(), LUCK);
        assertEquals("tyre lags", parts.get(2).cause());
        assertEquals(0, parts.get(2).time(), LUCK);
        assertTrue(parts.get(0).time() > LUCK, "braking that ends before the corner leaves something to its release");
        assertTrue(parts.get(5).time() > 0, "no entry is quicker than the bound");
    }

    /** The release of the best entry is no cause of the time above the bound; all others sum to that time. */
    @Tag("long")
    @Test
    void theBestEntryLosesNothingToItsRelease() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        EntryResult best = EACH.find(study, 2, Sweep.Progress.SILENT).entry().orElseThrow();
        Remainder remainder = Remainder.ofBest(study, best, EACH, 2, Sweep.Progress.SILENT);
        assertEquals(
                List.of(
                        "pitch and roll lags",
                        "tyre lags",
                        "brake build-up and lag",
                        "margin kept on the exit",
                        "driver, sideslip and cornering drag"),
                remainder.parts().stream().map(Remainder.Part::cause).toList());
        assertEquals(
                best.time() - study.bound().time(),
                remainder.parts().stream().mapToDouble(Remainder.Part::time).sum(),
                1e-9);
        assertTrue(remainder.parts().get(4).time() > 0, "no entry is quicker than the bound");
    }
}
