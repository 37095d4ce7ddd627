package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.BrakePointSearch.Missed;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.InHand;
import org.foreload.strategy.Trial;
import org.junit.jupiter.api.Test;

/** The last of all brake points, where keeping the margin comes and goes with it. */
class LastOfAllTest {

    /** Two metres in hand: with more, the window that is passed over has closed. */
    private static final Allowance MARGIN = new Allowance(0.5, 0.5, 0.01, 0.05, 2);

    private static final CornerStudy STUDY = CornerStudy.of(
                    Demos.car("", "light").value(), Demos.corner("", "medium").value())
            .with(MARGIN);

    /** A search by steps passes over a window of less than two metres in which a weak release keeps the margin. */
    @Test
    void theLastOfAllIsFoundWhereStepsPassOverIt() {
        Braking braking = Braking.of(7.82, 0.25, new Release(ReleaseShapes.SMOOTH, 15.7, 55.5));
        BrakePointSearch search = STUDY.search();
        assertFalse(search.latest(braking).met(), "nothing is passed over: the release shows nothing");
        Trial last = search.lastOfAll(braking);
        assertTrue(last.met());
        assertTrue(InHand.of(STUDY.simulator(), last.entry().plan())
                >= STUDY.allowance().inHand());
        for (int i = 1; i <= 120; i++) {
            BrakePlan later = braking.from(last.point() + i / 10.0);
            assertFalse(
                    search.trial(later).met()
                            && search.trial(later.withBrakePoint(later.brakePoint() - 1))
                                    .met()
                            && InHand.of(STUDY.simulator(), later)
                                    >= STUDY.allowance().inHand(),
                    "a later one keeps it: " + later.brakePoint());
        }
        assertEquals(last.point(), STUDY.latest(braking).entry().plan().brakePoint(), 0.5);
    }

    /** A little earlier with this release the car misses the margin; earlier still it keeps it again. */
    @Test
    void aStretchThatMissesTheMarginIsNamed() {
        Braking braking = Braking.of(9.13, 0.25, new Release(ReleaseShapes.SMOOTH, 10.7, 20.9));
        BrakePointSearch search = CornerStudy.of(
                        Demos.car("", "downforce").value(),
                        Demos.corner("", "medium").value())
                .with(MARGIN)
                .search();
        Trial last = search.lastOfAll(braking);
        Missed missed = search.missedBefore(last.entry().plan()).orElseThrow();
        assertTrue(missed.to() < last.point() && missed.from() <= missed.to());
        for (double point = missed.from(); point <= missed.to(); point += 0.5) {
            assertFalse(search.trial(braking.from(point)).met(), "kept at " + point);
        }
        assertTrue(search.trial(braking.from(missed.from() - 0.5)).met());
        assertTrue(search.trial(braking.from(missed.to() + 0.5)).met());
    }

    /** With nothing in hand the last decimetres of drift cost more on the way out than they gain on the way in. */
    @Test
    void theQuickestOfAllMayBeEarlier() {
        CornerStudy bare = STUDY.with(Allowance.NO_MARGIN);
        Braking braking = Braking.of(5.59, 0.25, new Release(ReleaseShapes.PROGRESSIVE, 7.1, 40));
        Finding latest = bare.latest(braking);
        EntryResult quicker = bare.quicker(latest).orElseThrow().entry();
        assertTrue(quicker.plan().brakePoint() < latest.entry().plan().brakePoint());
        assertTrue(quicker.time() < latest.entry().time() - 0.002);
        for (int i = 0; i <= 100; i++) {
            BrakePlan plan = braking.from(latest.entry().plan().brakePoint() - i / 10.0);
            Trial trial = bare.search().trial(plan);
            assertTrue(
                    !trial.met() || trial.entry().time() > quicker.time() - 0.002,
                    () -> "a quicker one keeps it: " + plan.brakePoint());
        }
    }

    /** With four metres in hand the car is far from where drift costs time: then the latest is the quickest. */
    @Test
    void withEnoughInHandTheLatestIsTheQuickest() {
        CornerStudy standard = STUDY.with(Allowance.STANDARD);
        Finding latest = standard.latest(Braking.of(8, 0.25, new Release(ReleaseShapes.SMOOTH, -5, 40)));
        assertTrue(latest.found());
        assertTrue(standard.quicker(latest).isEmpty());
    }

    /** A plan whose margin does not come and go has no such stretch. */
    @Test
    void anOrdinaryPlanHasNone() {
        Braking braking = Braking.of(8, 0.25, new Release(ReleaseShapes.SMOOTH, -5, 40));
        CornerStudy bare = STUDY.with(Allowance.NO_MARGIN);
        for (CornerStudy study : new CornerStudy[] {STUDY, bare}) {
            BrakePlan plan = study.latest(braking).entry().plan();
            assertTrue(study.search().trial(plan).met());
            assertTrue(study.search().missedBefore(plan).isEmpty());
        }
    }
}
