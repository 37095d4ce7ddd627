package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.load.SampleCars;
import org.junit.jupiter.api.Test;

/** Answers of the search in a bend so short that every brake point can be driven. */
class ShortSearchTest {

    private static final CornerStudy BARE = ShortStudies.BARE;

    /** Some margin, and two metres in hand. */
    private static final CornerStudy SOME = BARE.with(new Allowance(0.5, 0.5, 0.01, 0.05, 2));

    private static final Braking TO_THE_BEND = ShortStudies.braking(0.7, ReleaseShapes.LINEAR, -10, 10);
    private static final Braking INTO_THE_BEND = ShortStudies.braking(0.9, ReleaseShapes.LINEAR, 0, 20);
    private static final Braking HELD = ShortStudies.braking(0.5, ReleaseShapes.HELD, 0, 20);
    private static final Braking WEAK = ShortStudies.braking(0.3, ReleaseShapes.ABRUPT, 0, 0);

    private static boolean met(CornerStudy study, Braking braking, double point) {
        return study.allowance().met(study.simulator().probe(braking.from(point)));
    }

    /** Keeps the margin, from a metre earlier too, and makes the corner with each slip. */
    private static boolean keepsAll(CornerStudy study, Braking braking, int decimetres) {
        double point = decimetres / 10.0;
        return met(study, braking, point)
                && met(study, braking, (decimetres - 10) / 10.0)
                && InHand.forgives(
                        study.simulator(),
                        braking.from(point),
                        study.allowance().inHand());
    }

    private static int decimetres(Trial trial) {
        return (int) Math.rint(10 * trial.point());
    }

    private static void isTheLastOf(CornerStudy study, Braking braking, int from, int to) {
        int last = from;
        while (last >= to && !keepsAll(study, braking, last)) {
            last--;
        }
        Trial found = study.search().lastOfAll(braking);
        assertTrue(found.met(), braking.toString());
        assertEquals(last, decimetres(found), braking.toString());
    }

    /** Two to which the search by steps leads, and one to which it does not: it has more in hand than that finds. */
    @Test
    void theLastOfAllIsTheLastOfAScan() {
        isTheLastOf(BARE, HELD, -450, -700);
        isTheLastOf(SOME, TO_THE_BEND, -440, -700);
        CornerStudy most = BARE.with(new Allowance(0.5, 0.5, 0.01, 0.05, 4.5));
        assertFalse(most.search().latest(INTO_THE_BEND).met(), "the search by steps finds it as well");
        isTheLastOf(most, INTO_THE_BEND, -380, -700);
    }

    /** No brake point of the last twelve metres and some keeps all and is quicker. */
    @Test
    void theQuickestOfAllIsTheQuickestOfAScan() {
        for (Braking braking : List.of(HELD, ShortStudies.braking(0.3, ReleaseShapes.HELD, -30, 30))) {
            Trial last = BARE.search().lastOfAll(braking);
            Trial quickest = BARE.search().quickestOfAll(last);
            assertTrue(quickest.point() < last.point(), "the last is the quickest, and nothing was tried");
            assertTrue(keepsAll(BARE, braking, decimetres(quickest)));
            for (int point = decimetres(last); point >= decimetres(last) - 123; point--) {
                double time = BARE.simulator().probe(braking.from(point / 10.0)).time();
                assertFalse(time < quickest.entry().time() && keepsAll(BARE, braking, point), "at " + point);
            }
        }
        Trial straight = BARE.search().lastOfAll(ShortStudies.braking(0.9, ReleaseShapes.ABRUPT, 0, 0));
        assertSame(straight, BARE.search().quickestOfAll(straight));
    }

    /** What a scan in half metres sees, up to twelve metres back: a missed stretch between two that keep the margin. */
    private static Optional<BrakePointSearch.Missed> scanned(CornerStudy study, BrakePlan plan) {
        boolean[] met = new boolean[25];
        for (int i = 1; i <= 24; i++) {
            double point = plan.brakePoint() - 0.5 * i;
            met[i] = point <= -90 || met(study, plan.braking(), point);
        }
        int first = 1;
        while (first <= 24 && met[first]) {
            first++;
        }
        int beyond = first;
        while (beyond <= 24 && !met[beyond]) {
            beyond++;
        }
        return beyond > 24 || plan.brakePoint() - 0.5 * beyond <= -90
                ? Optional.empty()
                : Optional.of(new BrakePointSearch.Missed(
                        plan.brakePoint() - 0.5 * (beyond - 1), plan.brakePoint() - 0.5 * first));
    }

    @Test
    void missedStretchesAreThoseOfAScan() {
        Braking straight = ShortStudies.braking(0.7, ReleaseShapes.ABRUPT, 0, 0);
        int seen = 0;
        for (double point : new double[] {-56, -55.5, -55, -54.5, -54, -53.5, -50, -58.3, -60, -68}) {
            for (Braking braking : List.of(TO_THE_BEND, straight)) {
                Optional<BrakePointSearch.Missed> missed = SOME.search().missedBefore(braking.from(point));
                assertEquals(scanned(SOME, braking.from(point)), missed);
                seen += missed.isPresent() ? 1 : 0;
            }
        }
        assertTrue(seen >= 4 && seen <= 16, seen + " of twenty");
        // The line begins 90 m before the bend: nothing is looked for there.
        Braking crawling = ShortStudies.braking(0.45, ReleaseShapes.HELD, 0, 20);
        assertTrue(!met(SOME, crawling, -89) && met(SOME, crawling, -84));
        assertEquals(Optional.empty(), SOME.search().missedBefore(crawling.from(-83)));
        assertEquals(scanned(SOME, WEAK.from(-80)), SOME.search().missedBefore(WEAK.from(-80)));
        assertEquals(
                Optional.empty(),
                BARE.search().missedBefore(BARE.search().latest(HELD).entry().plan()));
    }

    /** Each slip of two metres, driven by hand: the least that is left to the edge. */
    @Test
    void whatIsLeftWithNothingInHandIsTheLeastOfThreeSlips() {
        BrakePlan plan = SOME.search().latest(TO_THE_BEND).entry().plan();
        List<BrakePlan> slips = List.of(
                TO_THE_BEND.withReleaseLater(2).from(plan.brakePoint()),
                TO_THE_BEND.from(plan.brakePoint() + 2),
                TO_THE_BEND
                        .withPeakDeceleration(1.05 * TO_THE_BEND.peakDeceleration())
                        .from(plan.brakePoint()));
        double least = slips.stream()
                .mapToDouble(slip -> SOME.simulator().probe(slip).margins().edge())
                .min()
                .orElseThrow();
        assertEquals(least, SOME.search().leftWithNothingInHand(plan), 1e-9);
        List<Trial> trials = SOME.search().slips(plan);
        assertEquals(3, trials.size());
        assertTrue(trials.stream().allMatch(Trial::met));
        assertTrue(trials.stream().allMatch(trial -> trial.point() == plan.brakePoint()));
        BrakePlan late = plan.withBrakePoint(plan.brakePoint() + 10);
        assertEquals(Double.NEGATIVE_INFINITY, SOME.search().leftWithNothingInHand(late));
        assertEquals(Double.POSITIVE_INFINITY, BARE.search().leftWithNothingInHand(late));
        assertEquals(List.of(), BARE.search().slips(late));
    }

    /** A driver who is a metre early makes the corner too, or the brake point was luck. */
    @Test
    void aMetreEarlierMakesTheCornerToo() {
        int found = 0;
        for (ReleaseShape shape : List.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD, ReleaseShapes.TWO_STAGE)) {
            for (double end : new double[] {10, 18}) {
                Finding finding = SOME.latest(ShortStudies.braking(0.7, shape, 0, end));
                if (finding.found()) {
                    found++;
                    BrakePlan latest = finding.entry().plan();
                    BrakePlan earlier = latest.withBrakePoint(latest.brakePoint() - 1);
                    assertTrue(SOME.allowance().met(SOME.simulator().run(earlier)), shape.name() + " to " + end);
                }
            }
        }
        assertTrue(found >= 4, "only " + found + " releases make the corner");
    }

    @Test
    void whoIsEarlyIsAMetreEarly() {
        Trial early = BARE.search().early(TO_THE_BEND.from(-55));
        assertEquals(-56, early.point(), 1e-12);
        assertEquals(BARE.simulator().probe(TO_THE_BEND.from(-56)), early.entry());
    }

    /** A search that erred by this much, in its own words: its plan is taken to keep the margin. */
    private static Trial taken(CornerStudy study, Braking braking, double point) {
        return new Trial(point, study.simulator().probe(braking.from(point)), MadeTrials.drift(0));
    }

    /** Steps back of 1, 2, 4, 8 and 16 dm, to the first plan that holds, and holds from a metre earlier. */
    @Test
    void anAnswerThatDoesNotHoldIsTakenBackUntilItDoes() {
        double latest = BARE.search().latest(TO_THE_BEND).point();
        int found = 0;
        for (double beyond : new double[] {0, 0.1, 0.5, 1.4, 2.9, 3.4, 5}) {
            double point = Math.rint(10 * (latest + beyond)) / 10;
            double expected = Double.NaN;
            for (double back : new double[] {3.1, 1.5, 0.7, 0.3, 0.1, 0}) {
                double there = Math.rint(10 * (point - back)) / 10;
                if (holds(there) && holds(there - 1)) {
                    expected = there;
                }
            }
            Finding finding = BARE.search().confirmed(taken(BARE, TO_THE_BEND, point));
            assertEquals(!Double.isNaN(expected), finding.found(), "from " + point);
            double tried = finding.found() ? expected : point - 3.1;
            assertEquals(tried, finding.entry().plan().brakePoint(), 1e-9);
            assertEquals(
                    finding.found()
                            ? InHand.of(BARE.simulator(), finding.entry().plan())
                            : Double.NaN,
                    finding.inHand());
            found += finding.found() ? 1 : 0;
        }
        assertTrue(found >= 3 && found < 7, found + " of seven");
    }

    private static boolean holds(double point) {
        return Allowance.NO_MARGIN.met(BARE.simulator().run(TO_THE_BEND.from(point)));
    }

    /** Confirmed is what has in hand what is asked for; an answer that says itself that it is none stays none. */
    @Test
    void whatHasTooLittleInHandIsNotConfirmed() {
        Trial latest = BARE.search().latest(TO_THE_BEND);
        double inHand = BARE.search().confirmed(latest).inHand();
        assertEquals(BARE.search().inHand(latest.entry().plan()), inHand);
        assertTrue(BARE.with(new Allowance(0.5, 0, 0, 0, inHand))
                .search()
                .confirmed(latest)
                .found());
        Finding none =
                BARE.with(new Allowance(0.5, 0, 0, 0, inHand + 0.1)).search().confirmed(latest);
        assertFalse(none.found());
        assertEquals(Double.NaN, none.inHand());
        Finding failed = BARE.search().confirmed(latest.failed());
        assertFalse(failed.found());
        assertEquals(Double.NaN, failed.inHand());
        assertEquals(latest.entry().plan(), failed.entry().plan());
        assertTrue(failed.entry().profile().isPresent());
    }

    /** At the start of the line nobody can be a metre early: the plan holds if it holds from as early as may be. */
    @Test
    void aPlanAtTheStartOfTheLineMayBeConfirmed() {
        EntryResult first = BARE.simulator().probe(WEAK.from(-89.7));
        assertTrue(Allowance.NO_MARGIN.met(first));
        Finding finding = BARE.search().confirmed(taken(BARE, WEAK, -89.7));
        assertTrue(finding.found());
        assertEquals(-89.7, finding.entry().plan().brakePoint(), 1e-9);
    }

    /** Weak brakes: the answer lies 14 m before its estimate, which is more than 0.3 s at what each metre costs. */
    @Test
    void anAnswerThatCostsTooMuchIsNotWorthLookingFor() {
        double farthest = 0.3
                / new BrakePointEstimate(
                                BARE.bound(),
                                BARE.simulator().car(),
                                BARE.simulator().corner().path())
                        .earlierCosts();
        for (Braking braking : List.of(WEAK, HELD, ShortStudies.braking(0.3, ReleaseShapes.LINEAR, 0, 20))) {
            Trial latest = BARE.search().latest(braking);
            assertTrue(latest.met());
            Trial worthwhile = BARE.search().quickest(braking);
            boolean near = BARE.search().estimate(braking) - latest.point() < farthest;
            assertEquals(near, worthwhile.met(), braking.toString());
            assertTrue(worthwhile.point() >= BARE.search().estimate(braking) - farthest - 0.2);
        }
    }

    /** Who need not slow may come down on the brake as late as where it is off again, and no later. */
    @Test
    void whoNeedNotSlowBrakesWhereTheBrakeIsOff() {
        CornerStudy wide = CornerStudy.of(
                SampleCars.ROAD_CAR,
                ShortStudies.bend(12, 300),
                DriverSettings.practised(),
                ShortStudies.COARSE,
                Allowance.NO_MARGIN);
        Braking braking = ShortStudies.braking(0.5, ReleaseShapes.LINEAR, 0, 15);
        Trial latest = wide.search().latest(braking);
        assertTrue(latest.met());
        assertEquals(15, latest.point());
        assertEquals(15, wide.search().lastOfAll(braking).point());
    }

    /** The more must be in hand, the earlier; and what is asked for is there, with none of the next decimetre. */
    @Test
    void theLatestHasInHandWhatIsAskedFor() {
        double before = Double.POSITIVE_INFINITY;
        for (double asked : new double[] {0, 1, 3}) {
            CornerStudy study = BARE.with(new Allowance(0.5, 0, 0, 0, asked));
            Trial latest = study.search().latest(INTO_THE_BEND);
            assertTrue(latest.met(), "asked " + asked);
            assertTrue(InHand.forgives(study.simulator(), latest.entry().plan(), asked));
            assertFalse(keepsAll(study, INTO_THE_BEND, decimetres(latest) + 1), "asked " + asked);
            assertTrue(latest.point() <= before);
            before = latest.point();
        }
    }
}
