package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.Reaction;
import org.foreload.examples.demo.Demos;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.InHand;
import org.foreload.strategy.Trial;
import org.hipparchus.stat.correlation.SpearmansCorrelation;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a plan has in hand against how often a practised driver fails with it, over random plans. A driver whose foot
 * does as planned fails the more often the less is in hand. One whose foot reacts takes most errors back, whatever is
 * in hand; what is left are wheels that lock.
 */
@Tag("long")
class InHandStudyTest {

    private static final int PLANS = Integer.getInteger("inhand.plans", 60);

    /** Entries driven with each plan. */
    private static final int ENTRIES = 128;

    /** Farthest before the latest brake point, m, that a plan brakes. */
    private static final double FARTHEST_BACK = 10;

    private static final double LEAST_CORRELATION = 0.8;

    /** What the margin asks to have in hand, m. */
    private static final double ASKED = Allowance.STANDARD.inHand();

    /** Share of entries that fail at most of a driver who reacts, with what the margin asks in hand. */
    private static final double FEW = 0.1;

    /**
     * A plan.
     *
     * @param inHand m
     * @param asTold share of entries that fail with a foot that does as planned
     * @param reacting the same with one that reacts
     */
    private record Known(double inHand, double asTold, double reacting) {

        static Known of(CornerStudy study, BrakePlan plan) {
            return new Known(
                    InHand.of(study.simulator(), plan),
                    failed(study, Reaction.NONE, plan),
                    failed(study, Reaction.practised(), plan));
        }

        private static double failed(CornerStudy study, Reaction reaction, BrakePlan plan) {
            return new RiskStudy(study, Scatter.PRACTISED, reaction, ENTRIES, 1)
                    .of(plan)
                    .failed()
                    .value();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "road, hairpin", "road, medium", "road, fast",
        "light, hairpin", "light, medium", "light, fast",
        "downforce, hairpin", "downforce, medium", "downforce, fast"
    })
    void whoHasLessInHandFailsMoreOften(String car, String corner) {
        CornerStudy study = CornerStudy.of(
                        Demos.car("", car).value(), Demos.corner("", corner).value())
                .with(Allowance.NO_MARGIN);
        List<Known> known = plans(study).stream()
                .parallel()
                .map(plan -> Known.of(study, plan))
                .toList();
        double asTold = correlation(known, Known::asTold);
        double most = known.stream()
                .filter(one -> one.inHand() >= ASKED)
                .mapToDouble(Known::reacting)
                .max()
                .orElse(0);
        StudyLog.line(
                "in hand, %s %s: %d plans, rank correlation with failures %.2f as planned, %.2f reacting; of those with %.0f m"
                        + " in hand at most %.1f %% fail, reacting",
                car, corner, known.size(), asTold, correlation(known, Known::reacting), ASKED, 100 * most);
        assertTrue(asTold <= -LEAST_CORRELATION, "rank correlation " + asTold);
        assertTrue(most <= FEW, "fails in " + most);
    }

    private static double correlation(List<Known> known, ToDoubleFunction<Known> failed) {
        return new SpearmansCorrelation()
                .correlation(
                        known.stream().mapToDouble(Known::inHand).toArray(),
                        known.stream().mapToDouble(failed).toArray());
    }

    /** Plans that make the corner, from the latest brake point of each release to some metres before it. */
    private static List<BrakePlan> plans(CornerStudy study) {
        List<BrakePlan> plans = new ArrayList<>();
        for (int first = 0; plans.size() < PLANS; first += PLANS) {
            IntStream.range(first, first + PLANS)
                    .parallel()
                    .mapToObj(i -> plan(study, new SplittableRandom(i)))
                    .flatMap(List::stream)
                    .forEachOrdered(plans::add);
        }
        return plans.subList(0, PLANS);
    }

    private static List<BrakePlan> plan(CornerStudy study, SplittableRandom random) {
        double apex = study.simulator().apex();
        double start = random.nextDouble(-0.3, 0.4) * apex;
        double end = start + random.nextDouble(0.2, 1) * apex;
        var shapes = ReleaseShapes.all();
        Braking braking = Braking.of(
                        random.nextDouble(0.5, 0.95) * study.lockLimit(),
                        0.25,
                        new Release(shapes.get(random.nextInt(shapes.size())), start, end))
                .rounded();
        Trial latest = study.search().latest(braking);
        double back = random.nextDouble(0, FARTHEST_BACK);
        BrakePlan plan = braking.from(latest.point() - back).rounded();
        return latest.met() && study.search().trial(plan).made() ? List.of(plan) : List.of();
    }
}
