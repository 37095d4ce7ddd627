package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.junit.jupiter.api.Test;

/** What a descent keeps on its way down, and that nothing quicker lies right beside where it ends. */
class ReleaseDescentTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar().with(Allowance.STANDARD);

    private static final int ENTRIES = 100;

    private static BrakePlan start(ReleaseShape shape) {
        double apex = STUDY.simulator().apex();
        Finding start =
                STUDY.latest(Braking.of(0.6 * STUDY.lockLimit(), 0.25, new Release(shape, -0.1 * apex, 0.7 * apex)));
        assertTrue(start.found());
        return start.entry().plan();
    }

    private static double time(BrakePlan plan) {
        return STUDY.search().trial(plan).entry().time();
    }

    private static boolean keepsAll(BrakePlan plan) {
        return STUDY.search().trial(plan).met()
                && STUDY.search()
                        .trial(plan.withBrakePoint(plan.brakePoint() - 1))
                        .met()
                && STUDY.search().leftWithNothingInHand(plan) >= 0;
    }

    @Test
    void whatItFindsIsQuickerAndKeepsAllThatIsAsked() {
        for (ReleaseShape shape : new ReleaseShape[] {ReleaseShapes.LINEAR, ReleaseShapes.PROGRESSIVE}) {
            BrakePlan start = start(shape);
            BrakePlan found =
                    new ReleaseDescent(STUDY, start, ENTRIES).quicker().orElseThrow();
            assertTrue(time(found) < time(start) - 0.02, shape.name() + ": " + time(found) + " from " + time(start));
            assertTrue(keepsAll(found), shape.name());
            assertEquals(shape, found.release().shape());
            assertEquals(
                    found, new ReleaseDescent(STUDY, start, ENTRIES).quicker().orElseThrow());
        }
    }

    /** The same with each number moved both ways: what keeps all that is asked gains no more than some hundredths. */
    @Test
    void besideItNothingIsMuchQuicker() {
        BrakePlan found = new ReleaseDescent(STUDY, start(ReleaseShapes.PROGRESSIVE), ENTRIES)
                .quicker()
                .orElseThrow();
        Release release = found.release();
        double least = Stream.of(-1, 1)
                .flatMap(side -> Stream.of(
                        found.withBrakePoint(found.brakePoint() + 0.2 * side),
                        found.withPeakDeceleration(found.peakDeceleration() + 0.05 * side),
                        with(found, release.start() + 0.5 * side, release.end()),
                        with(found, release.start(), release.end() + 0.5 * side)))
                .filter(ReleaseDescentTest::keepsAll)
                .mapToDouble(ReleaseDescentTest::time)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        assertTrue(least > time(found) - 0.02, least + " beside " + time(found));
    }

    private static BrakePlan with(BrakePlan plan, double start, double end) {
        return plan.braking()
                .with(new Release(plan.release().shape(), start, end))
                .from(plan.brakePoint());
    }

    /** From an entry that ends in the grass nothing leads down. */
    @Test
    void aStartThatDoesNotMakeTheCornerIsNone() {
        BrakePlan late = start(ReleaseShapes.LINEAR).withBrakePoint(-5);
        EntryResult entry = STUDY.simulator().probe(late);
        assertTrue(!entry.made());
        assertEquals(Optional.empty(), new ReleaseDescent(STUDY, late, ENTRIES).quicker());
    }
}
