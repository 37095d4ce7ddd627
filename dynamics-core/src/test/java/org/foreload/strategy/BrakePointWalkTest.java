package org.foreload.strategy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.Outcome;
import org.junit.jupiter.api.Test;

/** The walk along the brake points where what each comes to is a law that is known. */
class BrakePointWalkTest {

    private static final Braking BRAKING = Braking.of(8, 0.25, new Release(ReleaseShapes.LINEAR, -5, 30));

    /** Time that braking a metre earlier costs by itself, s/m. */
    private static final double COSTS = 0.02;

    private final List<Double> asked = new ArrayList<>();

    private BrakePointWalk walk(double farthest, Function<BrakePlan, Trial> question) {
        return new BrakePointWalk(BRAKING, -2000, 300, farthest, COSTS, plan -> {
            asked.add(plan.brakePoint());
            return question.apply(plan);
        });
    }

    /** Made everywhere, beyond the margin by so much at a brake point, in a time that braking earlier costs. */
    private BrakePointWalk everywhere(DoubleUnaryOperator excess) {
        return walk(
                120,
                plan -> MadeTrials.made(plan, excess.applyAsDouble(plan.brakePoint()), 20 - COSTS * plan.brakePoint()));
    }

    private void eachPointWasAskedOnce() {
        assertEquals(asked.stream().distinct().count(), asked.size(), asked.toString());
    }

    /** The last decimetre before the margin is broken, whatever the slope, the bend and the guess. */
    @Test
    void theLastDecimetreThatKeepsTheMarginIsFound() {
        for (double edge : new double[] {-100.04, -99.95, -87.31}) {
            for (double slope : new double[] {0.02, 0.3, 5}) {
                for (double off : new double[] {-40, -6, -0.2, 0, 0.2, 6, 40}) {
                    asked.clear();
                    Trial found = everywhere(point -> slope * (point - edge) * (1 + 0.3 * Math.tanh(point - edge)))
                            .latest((int) Math.floor(10 * (edge + off)));
                    assertTrue(found.met());
                    assertEquals(Math.floor(10 * edge) / 10, found.point(), 1e-9, edge + " " + slope + " " + off);
                    assertTrue(asked.size() < 25, "asked " + asked.size() + " times");
                    eachPointWasAskedOnce();
                }
            }
        }
    }

    /** Where cars run wide nothing can be read but that they do. */
    @Test
    void behindAStretchThatRunsWideTheLastIsFound() {
        for (double off : new double[] {3, 15, 60}) {
            Trial found = walk(
                            120,
                            plan -> plan.brakePoint() > -100.04
                                    ? MadeTrials.wide(plan)
                                    : MadeTrials.made(plan, -0.5, 20))
                    .latest((int) (10 * (-100 + off)));
            assertTrue(found.met());
            assertEquals(-100.1, found.point(), 1e-9);
        }
    }

    /** Half a metre that keeps the margin is luck: the answer is where a metre earlier keeps it, too. */
    @Test
    void aStretchTooShortToAimAtIsNone() {
        Trial found = everywhere(point -> point > -100.55 && point < -100.05 ? -0.1 : 0.02 * (point + 104.02))
                .latest(-1002);
        assertTrue(found.met());
        assertEquals(-104.1, found.point(), 1e-9);
        assertFalse(everywhere(point -> point > -100.55 && point < -100.05 ? -0.1 : 0.1)
                .isSolid(-1003));
        assertTrue(everywhere(point -> point < -100 ? -0.1 : 0.1).isSolid(-1003));
    }

    /** An answer farther before the guess than asked is not looked for, and one that is as far is found. */
    @Test
    void itGoesNoFartherBackThanAsked() {
        Function<BrakePlan, Trial> question =
                plan -> plan.brakePoint() > -100 ? MadeTrials.wide(plan) : MadeTrials.made(plan, -0.5, 20);
        assertFalse(walk(25, question).latest(-700).met());
        assertTrue(asked.stream().allMatch(point -> point >= -95), asked.toString());
        assertTrue(walk(35, question).latest(-700).met());
        assertTrue(asked.stream().allMatch(point -> point >= -105), asked.toString());
    }

    @Test
    void guessesOutsideAreTakenForTheNearestPointThatMayBeTried() {
        BrakePointWalk walk = everywhere(point -> -1);
        assertEquals(-200, walk.first(-5000).point(), 1e-9);
        assertEquals(30, walk.first(5000).point(), 1e-9);
        assertEquals(-2000, walk.earliest());
        assertEquals(30, walk.latest(-100).point(), 1e-9);
    }

    /** From where a car stops before the corner, or locks a wheel far before it, nobody looks earlier. */
    @Test
    void whereBrakingEarlierCannotHelpItIsNotTried() {
        Trial stopped = walk(
                        120,
                        plan -> MadeTrials.ended(
                                plan, Outcome.STOPPED, new EntryEvent(EntryEvent.Kind.STOPPED, -20, 9)))
                .latest(-900);
        assertFalse(stopped.met());
        assertTrue(asked.stream().allMatch(point -> point >= -90), asked.toString());
        asked.clear();
        Trial locked = walk(
                        120,
                        plan -> MadeTrials.ended(
                                plan, Outcome.LOCKED_UP, new EntryEvent(EntryEvent.Kind.FRONT_LOCKS, -60, 7)))
                .latest(-900);
        assertFalse(locked.met());
        assertEquals(List.of(-90.0), asked);
    }

    /** A guess from which the car crawls round, wide of its line: later it keeps the margin. */
    @Test
    void aGuessThatIsTooEarlyLeadsToLaterOnes() {
        Trial found = everywhere(point -> Math.max(point + 80.03, -90 - point)).latest(-1000);
        assertTrue(found.met());
        assertEquals(-80.1, found.point(), 1e-9);
    }

    @Test
    void itRemembersTheLatestThatWasMadeAndThatWasMet() {
        BrakePointWalk walk = walk(
                120,
                plan -> plan.brakePoint() > -90
                        ? MadeTrials.wide(plan)
                        : MadeTrials.made(plan, plan.brakePoint() > -100 ? 0.2 : -0.2, 20));
        assertEquals(Double.NEGATIVE_INFINITY, walk.latestMade());
        for (int point : new int[] {-800, -950, -970, -1100, -1200}) {
            walk.at(point);
        }
        assertEquals(-95, walk.latestMade(), 1e-9);
        assertEquals(-110, walk.latestMet(), 1e-9);
        assertSame(walk.at(-950), walk.at(-950));
        eachPointWasAskedOnce();
    }

    /** Where braking earlier costs what it must, the latest is the quickest. */
    @Test
    void theLatestIsTheQuickestWhereEarlierCosts() {
        Trial found = everywhere(point -> point + 100.04).quickest(-1030);
        assertEquals(-100.1, found.point(), 1e-9);
    }

    /** Time with its least before the margin ends: within what that search leaves open, half a millisecond. */
    @Test
    void anEarlierOneIsFoundWhereItIsQuicker() {
        for (double least : new double[] {-101.3, -103, -107.4, -118}) {
            DoubleUnaryOperator time = point -> 20 + 0.002 * (point - least) * (point - least);
            asked.clear();
            Trial found = walk(
                            120,
                            plan -> MadeTrials.made(
                                    plan, plan.brakePoint() + 100.04, time.applyAsDouble(plan.brakePoint())))
                    .quickest(-1030);
            assertTrue(found.met());
            assertEquals(20, found.entry().time(), 6e-4, "from " + found.point() + ", least at " + least);
            assertTrue(asked.size() < 30, "asked " + asked.size() + " times");
        }
    }

    /** The slope of time has a step: by its parabola alone the search would stay beside it. */
    @Test
    void aCreaseOfTimeIsFound() {
        DoubleUnaryOperator time = point -> 20 + 0.01 * Math.max(point + 104.2, -0.5 * (point + 104.2));
        Trial found = walk(
                        120,
                        plan -> MadeTrials.made(
                                plan, plan.brakePoint() + 100.04, time.applyAsDouble(plan.brakePoint())))
                .quickest(-1030);
        assertEquals(20, found.entry().time(), 3e-3, "from " + found.point());
    }

    @Test
    void decimetresAreCountedDown() {
        assertEquals(-1001, BrakePointWalk.decimetre(-100.04));
        assertEquals(-1000, BrakePointWalk.decimetre(-100));
        assertEquals(12, BrakePointWalk.decimetre(1.2));
        assertEquals(12, BrakePointWalk.decimetre(1.29));
    }
}
