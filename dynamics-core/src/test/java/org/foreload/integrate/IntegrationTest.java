package org.foreload.integrate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rule against solutions in closed form: its order, its error control, and how it comes to rest. */
class IntegrationTest {

    private static final StepObserver NOBODY = step -> {};

    /**
     * An oscillator x' = v, v' = −x, started at rest at x = 1, and a value z that runs after x by z' = λ(x − z). With
     * z(0) = z₀ the solution is x = cos t, z = (λ² cos t + λ sin t)/(λ² + 1) + (z₀ − λ²/(λ² + 1))·exp(−λt).
     */
    private record Lagging(double lambda, boolean exact) implements DecayingSystem {
        @Override
        public int size() {
            return 3;
        }

        @Override
        public void rates(double t, double[] y, double[] rate) {
            rate[0] = y[1];
            rate[1] = -y[0];
            rate[2] = lambda * (y[0] - y[2]);
        }

        @Override
        public int[] decaying() {
            return exact ? new int[] {2} : new int[0];
        }

        @Override
        public void decay(double t, double[] y, double[] decay) {
            if (exact) {
                decay[0] = lambda;
            }
        }

        double z(double t, double start) {
            double square = lambda * lambda;
            return (square * Math.cos(t) + lambda * Math.sin(t)) / (square + 1)
                    + (start - square / (square + 1)) * Math.exp(-lambda * t);
        }
    }

    /** An equation y' = f(t, y) in one component that decays with a given rate, or does not. */
    private static DecayingSystem one(double lambda, Crossing rate) {
        return new DecayingSystem() {
            @Override
            public int size() {
                return 1;
            }

            @Override
            public void rates(double t, double[] y, double[] into) {
                into[0] = rate.value(t, y);
            }

            @Override
            public int[] decaying() {
                return new int[] {0};
            }

            @Override
            public void decay(double t, double[] y, double[] decay) {
                decay[0] = lambda;
            }
        };
    }

    private static Accuracy fixed(int size, double step) {
        double[] tolerances = new double[size];
        Arrays.fill(tolerances, 1e9);
        return new Accuracy(tolerances, step, step, 1e9, 1e-9, 1_000_000);
    }

    private static Accuracy adaptive(int size, double tolerance) {
        double[] tolerances = new double[size];
        Arrays.fill(tolerances, tolerance);
        return new Accuracy(tolerances, 1e-3, 10, 10, 1e-9, 1_000_000);
    }

    private static double errorOfLagging(double lambda, double step) {
        Lagging system = new Lagging(lambda, true);
        Integration integration = new Integration(system, fixed(3, step), NOBODY);
        integration.begin(0, new double[] {1, 0, 0.3});
        assertEquals(Stop.REACHED, integration.advance(2));
        assertEquals(Math.round(2 / step), integration.steps());
        return Math.max(
                Math.abs(integration.state(0) - Math.cos(2)), Math.abs(integration.state(2) - system.z(2, 0.3)));
    }

    /** Fourth order: half the step, a sixteenth of the error, with little stiffness and with much. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 3, 40})
    void theOrderIsFour(double lambda) {
        double coarse = errorOfLagging(lambda, 0.1);
        double fine = errorOfLagging(lambda, 0.05);
        double finest = errorOfLagging(lambda, 0.025);
        assertTrue(coarse < 1e-4, coarse + " at a step of 0.1");
        assertTrue(Math.log(coarse / fine) / Math.log(2) > 3.7, coarse + " to " + fine);
        assertTrue(Math.log(fine / finest) / Math.log(2) > 3.7, fine + " to " + finest);
    }

    /** The same for an equation that is not linear: y' = −y − y², y(0) = 1, y = 1/(2 exp(t) − 1). */
    @Test
    void theOrderIsFourForALogisticDecay() {
        double[] error = new double[3];
        for (int i = 0; i < 3; i++) {
            Integration integration =
                    new Integration(one(2, (t, y) -> -y[0] - y[0] * y[0]), fixed(1, 0.05 / (1 << i)), NOBODY);
            integration.begin(0, new double[] {1});
            integration.advance(1);
            error[i] = Math.abs(integration.state(0) - 1 / (2 * Math.exp(1) - 1));
        }
        assertTrue(error[0] < 1e-5);
        assertEquals(4, Math.log(error[0] / error[1]) / Math.log(2), 0.3);
        assertEquals(4, Math.log(error[1] / error[2]) / Math.log(2), 0.3);
    }

    /** Decay alone, towards a value that stands still, is exact however long the step and however quick the decay. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.6, 7, 300})
    void decayAloneIsExact(double lambda) {
        Integration integration = new Integration(one(lambda, (t, y) -> lambda * (2 - y[0])), fixed(1, 1), NOBODY);
        integration.begin(0, new double[] {5});
        integration.advance(1);
        assertEquals(2 + 3 * Math.exp(-lambda), integration.state(0), 1e-13);
        assertEquals(1, integration.steps());
    }

    /** A decay that is only about right, and changes, costs accuracy but not the answer: y' = −(1 + t)·y. */
    @Test
    void theRateOfDecayNeedNotBeExact() {
        Integration integration = new Integration(one(1.5, (t, y) -> -(1 + t) * y[0]), adaptive(1, 1e-9), NOBODY);
        integration.begin(0, new double[] {1});
        integration.advance(2);
        assertEquals(Math.exp(-4), integration.state(0), 1e-7);
    }

    /** What it is for: a lag a thousand times quicker than all else hardly costs a step. */
    @Test
    void aQuickDecayDoesNotShortenTheSteps() {
        Integration stiff = new Integration(new Lagging(1000, true), adaptive(3, 1e-5), NOBODY);
        Integration classic = new Integration(new Lagging(1000, false), adaptive(3, 1e-5), NOBODY);
        double[] state = {1, 0, 1};
        stiff.begin(0, state);
        classic.begin(0, state);
        assertEquals(Stop.REACHED, stiff.advance(20));
        assertEquals(Stop.REACHED, classic.advance(20));
        assertEquals(Math.cos(20), stiff.state(0), 2e-3);
        assertEquals(new Lagging(1000, true).z(20, 1), stiff.state(2), 2e-3);
        assertTrue(stiff.evaluations() < 2000, stiff.evaluations() + " evaluations");
        assertTrue(
                classic.evaluations() > 10 * stiff.evaluations(), classic.evaluations() + " without the exponential");
    }

    /** A tolerance a hundred times finer makes the error at least thirty times smaller. */
    @Test
    void theErrorFollowsTheTolerance() {
        double last = Double.POSITIVE_INFINITY;
        for (double tolerance = 1e-3; tolerance > 1e-10; tolerance /= 100) {
            Lagging system = new Lagging(6, true);
            Integration integration = new Integration(system, adaptive(3, tolerance), NOBODY);
            integration.begin(0, new double[] {1, 0, 0.3});
            integration.advance(10);
            double error = Math.max(
                    Math.abs(integration.state(0) - Math.cos(10)), Math.abs(integration.state(2) - system.z(10, 0.3)));
            assertTrue(error < 60 * tolerance, error + " at " + tolerance);
            assertTrue(error < last / 30, error + " after " + last);
            last = error;
        }
    }

    /** A corner of the rates is felt: the steps before it are taken anew, and the answer is right. */
    @Test
    void aCornerIsStepped() {
        Integration integration =
                new Integration(one(0, (t, y) -> t < 3 ? 0 : 50 * (t - 3)), adaptive(1, 1e-6), NOBODY);
        integration.begin(0, new double[] {0});
        integration.advance(5);
        assertEquals(100, integration.state(0), 1e-4);
        assertTrue(integration.rejections() > 0);
        assertTrue(integration.evaluations() < 600, integration.evaluations() + " evaluations");
    }

    /**
     * Between the ends of its steps the solution is known about as well as at them, in the quick start of a lag too.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 8, 60})
    void theSolutionIsKnownWithinTheStep(double lambda) {
        Lagging system = new Lagging(lambda, true);
        double[] there = new double[3];
        double[] worst = new double[2];
        StepObserver observer = step -> {
            for (double part = 0; part <= 1; part += 0.125) {
                double t = step.start() + part * (step.end() - step.start());
                step.state(t, there);
                worst[0] = Math.max(worst[0], Math.abs(there[0] - Math.cos(t)));
                worst[1] = Math.max(worst[1], Math.abs(there[2] - system.z(t, 0)));
            }
        };
        Integration integration = new Integration(system, fixed(3, 0.2), observer);
        integration.begin(0, new double[] {1, 0, 0});
        integration.advance(2);
        assertTrue(worst[0] < 5e-5, worst[0] + " in x");
        assertTrue(worst[1] < 5e-3, worst[1] + " in z");
    }

    @Test
    void stepsFollowEachOtherWithoutAGap() {
        double[] ends = {0, 0};
        double[] at = {1, 0, 0};
        double[] there = new double[3];
        StepObserver observer = step -> {
            assertEquals(ends[0], step.start(), 0);
            step.state(step.start(), there);
            assertArrayEquals(at, there, 1e-14);
            ends[0] = step.end();
            step.state(step.end(), at);
            ends[1]++;
        };
        Integration integration = new Integration(new Lagging(3, true), adaptive(3, 1e-6), observer);
        integration.begin(0, at);
        integration.advance(1);
        integration.advance(4);
        assertEquals(4, ends[0], 0);
        assertEquals(integration.steps(), ends[1], 0);
        assertArrayEquals(new double[] {integration.state(0), integration.state(1), integration.state(2)}, at, 1e-14);
    }

    /** cos t falls through zero at π/2, and −sin t at 2π; the first comes first, whatever their order. */
    @Test
    void theFirstCrossingEndsIt() {
        Crossing cosine = (t, y) -> y[0];
        Crossing sine = (t, y) -> y[1] + 1e-6;
        for (Crossing[] order : new Crossing[][] {{cosine, sine}, {sine, cosine}}) {
            Integration integration = new Integration(new Lagging(3, true), adaptive(3, 1e-10), NOBODY, order);
            integration.begin(0, new double[] {1, 0, 0});
            assertEquals(Stop.CROSSED, integration.advance(20));
            // The sine, at 1e-6, has fallen within the first step; it is not seen again before it has risen.
            assertEquals(1e-6, integration.at(), 1e-8);
            assertEquals(order[0] == sine ? 0 : 1, integration.crossed());
            assertEquals(Stop.CROSSED, integration.advance(20));
            assertEquals(Math.PI / 2, integration.at(), 1e-7);
            assertTrue(integration.state(0) <= 0 && integration.state(0) > -1e-7);
            assertEquals(Stop.CROSSED, integration.advance(20));
            assertEquals(2 * Math.PI, integration.at(), 2e-6);
            assertEquals(Stop.REACHED, integration.advance(2 * Math.PI + 1));
            assertEquals(-1, integration.crossed());
        }
    }

    /** A short dip is seen if a look falls into it. */
    @Test
    void aDipWithinAStepIsSeenByLooking() {
        Crossing dip = (t, y) -> Math.abs(t - 0.55) - 0.04;
        Accuracy blind = fixed(3, 0.5);
        Accuracy looking = new Accuracy(blind.tolerances(), 0.5, 0.5, 0.05, 1e-9, 1000);
        Integration integration = new Integration(new Lagging(3, true), blind, NOBODY, dip);
        integration.begin(0, new double[] {1, 0, 0});
        assertEquals(Stop.REACHED, integration.advance(1));
        integration = new Integration(new Lagging(3, true), looking, NOBODY, dip);
        integration.begin(0, new double[] {1, 0, 0});
        assertEquals(Stop.CROSSED, integration.advance(1));
        assertEquals(0.51, integration.at(), 1e-8);
    }

    /** Who watches does not change what is watched. */
    @Test
    void watchingChangesNothing() {
        Integration alone = new Integration(new Lagging(3, true), adaptive(3, 1e-6), NOBODY);
        Integration watched = new Integration(
                new Lagging(3, true), adaptive(3, 1e-6), NOBODY, (t, y) -> 2 + y[0], (t, y) -> -y[1] - 5);
        for (Integration integration : new Integration[] {alone, watched}) {
            integration.begin(0, new double[] {1, 0, 0});
            integration.advance(9);
        }
        for (int i = 0; i < 3; i++) {
            assertEquals(alone.state(i), watched.state(i), 0);
        }
        assertEquals(alone.evaluations(), watched.evaluations());
    }

    /** What was before a beginning leaves no trace, to the last bit. */
    @Test
    void beginningAgainIsBeginning() {
        Integration integration = new Integration(new Lagging(3, true), adaptive(3, 1e-6), NOBODY);
        double[][] ends = new double[2][3];
        for (double[] end : ends) {
            integration.begin(0, new double[] {1, 0, 0});
            integration.advance(9);
            integration.state(end);
            integration.begin(5, new double[] {3, 2, 1});
            integration.advance(6.5);
        }
        assertArrayEquals(ends[0], ends[1], 0);
    }

    /** A switch is thrown at t = 1: the old rates would go on for a step. */
    @Test
    void afterARestartTheRatesAreAskedAnew() {
        double[] drive = {1};
        Integration integration = new Integration(one(0, (t, y) -> drive[0]), adaptive(1, 1e-6), NOBODY);
        integration.begin(0, new double[] {0});
        integration.advance(1);
        drive[0] = -3;
        integration.restart();
        integration.advance(2);
        assertEquals(-2, integration.state(0), 1e-12);
    }

    @Test
    void theWorkIsBounded() {
        Accuracy fine = adaptive(3, 1e-12);
        Accuracy little = new Accuracy(fine.tolerances(), 1e-3, 10, 10, 1e-9, 500);
        Integration integration = new Integration(new Lagging(3, true), little, NOBODY);
        integration.begin(0, new double[] {1, 0, 0});
        assertEquals(Stop.EXHAUSTED, integration.advance(1e6));
        assertTrue(integration.evaluations() < 505);
        assertTrue(integration.at() > 0 && integration.at() < 1e6);
    }

    /** y' = y² from 1 has no solution beyond t = 1: the work ends, and not beyond it. */
    @Test
    void whatRunsAwayComesToRest() {
        Integration integration = new Integration(one(0, (t, y) -> y[0] * y[0]), adaptive(1, 1e-6), NOBODY);
        integration.begin(0, new double[] {1});
        assertTrue(integration.advance(2) != Stop.REACHED);
        assertEquals(1, integration.at(), 1e-3);
    }

    /** A rate that is no number leads nowhere. */
    @Test
    void whatCannotGoOnComesToRest() {
        Integration none = new Integration(one(1, (t, y) -> t < 0.5 ? 1 : Double.NaN), adaptive(1, 1e-6), NOBODY);
        none.begin(0, new double[] {1});
        assertEquals(Stop.STUCK, none.advance(2));
        assertEquals(0.5, none.at(), 1e-3);
        assertTrue(none.at() < 0.5);
    }

    @Test
    void stepsMakeNoObjects() {
        Integration integration =
                new Integration(new Lagging(3, true), adaptive(3, 1e-7), NOBODY, (t, y) -> 2 + y[0], (t, y) -> 5 - t);
        double[] start = {1, 0, 0};
        integration.begin(0, start);
        integration.advance(1);
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        long thread = Thread.currentThread().getId();
        long before = threads.getThreadAllocatedBytes(thread);
        for (int run = 0; run < 20; run++) {
            integration.begin(0, start);
            integration.advance(6);
            integration.advance(9);
        }
        long made = threads.getThreadAllocatedBytes(thread) - before;
        assertTrue(made < 5_000, made + " bytes");
    }

    @Test
    void numbersThatMakeNoSenseAreRefused() {
        double[] two = {1, 1};
        assertThrows(
                IllegalArgumentException.class,
                () -> new Integration(new Lagging(3, true), new Accuracy(two, 1, 1, 1, 1, 1), NOBODY));
        assertThrows(InvalidValueException.class, () -> new Accuracy(new double[] {Double.NaN}, 1, 1, 1, 1, 1));
        assertThrows(InvalidValueException.class, () -> new Accuracy(two, 0, 1, 1, 1, 1));
        assertThrows(InvalidValueException.class, () -> new Accuracy(two, 1, Double.NaN, 1, 1, 1));
        assertThrows(InvalidValueException.class, () -> new Accuracy(two, 1, 1, -1, 1, 1));
        assertThrows(InvalidValueException.class, () -> new Accuracy(two, 1, 1, 1, 0, 1));
        assertThrows(InvalidValueException.class, () -> new Accuracy(two, 1, 1, 1, 1, 0));
        assertEquals(3, new Accuracy(two, 1, 1, 1, 1, 1).coarsened(3).tolerances()[1]);
        assertEquals(7, new Accuracy(two, 1, 1, 1, 1, 1).withLongestStep(7).longestStep());
    }
}
