package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;

/** What a walk asks on its way, worked out by hand for laws that are straight lines: each question is a drive. */
class BrakePointWalkStepsTest {

    private static final Braking BRAKING = Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, -5, 30));

    /** Time that braking a metre earlier costs by itself, s/m. */
    private static final double COSTS = 0.02;

    private final List<Double> asked = new ArrayList<>();

    private BrakePointWalk walk(Function<BrakePlan, Trial> question) {
        asked.clear();
        return new BrakePointWalk(BRAKING, -2000, 300, 120, COSTS, plan -> {
            asked.add(plan.brakePoint());
            return question.apply(plan);
        });
    }

    private BrakePointWalk made(DoubleUnaryOperator excess, DoubleUnaryOperator time) {
        return walk(plan ->
                MadeTrials.made(plan, excess.applyAsDouble(plan.brakePoint()), time.applyAsDouble(plan.brakePoint())));
    }

    /** A quarter of the drift for each metre, the limit at -100.04 m; beyond -100 m the car may run wide. */
    private BrakePointWalk quarters(boolean wide) {
        return walk(plan -> wide && plan.brakePoint() > -99.95
                ? MadeTrials.wide(plan)
                : MadeTrials.made(plan, 0.25 * (plan.brakePoint() + 100.04), 20));
    }

    /**
     * A metre to see how fast the limit comes; 1.15 times what is left, but no more than 3.4 times the step before;
     * then 1.15·0.56 m, which is beyond. On the line between the last two the limit is 5.6 dm on; the next decimetre
     * fails, and a metre earlier holds.
     */
    @Test
    void aGuessThatKeepsTheMarginGoesLaterByWhatIsLeft() {
        List<Double> steps = List.of(-105.0, -104.0, -100.6, -99.9, -100.1, -100.0, -101.1);
        assertEquals(-100.1, quarters(false).latest(-1050).point());
        assertEquals(steps, asked);
        // Where the car runs wide, two that keep the margin draw the same line.
        assertEquals(-100.1, quarters(true).latest(-1050).point());
        assertEquals(steps, asked);
    }

    /**
     * Two metres first, though four times the excess says three; then 1.15 times the 1.04 m that the line through both
     * says, and from there by the decimetre: 1.6 dm are left, and 0.6.
     */
    @Test
    void aGuessThatMissesTheMarginGoesEarlierByWhatIsTooMuch() {
        assertEquals(-100.1, quarters(false).latest(-970).point());
        assertEquals(List.of(-97.0, -99.0, -100.2, -100.1, -100.0, -101.1), asked);
    }

    /** An excess of 0.025 is worth a decimetre: 1.15 of them are two. */
    @Test
    void aGuessThatMissesByLittleGoesEarlierByLittle() {
        assertEquals(
                -100.1,
                made(point -> 0.25 * (point + 100.04), point -> 20).latest(-999).point());
        assertEquals(-99.9, asked.get(0));
        assertEquals(-100.1, asked.get(1));
    }

    /** Nothing to draw a line through: steps that grow, 3.4 times and to 8 m at most, and then halves. */
    @Test
    void whereNothingCanBeReadTheStepsGrowAndThenHalve() {
        Function<BrakePlan, Trial> flat =
                plan -> plan.brakePoint() > -100.04 ? MadeTrials.wide(plan) : MadeTrials.made(plan, -0.5, 20);
        assertEquals(-100.1, walk(flat).latest(-1050).point());
        assertEquals(List.of(-105.0, -104.0, -100.6, -92.6, -96.6, -98.6, -99.6, -100.1, -99.9, -100.0, -101.1), asked);
        // Earlier it is 2 m, 1.7 times as much each time, 8 m at most.
        walk(flat).latest(-700);
        assertEquals(List.of(-70.0, -72.0, -75.4, -81.2, -89.2, -97.2, -105.2), asked.subList(0, 7));
    }

    /**
     * A line that is all but level on one side sends every try to one end: every third at least halves what is left.
     */
    @Test
    void aLimitThatJumpsIsClosedInByHalves() {
        for (double[] sides : new double[][] {{-0.5, 1e-4}, {-1e-4, 0.5}}) {
            for (double edge : new double[] {-100.04, -97.24, -93.44}) {
                Trial found = made(point -> point > edge ? sides[1] : sides[0], point -> 20)
                        .latest(-1050);
                assertEquals(Math.floor(10 * edge) / 10, found.point(), 1e-9);
                // Five to get beyond the edge; eight metres are halved seven times.
                assertTrue(asked.size() <= 5 + 3 * 7, asked.toString());
            }
        }
    }

    /** An excess that is the same everywhere: three more to earlier are tried, and later ones to the last of all. */
    @Test
    void whereNothingComesNearerTheWalkEnds() {
        Trial found = made(point -> 0.1, point -> 20).latest(-1000);
        assertFalse(found.met());
        assertEquals(-109.7, Collections.min(asked));
        assertEquals(30, Collections.max(asked));
        assertTrue(asked.containsAll(List.of(-100.0, -100.5, -98.0, -94.6, -88.9, -80.9, -103.9)), asked.toString());
    }

    /** Later ones are given up where the first of them is worse. */
    @Test
    void whereLaterIsWorseNoneLaterIsTried() {
        made(point -> 0.1 + Math.max(0, 0.01 * (point + 100)), point -> 20).latest(-1000);
        assertEquals(List.of(-100.0, -100.5, -98.0, -103.9, -109.7), asked);
    }

    /** Nothing met: the answer is the one that came closest. */
    @Test
    void theClosestIsTheAnswerWhereNoneKeepsTheMargin() {
        Trial found =
                made(point -> 0.05 + 0.01 * Math.abs(point + 103), point -> 20).latest(-1000);
        assertFalse(found.met());
        double least =
                asked.stream().mapToDouble(point -> Math.abs(point + 103)).min().orElseThrow();
        assertEquals(least, Math.abs(found.point() + 103), 1e-9);
        assertTrue(least < 1.5, "closest " + found.point());
    }

    /** At the last brake point of all there is no later one to ask; at the first, none earlier. */
    @Test
    void nothingIsAskedBeyondTheEnds() {
        assertEquals(30, made(point -> -1, point -> 20).latest(300).point());
        assertEquals(List.of(30.0), asked);
        assertEquals(30, made(point -> -1, point -> 20).latest(295).point());
        assertEquals(List.of(29.5, 30.0), asked);
        walk(plan -> MadeTrials.wide(plan)).latest(-2000);
        assertEquals(List.of(-200.0), asked);
        walk(plan -> MadeTrials.wide(plan)).latest(-1990);
        assertEquals(List.of(-199.0, -200.0), asked);
    }

    /** Braking a metre earlier costs all it must, or nearly: the latest is the quickest, and no more is asked. */
    @Test
    void whereEarlierCostsWhatItMustNothingMoreIsAsked() {
        for (double share : new double[] {1, 0.81}) {
            Function<BrakePlan, Trial> question = plan -> plan.brakePoint() > -100.04
                    ? MadeTrials.wide(plan)
                    : MadeTrials.made(plan, -0.5, 20 - share * COSTS * plan.brakePoint());
            walk(question).latest(-1050);
            List<Double> latest = List.copyOf(asked);
            assertEquals(-100.1, walk(question).quickest(-1050).point());
            assertEquals(latest, asked);
        }
    }

    /** It costs less than it must, so that time bends on the way: the middle of the last metre is tried. */
    @Test
    void whereEarlierCostsLessItIsTriedBetween() {
        walk(plan -> plan.brakePoint() > -100.04
                        ? MadeTrials.wide(plan)
                        : MadeTrials.made(plan, -0.5, 20 - 0.79 * COSTS * plan.brakePoint()))
                .quickest(-1050);
        assertTrue(asked.contains(-100.6), asked.toString());
        // The least lies in between: 20 s at -100.6 m, half a millisecond and more quicker than the last.
        Trial found = walk(plan -> plan.brakePoint() > -100.04
                        ? MadeTrials.wide(plan)
                        : MadeTrials.made(plan, -0.5, 20 + 0.02 * Math.pow(plan.brakePoint() + 100.6, 2)))
                .quickest(-1050);
        assertEquals(-100.6, found.point(), 0.11);
    }

    /** A parabola is known from three of its points: its least is found by asking there, and once more at most. */
    @Test
    void theLeastOfAParabolaIsFoundByAskingThere() {
        for (double least : new double[] {-103.0, -104.3, -106.0, -109.6}) {
            DoubleUnaryOperator time = point -> 20 + 0.01 * (point - least) * (point - least);
            Trial found = made(point -> point + 100.04, time).quickest(-1030);
            assertEquals(least, found.point(), 0.23, asked.toString());
            assertTrue(asked.size() <= 15, asked.toString());
        }
    }

    /** Less than half a millisecond is no reason to brake earlier. */
    @Test
    void whatIsHardlyQuickerIsNotPreferred() {
        for (double gain : new double[] {4e-4, 6e-4}) {
            Trial found = made(point -> point + 100.04, point -> 20 + gain * Math.max(-1, point + 100.1))
                    .quickest(-1030);
            assertEquals(gain > 5e-4, found.point() < -100.15, "gain " + gain);
        }
    }

    /** A crease, on the one side or the other, is looked for at a third of the way into the side that may hide more. */
    @Test
    void aCreaseIsFoundOnEitherSide() {
        for (double at : new double[] {-102.4, -103.6, -104.2, -106.5, -108.3}) {
            for (double[] slopes : new double[][] {{0.01, 0.005}, {0.005, 0.01}, {0.02, 0.002}}) {
                Trial found = made(
                                point -> point + 100.04,
                                point -> 20 + Math.max(slopes[0] * (point - at), slopes[1] * (at - point)))
                        .quickest(-1030);
                assertEquals(20, found.entry().time(), 2e-3, at + " " + slopes[0] + " " + asked);
            }
        }
    }
}
