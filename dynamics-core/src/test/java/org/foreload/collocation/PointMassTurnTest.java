package org.foreload.collocation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The quickest turn of a point mass whose acceleration is bounded by A, from the speed v₀ back to v₀, over the angle
 * turned through. Speeds in v₀, times in v₀/A, lengths in v₀²/A.
 */
class PointMassTurnTest {

    private static final int INTERVALS = 80;

    /** Speed below which the turn would be one on the spot. */
    private static final double SLOWEST = 0.02;

    private record Turn(double time, double slowest) {}

    /**
     * States: speed, and distance to the side. Controls: acceleration along and across. Per radian of heading, with v
     * the speed: dv = v·along/across, dy = v²·sin(heading)/across, dt = v/across.
     */
    private record PointMass(double angle, double width) implements StageEquations {

        private static final int ALL = 4;

        @Override
        public int states() {
            return 2;
        }

        @Override
        public int controls() {
            return 2;
        }

        @Override
        public int bounds() {
            return 6;
        }

        @Override
        public boolean atOnce(int state) {
            return false;
        }

        private double sine(int point) {
            double node = OptimalControl.nodes()[point % 2];
            return Math.sin(angle * (point / 2 + node) / INTERVALS);
        }

        private boolean last(int point) {
            return point == 2 * INTERVALS - 1;
        }

        @Override
        public void values(int point, double[] x, PointValues into) {
            double v = x[point * ALL];
            double y = x[point * ALL + 1];
            double along = x[point * ALL + 2];
            double across = x[point * ALL + 3];
            into.cost(v / across);
            into.rate()[0] = v * along / across;
            into.rate()[1] = v * v * sine(point) / across;
            into.room()[0] = 1 - along * along - across * across;
            into.room()[1] = v - (last(point) ? 1 : SLOWEST);
            into.room()[2] = across - 0.01;
            into.room()[3] = last(point) ? y - width : 1;
            into.room()[4] = 2 - v;
            into.room()[5] = last(point) ? width + 1e-3 + (width == 0 ? 100 : 0) - y : 1;
        }

        @Override
        public void derivatives(int point, double[] x, double cost, double[] rates, double[] rooms, PointValues into) {
            values(point, x, into);
            double v = x[point * ALL];
            double a = x[point * ALL + 2];
            double c = x[point * ALL + 3];
            double sine = sine(point);
            copy(into.costSlope(), 1 / c, 0, 0, -v / (c * c));
            copy(into.rateSlope(), a / c, 0, v / c, -v * a / (c * c), 2 * v * sine / c, 0, 0, -v * v * sine / (c * c));
            double end = last(point) ? 1 : 0;
            copy(
                    into.roomSlope(),
                    0,
                    0,
                    -2 * a,
                    -2 * c, //
                    1,
                    0,
                    0,
                    0, //
                    0,
                    0,
                    0,
                    1, //
                    0,
                    end,
                    0,
                    0, //
                    -1,
                    0,
                    0,
                    0, //
                    0,
                    -end,
                    0,
                    0);
            double w0 = rates[0];
            double w1 = rates[1] * sine;
            double vv = 2 * w1 / c;
            double va = w0 / c;
            double vc = -cost / (c * c) - w0 * a / (c * c) - 2 * w1 * v / (c * c);
            double ac = -w0 * v / (c * c);
            double cc = 2 * (cost * v + w0 * v * a + w1 * v * v) / (c * c * c) - 2 * rooms[0];
            copy(into.curvature(), vv, 0, va, vc, 0, 0, 0, 0, va, 0, -2 * rooms[0], ac, vc, 0, ac, cc);
        }

        private static void copy(double[] into, double... values) {
            System.arraycopy(values, 0, into, 0, values.length);
        }

        Turn solve() {
            double[] lengths = new double[INTERVALS];
            java.util.Arrays.fill(lengths, angle / INTERVALS);
            double[] guess = new double[2 * INTERVALS * ALL];
            for (int p = 0; p < 2 * INTERVALS; p++) {
                guess[p * ALL] = 0.9;
                guess[p * ALL + 1] = width * p / (2.0 * INTERVALS);
                guess[p * ALL + 3] = 0.8;
            }
            OptimalControl.Ending ending = OptimalControl.solve(
                    this, lengths, new double[] {1, 0}, new boolean[2], guess, 1e-6, 300, (step, residual) -> {});
            assertTrue(ending.converged(), "residual " + ending.residual());
            double[] x = ending.unknowns();
            double time = 0;
            double slowest = 1;
            for (int p = 0; p < 2 * INTERVALS; p++) {
                time += angle / INTERVALS * OptimalControl.weights()[p % 2] * x[p * ALL] / x[p * ALL + 3];
                slowest = Math.min(slowest, x[p * ALL]);
            }
            return new Turn(time, slowest);
        }
    }

    /**
     * Positions free: the acceleration is one constant vector, T = 2·sin(ψ/2), slowest cos(ψ/2). Derived here: the
     * shortest way in the plane of velocities is straight. Problem class: P. Palffy-Muhoray, W. G. Unruh, Turning
     * quickly, American Journal of Physics 49, 685 (1981), title and abstract. Agreed accuracy: 0.3 % in time, 1 % in
     * speed.
     */
    @ParameterizedTest
    @CsvSource({"60, 1.000000, 0.866025", "90, 1.414214, 0.707107", "135, 1.847759, 0.382683"})
    void aFreeTurnHasOneAcceleration(double degrees, double time, double slowest) {
        Turn turn = new PointMass(Math.toRadians(degrees), 0).solve();
        assertEquals(time, turn.time(), 0.003 * time);
        assertEquals(slowest, turn.slowest(), 0.01 * slowest);
    }

    /** Half a turn of prescribed width D·A/v₀²: the tangent of the acceleration's direction is linear in time. */
    @ParameterizedTest
    @CsvSource({"0.5, 2.15930007, 0.355144", "1, 2.47293003, 0.642791", "2, 3.11195038, 0.914039"})
    void aTurnOfPrescribedWidthFollowsTheLinearTangent(double width, double time, double slowest) {
        Turn turn = new PointMass(Math.PI, width).solve();
        assertEquals(time, turn.time(), 0.003 * time);
        assertEquals(slowest, turn.slowest(), 0.01 * slowest);
    }

    /** Without a width the half turn is one on the spot: straight braking and straight driving, T = 2. */
    @Test
    void aHalfTurnThatIsFreeIsOneOnTheSpot() {
        Turn turn = new PointMass(Math.PI, 0).solve();
        assertEquals(2, turn.time(), 0.01);
        assertTrue(turn.slowest() < 0.05, "slowest " + turn.slowest());
    }
}
