package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.load.SampleCars;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.SweepMemory.Found;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** Sweeps of a handful of releases in a short bend, in one go and in parts, and the straight line beside them. */
class ShortSweepTest {

    private static final CornerStudy BARE = ShortStudies.BARE;

    private static final ReleaseSweep FEW = new ReleaseSweep(
            BARE,
            new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.7, 1.4), List.of(-0.2), List.of(0.3, 0.8), 0.25));

    private static final Sweep ONE = new Sweep(1, Sweep.Progress.SILENT);

    /** Knows what it is given, and writes down what it is not asked to. */
    private static final class Notes implements SweepMemory {

        private final Map<Braking, Found> known = new LinkedHashMap<>();
        private int kept;

        @Override
        public Optional<Found> recall(Braking release) {
            return Optional.ofNullable(known.get(release));
        }

        @Override
        public void keep(Braking release, Found found) {
            kept++;
            known.put(release, found);
        }
    }

    /** Where none keeps the margin near its estimate, all are searched as if by themselves, from farther back. */
    @Test
    void aSweepThatFindsNothingNearLooksFartherBack() {
        Notes none = new Notes();
        FEW.releases().forEach(release -> none.known.put(release, new Found(-30, false)));
        Exploration found = FEW.coarse(ONE, none);
        List<Trial> latest = FEW.releases().stream()
                .map(release -> BARE.search().latest(release))
                .toList();
        assertTrue(latest.stream().anyMatch(Trial::met) && !latest.stream().allMatch(Trial::met));
        for (int i = 0; i < latest.size(); i++) {
            assertEquals(latest.get(i).met(), found.candidates().get(i).made());
            assertEquals(
                    latest.get(i).entry().time(),
                    found.candidates().get(i).entry().time());
        }
        assertEquals(0, none.kept);
    }

    /** Every third from the first, the second and the third on; together all, each as the search by itself finds it. */
    @Test
    void allPartsTogetherAreTheSweep() {
        List<Braking> all = FEW.releases();
        assertEquals(6, all.size());
        Map<Braking, Found> together = new LinkedHashMap<>();
        for (int part = 1; part <= 3; part++) {
            Map<Braking, Found> found = FEW.part(part, 3, ONE, SweepMemory.NONE);
            assertEquals(List.of(all.get(part - 1), all.get(part + 2)), new ArrayList<>(found.keySet()));
            together.putAll(found);
        }
        int met = 0;
        for (Braking release : all) {
            Trial trial = BARE.search().quickest(release);
            assertEquals(new Found(trial.point(), trial.met()), together.get(release));
            met += trial.met() ? 1 : 0;
        }
        assertEquals(3, met, "those with the peak that locks no wheel");
        assertThrows(InvalidValueException.class, () -> FEW.part(0, 3, ONE, SweepMemory.NONE));
        assertThrows(InvalidValueException.class, () -> FEW.part(4, 3, ONE, SweepMemory.NONE));
    }

    /** What is known is not searched for again, and what is not known is kept. */
    @Test
    void aPartTakesWhatIsKnownAndKeepsTheRest() {
        Notes notes = new Notes();
        Braking first = FEW.releases().get(0);
        notes.known.put(first, new Found(-77, true));
        Map<Braking, Found> found = FEW.part(1, 3, ONE, notes);
        assertEquals(new Found(-77, true), found.get(first));
        assertEquals(1, notes.kept);
        assertEquals(found, notes.known);
    }

    /** Coarsely, each release from its quickest brake point, nothing asked of what it has in hand. */
    @Test
    void aCoarseSweepHasNoBestYet() {
        Notes notes = new Notes();
        Exploration coarse = FEW.coarse(ONE, notes);
        assertEquals(6, notes.kept);
        assertTrue(coarse.complete() && coarse.best().isEmpty());
        assertTrue(coarse.baseline().isPresent());
        assertEquals(BARE.bound().time(), coarse.boundTime());
        for (Candidate candidate : coarse.candidates()) {
            assertTrue(Double.isNaN(candidate.inHand()) && !candidate.onFront());
            Found found = notes.known.get(candidate.entry().plan().braking());
            assertEquals(new Found(candidate.entry().plan().brakePoint(), candidate.made()), found);
        }
        assertEquals(coarse.candidates(), FEW.coarse(ONE, notes).candidates());
        assertEquals(6, notes.kept);
    }

    /** A release found elsewhere joins the others: it is counted, and is the best if it is the quickest. */
    @Test
    void whatIsFoundElsewhereJoinsTheSweep() {
        Exploration coarse = FEW.coarse(ONE, SweepMemory.NONE);
        Exploration alone = FEW.refined(coarse, List.of(), 0);
        EntryResult best = alone.best().orElseThrow().entry();
        assertTrue(alone.candidates().stream()
                .filter(Candidate::made)
                .allMatch(one -> one.entry().time() >= best.time()));
        Braking held = ShortStudies.braking(0.85, ReleaseShapes.HELD, -30, 12);
        Finding more = BARE.latest(held);
        assertTrue(more.found());
        Exploration both = FEW.refined(coarse, List.of(more), 0);
        assertEquals(7, both.planned());
        assertTrue(both.complete());
        Candidate last = both.candidates().get(6);
        assertEquals(more.entry().withoutProfile(), last.entry());
        assertEquals(more.inHand(), last.inHand());
        Candidate first = both.best().orElseThrow();
        assertTrue(first.entry().profile().isPresent());
        assertEquals(Math.min(best.time(), more.entry().time()), first.entry().time(), 1e-9);
    }

    /** Of the plans up to half a second slower than the best, and the quickest of each shape. */
    private static boolean isWorthAsking(Exploration sweep, Candidate one) {
        return one.entry().time() <= sweep.best().orElseThrow().entry().time() + 0.5 || isBestOfItsShape(sweep, one);
    }

    private static boolean isBestOfItsShape(Exploration sweep, Candidate one) {
        return sweep.candidates().stream()
                .filter(other -> other.made() && shape(other).equals(shape(one)))
                .allMatch(other -> other.entry().time() >= one.entry().time());
    }

    private static String shape(Candidate one) {
        return one.entry().plan().release().shape().name();
    }

    /**
     * On the front is who has more in hand than all that are quicker, each asked by itself. What the others have is
     * only known of the quickest of each shape, or where it was known before.
     */
    @Test
    void theFrontIsWhatTheDefinitionSays() {
        ReleaseSweep sweep = new ReleaseSweep(
                BARE,
                new SweepPlan(
                        List.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD),
                        List.of(0.3, 0.6, 0.9),
                        List.of(-0.4),
                        List.of(0.3, 0.7),
                        0.25));
        Exploration found = sweep.run(ONE);
        List<Candidate> made = found.candidates().stream()
                .filter(Candidate::made)
                .sorted(Comparator.comparingDouble(one -> one.entry().time()))
                .toList();
        double most = -1;
        int front = 0;
        int left = 0;
        for (Candidate one : made) {
            double inHand = InHand.of(BARE.simulator(), one.entry().plan());
            boolean asked = isWorthAsking(found, one);
            assertEquals(
                    asked && inHand > most, one.onFront(), one.entry().plan().toString());
            if (one.onFront() || isBestOfItsShape(found, one)) {
                assertEquals(inHand, one.inHand());
            } else {
                assertTrue(Double.isNaN(one.inHand()) || one.inHand() == inHand);
                left += Double.isNaN(one.inHand()) ? 1 : 0;
            }
            most = asked ? Math.max(most, inHand) : most;
            front += one.onFront() ? 1 : 0;
        }
        assertTrue(front >= 2 && left >= 2, front + " on the front, " + left + " not asked");
        assertTrue(made.stream().anyMatch(one -> !isWorthAsking(found, one)), "all are worth asking");
        Candidate best = found.best().orElseThrow();
        assertEquals(made.get(0).entry().plan(), best.entry().plan());
        assertEquals(best.inHand(), made.get(0).inHand());
    }

    /** Nothing made: neither a best nor a straight line to compare it with. */
    @Test
    void whereNothingIsMadeThereIsNoBest() {
        ReleaseSweep hopeless = new ReleaseSweep(
                BARE, new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(1.4), List.of(-0.2), List.of(0.3), 0.25));
        Exploration sweep = hopeless.run(ONE);
        assertEquals(2, sweep.candidates().size());
        assertTrue(sweep.candidates().stream().noneMatch(Candidate::made));
        assertEquals(Optional.empty(), sweep.best());
        assertEquals(Optional.empty(), sweep.baseline());
        assertEquals(Double.NaN, sweep.gain());
    }

    /**
     * An interrupt at the last release, or before the first, leaves the straight line untried: no gain is named, and
     * the answer is not complete. The best of some of its peaks would pass for a braking that can be done better.
     */
    @Test
    void anInterruptLeavesNoStraightLineToCompareWith() {
        Thread caller = Thread.currentThread();
        Exploration late = FEW.run(new Sweep(2, (done, total) -> {
            if (done == total) {
                caller.interrupt();
            }
        }));
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertFalse(late.complete());
        assertEquals(6, late.candidates().size());
        assertTrue(late.best().isPresent(), "what was found is kept");
        assertEquals(Optional.empty(), late.baseline());
        assertEquals(Double.NaN, late.gain());
        caller.interrupt();
        assertFalse(FEW.run(ONE).complete());
        assertEquals(Optional.empty(), StraightLine.best(BARE, 0.25, ONE));
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertTrue(StraightLine.best(BARE, 0.25, ONE).isPresent());
    }

    /** What a stop kept from being looked for counts as planned. Nobody leaves out fewer than none. */
    @Test
    void whatWasLeftOutIsMissing() {
        Exploration coarse = FEW.coarse(ONE, SweepMemory.NONE);
        Exploration lacking = FEW.refined(coarse, List.of(), 2);
        assertFalse(lacking.complete());
        assertEquals(8, lacking.planned());
        assertThrows(InvalidValueException.class, () -> FEW.refined(coarse, List.of(), -1));
    }

    /** Time in hand on the straight line, and nothing where one of the two is missing. */
    @Test
    void theGainIsTheDifferenceOfTwoTimes() {
        BrakePlan plan = ShortStudies.braking(0.7, ReleaseShapes.LINEAR, 0, 20).from(-50);
        Candidate quick = new Candidate(MadeTrials.entry(plan, Outcome.MADE_IT, 10.25, List.of()), true, 2, false);
        Candidate slow = new Candidate(MadeTrials.entry(plan, Outcome.MADE_IT, 10.5, List.of()), true, 2, false);
        List<Candidate> two = new ArrayList<>(List.of(quick, slow));
        Exploration whole = new Exploration(two, Optional.of(quick), Optional.of(slow), 10, 2);
        assertEquals(0.25, whole.gain(), 1e-12);
        two.clear();
        assertTrue(whole.complete());
        assertFalse(new Exploration(List.of(quick), Optional.of(quick), Optional.empty(), 10, 2).complete());
        assertEquals(Double.NaN, new Exploration(two, Optional.of(quick), Optional.empty(), 10, 2).gain());
        assertEquals(Double.NaN, new Exploration(two, Optional.empty(), Optional.of(slow), 10, 2).gain());
    }

    /** Dropped at once and before the bend: each of the two is needed. */
    @Test
    void straightLineBrakingIsOffAtTurnIn() {
        assertTrue(StraightLine.is(StraightLine.braking(8, 0.25).from(-50)));
        assertEquals(8, StraightLine.braking(8, 0.25).peakDeceleration());
        assertEquals(0.25, StraightLine.braking(8, 0.25).buildUpTime());
        assertTrue(StraightLine.is(
                Braking.of(8, 0.25, new Release(ReleaseShapes.ABRUPT, -9, -9)).from(-50)));
        assertFalse(StraightLine.is(
                Braking.of(8, 0.25, new Release(ReleaseShapes.ABRUPT, 0.1, 0.1)).from(-50)));
        assertFalse(StraightLine.is(
                Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, -9, -9)).from(-50)));
    }

    /**
     * Against peaks in steps of two hundredths of what locks a wheel: none is quicker by more than a decimetre costs.
     */
    @Test
    void noPeakIsQuickerInAStraightLineThanTheBest() {
        CornerStudy some = ShortStudies.study(new Allowance(0.5, 0.5, 0.01, 0.05, 2));
        double decimetre = 0.1
                * new BrakePointEstimate(
                                BARE.bound(),
                                SampleCars.ROAD_CAR,
                                BARE.simulator().corner().path())
                        .earlierCosts();
        Finding best = StraightLine.best(some, 0.25, ONE).orElseThrow();
        assertTrue(best.found() && StraightLine.is(best.entry().plan()));
        assertEquals(0.25, best.entry().plan().buildUpTime());
        int found = 0;
        for (int share = 50; share <= 98; share += 2) {
            Braking other = StraightLine.braking(share / 100.0 * some.lockLimit(), 0.25);
            Finding finding = some.search().confirmed(some.search().quickest(other.rounded()));
            found += finding.found() ? 1 : 0;
            assertTrue(
                    !finding.found() || finding.entry().time() > best.entry().time() - decimetre,
                    share + " per cent " + finding.entry().time() + " "
                            + best.entry().time());
        }
        assertTrue(found > 10, found + " keep the margin");
        assertEquals(Optional.empty(), StraightLine.best(BARE.with(new Allowance(0.5, 0, 0, 0.9, 0)), 0.25, ONE));
    }
}
