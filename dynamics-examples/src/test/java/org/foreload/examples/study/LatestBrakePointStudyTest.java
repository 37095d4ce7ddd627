package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.InHand;
import org.foreload.strategy.Trial;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The brake points of random releases against a scan in decimetres: none is later than the last of all, where there is
 * one and where there is none, and none is quicker than the quickest of all. A sweep misses a few of these.
 */
@Tag("long")
class LatestBrakePointStudyTest {

    private static final int RELEASES = Integer.getInteger("latest.releases", 200);

    /** How far the scan looks beyond the answer and before it, in decimetres. */
    private static final int BEYOND = 100;

    private static final int BEFORE = 100;

    /** Seconds by which none may be quicker. */
    private static final double QUICKER = 0.002;

    /**
     * A sweep, which looks by steps, may miss the quickest of one in so many: a wheel that just stops comes and goes.
     */
    private static final int FEW = 20;

    /** How far before and beyond the estimate the scan looks where there is no answer, in decimetres. */
    private static final int EVERYWHERE_BEFORE = 700;

    private static final int EVERYWHERE_BEYOND = 300;

    @ParameterizedTest
    @CsvSource({
        "road, hairpin", "road, medium", "road, fast",
        "light, hairpin", "light, medium", "light, fast",
        "downforce, hairpin", "downforce, medium", "downforce, fast"
    })
    void noneIsLaterAndNoneIsQuicker(String car, String corner) {
        CornerStudy study = CornerStudy.of(
                Demos.car("", car).value(), Demos.corner("", corner).value());
        for (Allowance allowance : new Allowance[] {Allowance.NO_MARGIN, Allowance.STANDARD}) {
            scan(study.with(allowance), car, corner);
        }
    }

    private static void scan(CornerStudy study, String car, String corner) {
        int[] counts = IntStream.range(0, RELEASES)
                .parallel()
                .mapToObj(i -> compared(study, release(study, i)))
                .reduce(
                        new int[5],
                        (a, b) -> IntStream.range(0, a.length)
                                .map(i -> a[i] + b[i])
                                .toArray());
        boolean margin = study.allowance().inHand() > 0;
        StudyLog.line(
                "brake point, %s %s, %s: %d of %d releases have one; a scan finds a later one for %d, a quicker one for %d; a sweep gives up %d and misses the quickest of %d",
                car,
                corner,
                margin ? "with margin" : "no margin",
                counts[0],
                RELEASES,
                counts[1],
                counts[2],
                counts[3],
                counts[4]);
        assertTrue(counts[0] > 0);
        assertTrue(counts[1] == 0, "a later brake point keeps the margin");
        assertTrue(counts[2] == 0, "another brake point is quicker");
        assertTrue(counts[4] <= counts[0] / FEW, "a sweep misses too many");
    }

    /**
     * How many are found, for how many of them the scan finds a later one and a quicker one, how many a sweep gives up,
     * since they brake so early that this alone costs too much, and of how many it misses the quickest.
     */
    private static int[] compared(CornerStudy study, Braking braking) {
        Trial latest = study.search().lastOfAll(braking);
        int last = (int) Math.floor(10 * braking.release().end());
        if (!latest.met()) {
            return new int[] {0, anywhere(study, braking, last) ? 1 : 0, 0, 0, 0};
        }
        Trial swept = study.search().quickest(braking);
        double quickest = study.search().quickestOfAll(latest).entry().time();
        int[] counts = {1, 0, 0, swept.met() ? 0 : 1, 0};
        counts[4] = swept.met() && quickest < swept.entry().time() - QUICKER ? 1 : 0;
        int point = (int) Math.rint(10 * latest.point());
        for (int i = -BEFORE; i <= BEYOND && point + i <= last; i++) {
            BrakePlan plan = braking.from((point + i) / 10.0);
            Trial trial = study.search().trial(plan);
            boolean quicker = trial.entry().time() < quickest - QUICKER;
            if (trial.met() && (i > 0 || quicker) && keepsAll(study, plan)) {
                counts[1] |= i > 0 ? 1 : 0;
                counts[2] |= quicker ? 1 : 0;
            }
        }
        return counts;
    }

    private static boolean anywhere(CornerStudy study, Braking braking, int last) {
        int estimate = (int) Math.rint(10 * study.search().estimate(braking));
        for (int i = estimate - EVERYWHERE_BEFORE; i <= Math.min(last, estimate + EVERYWHERE_BEYOND); i++) {
            BrakePlan plan = braking.from(i / 10.0);
            if (study.search().trial(plan).met() && keepsAll(study, plan)) {
                return true;
            }
        }
        return false;
    }

    private static boolean keepsAll(CornerStudy study, BrakePlan plan) {
        return study.search().trial(plan.withBrakePoint(plan.brakePoint() - 1)).met()
                && InHand.of(study.simulator(), plan) >= study.allowance().inHand();
    }

    private static Braking release(CornerStudy study, int number) {
        SplittableRandom random = new SplittableRandom(number);
        double apex = study.simulator().apex();
        double start = random.nextDouble(-0.5, 0.4);
        double end = start + random.nextDouble(0.1, 1.2);
        var shapes = ReleaseShapes.all();
        return Braking.of(
                        random.nextDouble(0.35, 0.9) * study.lockLimit(),
                        0.25,
                        new Release(shapes.get(random.nextInt(shapes.size())), start * apex, end * apex))
                .rounded();
    }
}
