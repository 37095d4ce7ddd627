package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is searched for on a force alone, against closed forms, and how many looks it takes. */
class ImposedForceTest {

    private static final double LOAD = 3000;

    /** Largest share of the peak by which a search may be off: a tenth of what {@link TyreLaws} allow. */
    private static final double FINE = 1e-7;

    /** Force of one curve over the length of the slip, against its direction. */
    private record Round(DoubleUnaryOperator curve, double stiffness) implements Tyre {

        @Override
        public double peakFrictionX(double load) {
            return 1;
        }

        @Override
        public double peakFrictionY(double load) {
            return 1;
        }

        @Override
        public double corneringStiffness(double load) {
            return stiffness * load;
        }

        @Override
        public double slipStiffness(double load) {
            return stiffness * load;
        }

        @Override
        public double relaxationLength() {
            return 0;
        }

        @Override
        public TyreForce force(double longitudinalSlip, double lateralSlip, double load) {
            double slip = Math.hypot(longitudinalSlip, lateralSlip);
            if (slip == 0 || !(load > 0)) {
                return TyreForce.NONE;
            }
            double perSlip = load * curve.applyAsDouble(slip) / slip;
            return new TyreForce(perSlip * longitudinalSlip, perSlip * lateralSlip);
        }
    }

    /** Grips in proportion up to a slip of 0.1, then slides with 0.6 of that. */
    private static final Tyre SLIDING = new Round(slip -> slip < 0.1 ? slip / 0.1 : 0.6, 10);

    /** Comes ever nearer to its peak. */
    private static final Tyre SATURATING = new Round(slip -> Math.tanh(15 * slip), 15);

    /**
     * The first peak counts, though a stopped wheel's force rises again: at the slip of 0.1 the wheel carries √(1 −
     * (0.03/0.1)²) of the load along itself and 0.3 of it across, by Pythagoras.
     */
    @Test
    void aTyreThatSlidesHasItsLimitWhereItStillGrips() {
        double along = Math.sqrt(1 - 0.3 * 0.3);
        assertEquals(along * LOAD, SLIDING.rollingForceLimit(0.03, LOAD), FINE * LOAD);
        assertEquals(0.3 * LOAD, SLIDING.lateralForce(0.03, LOAD, LOAD), FINE * LOAD);
        // Below it, the slip that carries a force is in proportion: half of it leaves the same lateral force.
        assertEquals(0.3 * LOAD, SLIDING.lateralForce(0.03, along / 2 * LOAD, LOAD), FINE * LOAD);
    }

    /** What never falls has its limit at a stopped wheel: tanh is 1 there, and the force points along the slip. */
    @Test
    void aTyreThatSaturatesHasItsLimitAtAStoppedWheel() {
        double angle = Math.atan(0.2);
        assertEquals(Math.cos(angle) * LOAD, SATURATING.rollingForceLimit(0.2, LOAD), FINE * LOAD);
        assertEquals(Math.sin(angle) * LOAD, SATURATING.lateralForce(0.2, LOAD, LOAD), FINE * LOAD);
    }

    /** The slip that carries a force, turned round by the inverse of tanh; the force opposes it in full. */
    @ParameterizedTest
    @CsvSource({"0.001", "0.1", "0.5", "0.9", "0.999"})
    void theSlipForAForceIsFound(double share) {
        double slip = Math.log((1 + share) / (1 - share)) / 2 / 15;
        assertEquals(slip, SATURATING.lateralSlipFor(share, LOAD), 1e-8 * slip);
        double across = SATURATING.force(slip, 0.05, LOAD).lateral();
        double along = SATURATING.force(slip, 0.05, LOAD).longitudinal();
        assertEquals(across, SATURATING.lateralForce(0.05, along, LOAD), FINE * LOAD);
    }

    /** The peak of a Magic Formula, falling after it, against the model that knows its own. */
    @ParameterizedTest
    @CsvSource({"0", "0.02", "-0.08", "0.3"})
    void theLimitIsThatOfTheClosedForm(double lateralSlip) {
        FrictionTyre known = new FrictionTyre(new SlipCurve.MagicFormula(1.6, -0.5), 1.2, 1.1, 0.1, 4000, 0, 18, 20);
        double limit = known.rollingForceLimit(lateralSlip, LOAD);
        assertEquals(limit, BareTyre.of(known).rollingForceLimit(lateralSlip, LOAD), FINE * limit);
        for (double share : new double[] {0, 0.3, 0.9}) {
            assertEquals(
                    known.lateralForce(lateralSlip, share * limit, LOAD),
                    BareTyre.of(known).lateralForce(lateralSlip, share * limit, LOAD),
                    10 * FINE * limit);
        }
    }

    /** Each look is a call of a model that may be slow; all that a wheel needs takes no more than this. */
    @ParameterizedTest
    @CsvSource({"0, 0, 15", "0, 0.7, 30", "0.05, 0, 15", "0.05, 0.5, 30", "-0.1, 0.9, 40", "0.05, 1.2, 45"})
    void aWheelTakesFewLooks(double lateralSlip, double share, int most) {
        AtomicInteger looks = new AtomicInteger();
        Tyre counted = new BareTyre(SATURATING, force -> {
            looks.incrementAndGet();
            return force;
        });
        ContactPatch patch = new ContactPatch();
        counted.roll(lateralSlip, share * LOAD, LOAD, patch);
        assertTrue(looks.get() <= most, looks + " looks");
        assertEquals(SATURATING.rollingForceLimit(lateralSlip, LOAD), patch.limit());
    }

    /** A model that gives nonsense gives it back; the search ends. */
    @Test
    void nonsenseEndsToo() {
        Tyre nonsense = new Round(slip -> Double.NaN, Double.NaN);
        assertEquals(Double.NaN, nonsense.rollingForceLimit(0.1, LOAD));
        assertEquals(Double.NaN, nonsense.lateralForce(0.1, 100, LOAD));
        assertEquals(Double.NaN, new Round(Math::tanh, 0).lateralForce(0.1, Double.NaN, LOAD));
        assertEquals(0, new Round(slip -> 0, Double.POSITIVE_INFINITY).rollingForceLimit(0.1, LOAD));
    }
}
