package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.entry.SampleEntries;
import org.foreload.entry.SimulationSettings;
import org.foreload.ideal.IdealEntry;
import org.foreload.path.Corner;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** The main job: latest brake points, and the whole story of a sweep. */
class CornerStudyTest {

    private static final SweepPlan SMALL = new SweepPlan(
            List.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD),
            List.of(0.5, 0.75),
            List.of(-0.4, -0.1),
            List.of(0.0, 0.4, 0.7, 1.4),
            0.25);

    private static final CornerStudy STUDY = coarse(SampleEntries.ROAD, SampleEntries.medium(45));

    /** In steps ten times as large as usual: nothing here hangs on less than a hundredth of a second. */
    private static CornerStudy coarse(Car car, Corner corner) {
        return CornerStudy.of(
                car, corner, DriverSettings.practised(), new SimulationSettings(1e-5, 1), Allowance.STANDARD);
    }

    private static final Exploration SWEEP = new ReleaseSweep(STUDY, SMALL).run(new Sweep(2, Sweep.Progress.SILENT));

    @Test
    void theLatestBrakePointIsMadeAndALittleLaterIsNot() {
        Braking plan = Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, -10, 25));
        Finding finding = STUDY.latest(plan);
        assertTrue(finding.found());
        EntryResult entry = finding.entry();
        assertTrue(entry.farthestOffset() <= Allowance.STANDARD.drift() + 0.005);
        EntryResult later =
                STUDY.simulator().run(entry.plan().withBrakePoint(entry.plan().brakePoint() + 0.5));
        assertTrue(finding.inHand() >= Allowance.STANDARD.inHand());
        assertTrue(!Allowance.STANDARD.met(later)
                || InHand.of(STUDY.simulator(), later.plan()) < Allowance.STANDARD.inHand());
        assertTrue(InHand.forgives(STUDY.simulator(), entry.plan(), finding.inHand()));
        assertFalse(InHand.forgives(STUDY.simulator(), entry.plan(), 2 * finding.inHand()));
    }

    /**
     * Who no longer waits need not wait for the end: the entry under way is the last, and the flag stays for who asks
     * next. Common practice, no source.
     */
    @Test
    void anInterruptEndsTheSearchForTheLatestBrakePoint() {
        AtomicInteger entries = new AtomicInteger();
        ReleaseShape counting = new Counting(entries, 5);
        Braking plan = Braking.of(6, 0.25, new Release(counting, -10, 25));
        assertThrows(CancellationException.class, () -> STUDY.latest(plan));
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertEquals(5, entries.get());
    }

    /** A linear release that counts the entries that are made with it, and interrupts the last one. */
    private record Counting(AtomicInteger entries, int last) implements ReleaseShape {
        @Override
        public String name() {
            return "counting";
        }

        @Override
        public double remaining(double u) {
            return ReleaseShapes.LINEAR.remaining(u);
        }

        /** An entry asks once where its steps must end. */
        @Override
        public double[] kinks() {
            if (entries.incrementAndGet() == last) {
                Thread.currentThread().interrupt();
            }
            return new double[0];
        }
    }

    /**
     * A study throws where no braking slows the car, to the last part in a thousand; the bound's own solve says where.
     */
    @Test
    void whoComesTooFastIsRefusedAtOnce() {
        for (Corner corner : List.of(SampleEntries.hairpin(45), SampleEntries.medium(45), SampleEntries.sweeper(58))) {
            for (Car car : List.of(SampleEntries.ROAD, SampleEntries.LIGHT)) {
                double made = corner.approachSpeed();
                double tooFast = 4 * made;
                while (tooFast - made > 1e-3 * made) {
                    double middle = (made + tooFast) / 2;
                    boolean slowed = solved(car, corner, middle);
                    made = slowed ? middle : made;
                    tooFast = slowed ? tooFast : middle;
                }
                double above = tooFast;
                Corner last = new Corner(corner.name(), made, corner.path());
                assertEquals(
                        IdealEntry.solve(car, last).time(),
                        CornerStudy.of(car, last).bound().time());
                assertThrows(
                        InvalidValueException.class,
                        () -> CornerStudy.of(car, new Corner(corner.name(), above, corner.path())));
            }
        }
    }

    private static boolean solved(Car car, Corner corner, double speed) {
        try {
            IdealEntry.solve(car, new Corner(corner.name(), speed, corner.path()));
            return true;
        } catch (InvalidValueException tooFast) {
            return false;
        }
    }

    @Test
    void aMarginAskedForIsKept() {
        CornerStudy careful = CornerStudy.of(
                SampleEntries.ROAD,
                SampleEntries.medium(45),
                STUDY.simulator().driver(),
                STUDY.simulator().settings(),
                new Allowance(0.5, 3, 0.015, 0.08, 0));
        Braking plan = Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, -10, 25));
        EntryResult entry = careful.latest(plan).entry();
        assertTrue(entry.margins().edge() >= 3);
        assertTrue(entry.margins().front() >= 0.015);
        assertTrue(entry.margins().rear() >= 0.08);
        EntryResult bare = STUDY.with(Allowance.NO_MARGIN).latest(plan).entry();
        assertTrue(entry.plan().brakePoint() < bare.plan().brakePoint());
    }

    @Test
    void aSweepTellsTheWholeStory() {
        // Common practice, no source: releasing before turn-in loses, an interior release is best, too long loses
        // again, and
        // hard and long does not make the corner.
        Candidate best = SWEEP.best().orElseThrow();
        double apex = STUDY.simulator().apex();
        assertTrue(SWEEP.complete());
        assertTrue(SWEEP.gain() > 0.15, "gain " + SWEEP.gain());
        double end = best.entry().plan().release().end();
        assertTrue(end > 0.1 * apex && end < 1.2 * apex, "best release ends at " + end);
        double longest = SWEEP.candidates().stream()
                .filter(candidate ->
                        candidate.made() && candidate.entry().plan().release().end() > 1.3 * apex)
                .mapToDouble(candidate -> candidate.entry().time())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        assertTrue(longest > best.entry().time() + 0.1, "long release " + longest);
        List<Candidate> failed = SWEEP.candidates().stream()
                .filter(candidate -> !candidate.made())
                .toList();
        assertFalse(failed.isEmpty());
        for (Candidate candidate : failed) {
            assertFalse(candidate.entry().cause().isBlank());
        }
        assertTrue(failed.stream().anyMatch(candidate -> candidate.entry().outcome() != Outcome.MADE_IT));
        assertTrue(best.entry().time() > SWEEP.boundTime());
    }

    @Test
    void noCandidateOnTheFrontIsBeaten() {
        List<Candidate> front =
                SWEEP.candidates().stream().filter(Candidate::onFront).toList();
        BrakePlan best = SWEEP.best().orElseThrow().entry().plan();
        assertTrue(front.stream().anyMatch(member -> member.entry().plan().equals(best)));
        for (Candidate member : front) {
            for (Candidate other : SWEEP.candidates()) {
                boolean beats = other.made()
                        && other.entry().time() < member.entry().time()
                        && other.inHand() > member.inHand();
                assertFalse(beats);
            }
        }
    }

    @Test
    void aStoppedSweepKeepsWhatWasDone() {
        AtomicInteger done = new AtomicInteger();
        Sweep.Progress stopAfterFive = new Sweep.Progress() {
            @Override
            public void update(int finished, int total) {
                done.set(finished);
            }

            @Override
            public boolean stopped() {
                return done.get() >= 5;
            }
        };
        Exploration sweep = new ReleaseSweep(STUDY, SMALL).run(new Sweep(1, stopAfterFive));
        assertFalse(sweep.complete());
        assertEquals(6, sweep.candidates().size(), "five, and straight-line braking, quicker than these");
    }

    @Test
    void tradeRuleForHairpinAndFastCorner() {
        // Common practice, no source: about 0.10 to 0.30 of the slowing while turning in a hairpin after heavy braking,
        // 0.6
        // and up in a fast long corner.
        CornerStudy hairpin = coarse(SampleEntries.ROAD, SampleEntries.hairpin(45));
        double hairpinShare = new ReleaseSweep(hairpin, SMALL)
                .run(Sweep.quiet())
                .best()
                .orElseThrow()
                .entry()
                .trailShare();
        assertTrue(hairpinShare >= 0.10 && hairpinShare <= 0.30, "hairpin " + hairpinShare);
        CornerStudy fast = coarse(SampleEntries.LIGHT, SampleEntries.sweeper(58));
        double fastShare = new ReleaseSweep(fast, SMALL)
                .run(Sweep.quiet())
                .best()
                .orElseThrow()
                .entry()
                .trailShare();
        assertTrue(fastShare >= 0.6, "fast " + fastShare);
    }

    /** Common practice, no source: the value that is refused is the caller's own, not one worked out from it. */
    @Test
    void anApproachTooSlowIsRefusedWithItsOwnSpeed() {
        Corner crawl = SampleEntries.medium(1e-6);
        InvalidValueException refused =
                assertThrows(InvalidValueException.class, () -> CornerStudy.of(SampleEntries.ROAD, crawl));
        assertEquals("approach_speed_mps", refused.field());
        assertEquals("1.0E-6", refused.value());
    }
}
