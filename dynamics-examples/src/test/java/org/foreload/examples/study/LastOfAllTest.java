package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.BrakePointSearch.Missed;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.InHand;
import org.foreload.strategy.Trial;
import org.junit.jupiter.api.Test;

/** The last of all brake points, where keeping the margin comes and goes with it. */
class LastOfAllTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", "light").value(), Demos.corner("", "medium").value());

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

    /** Who brakes a little earlier with this weak release crawls off its line; who brakes earlier still does not. */
    @Test
    void aStretchThatMissesTheMarginIsNamed() {
        Braking braking = Braking.of(4.26, 0.25, new Release(ReleaseShapes.SMOOTH, 11.2, 51));
        BrakePointSearch search = STUDY.search();
        Trial last = search.lastOfAll(braking);
        Missed missed = search.missedBefore(last.entry().plan()).orElseThrow();
        assertTrue(missed.to() < last.point() && missed.from() <= missed.to());
        for (double point = missed.from(); point <= missed.to(); point += 0.5) {
            assertFalse(search.trial(braking.from(point)).met(), "kept at " + point);
        }
        assertTrue(search.trial(braking.from(missed.from() - 0.5)).met());
        assertTrue(search.trial(braking.from(missed.to() + 0.5)).met());
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
