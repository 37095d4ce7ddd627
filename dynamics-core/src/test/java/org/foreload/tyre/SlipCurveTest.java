package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws of every slip curve, and of what is carried along a wheel beside a lateral slip. */
class SlipCurveTest {

    private static final double[] SLIPS = {0.05, 0.4, 0.8, 0.97, 1.03, 1.6, 2.9, 3.1, 7};

    /** Half the distance over which a slope is read; no slip above lies as close to a corner of a curve. */
    private static final double PROBE = 1e-5;

    static Stream<SlipCurve> curves() {
        return Stream.of(
                new SlipCurve.Linear(),
                new SlipCurve.Brush(),
                new SlipCurve.MagicFormula(1.2, 0.4),
                new SlipCurve.MagicFormula(1.6, -4));
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theSlopeIsTheDerivative(SlipCurve curve) {
        for (double x : SLIPS) {
            double rise = (curve.value(x + PROBE) - curve.value(x - PROBE)) / (2 * PROBE);
            assertEquals(rise, curve.slope(x), 1e-6, () -> curve + " at " + x);
        }
        assertEquals(1, curve.slope(0), 1e-12);
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theSecantIsValueOverSlip(SlipCurve curve) {
        for (double x : SLIPS) {
            assertEquals(curve.value(x) / x, curve.secant(x), 1e-14, () -> curve + " at " + x);
            double rise = (curve.secant(x + PROBE) - curve.secant(x - PROBE)) / (2 * PROBE);
            assertEquals(rise, curve.secantSlope(x), 1e-6, () -> curve + " at " + x);
            double bend = (curve.secantSlope(x + PROBE) - curve.secantSlope(x - PROBE)) / (2 * PROBE);
            assertEquals(bend, curve.secantBend(x), 1e-6, () -> curve + " at " + x);
        }
        assertEquals(1, curve.secant(0), 1e-14);
        // Where the tables of a Magic Formula end, the formula itself.
        double rise = (curve.secantSlope(150 + PROBE) - curve.secantSlope(150 - PROBE)) / (2 * PROBE);
        assertEquals(rise, curve.secantBend(150), 1e-3 * Math.abs(rise), () -> curve.toString());
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theCurveRisesToOneAtItsPeak(SlipCurve curve) {
        double peak = curve.peakSlip();
        assertEquals(1, curve.value(peak), 1e-8);
        assertTrue(curve.value(0.99 * peak) < 1);
        assertTrue(curve.value(1.01 * peak) <= 1 + 1e-8);
        assertEquals(peak, curve.inverse(1), 1e-12 * peak);
        assertEquals(0, curve.inverse(0), 0);
        for (double share : new double[] {1e-4, 0.2, 0.6, 0.95, 0.9999}) {
            // An inverse may come from a table; its error of slip is told in the curve's own Javadoc.
            assertEquals(share, curve.value(curve.inverse(share)), 1e-9, () -> curve + " " + share);
            double lack = Math.sqrt(1 - share * share);
            assertEquals(share, curve.value(share * curve.inverseSecant(lack)), 1e-9, () -> curve + " lacks " + lack);
        }
        assertEquals(peak, curve.inverseSecant(0), 1e-12 * peak);
        assertEquals(1, curve.inverseSecant(1), 1e-12);
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theShareAlongTheWheelFollowsTheDirectionOfTheSlip(SlipCurve curve) {
        double lateral = 0.35;
        CombinedSlip beside = new CombinedSlip(curve, lateral);
        for (double along : SLIPS) {
            double length = Math.hypot(along, lateral);
            double share = curve.value(length) * along / length;
            assertEquals(share * share, beside.squaredShare(length), 1e-14);
            double rise = (beside.squaredShare(length + PROBE) - beside.squaredShare(length - PROBE)) / (2 * PROBE);
            assertEquals(rise, beside.slope(length), 1e-6, () -> curve + " at " + length);
        }
    }

    @ParameterizedTest
    @MethodSource("curves")
    void theLengthForAShareCarriesIt(SlipCurve curve) {
        for (double lateral : new double[] {1e-3, 0.1, 0.6, 1.5, 4}) {
            CombinedSlip beside = new CombinedSlip(curve, lateral);
            double most = curve.largestShare(lateral);
            assertEquals(lateral, beside.lengthFor(0), 1e-12);
            for (double part : new double[] {0.1, 0.5, 0.9, 0.99}) {
                double length = beside.lengthFor(part * most);
                assertEquals(part * most, Math.sqrt(beside.squaredShare(length)), 1e-9, () -> curve + " " + lateral);
            }
        }
    }

    /** The guess is one minus the cube root that inverts the brush curve, whatever the curve. */
    @Test
    void theGuessIsTheInverseOfTheBrush() {
        SlipCurve.Brush brush = new SlipCurve.Brush();
        for (double share : new double[] {0, 0.271, 0.875, 1}) {
            assertEquals(brush.inverse(share), CombinedSlip.guess(brush.peakSlip(), share), 1e-15);
        }
    }

    /** A curve that never falls can be led as near to the whole peak as one likes, by ever more slip. */
    @Test
    void withoutAFallTheWholePeakIsTheLimit() {
        for (SlipCurve curve : new SlipCurve[] {new SlipCurve.Linear(), new SlipCurve.Brush()}) {
            FrictionTyre tyre = new FrictionTyre(curve, 1.2, 1.0, 0.1, 3000, 0.3, 18, 22);
            assertEquals(tyre.peakForceX(4000), tyre.rollingForceLimit(0.05, 4000), 1e-9);
            assertEquals(Double.POSITIVE_INFINITY, curve.lengthOfLargestShare(0.5));
        }
    }

    @Test
    void copiesKeepAllButWhatTheyAreNamedFor() {
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1.2, 1.0, 0.1, 3000, 0.3, 18, 22);
        assertEquals(
                new FrictionTyre(new SlipCurve.Brush(), 1.2, 1.0, 0.1, 3000, 0.7, 18, 22),
                tyre.withRelaxationLength(0.7));
        Tyre wet = BareTyre.of(tyre).withFriction(0.5);
        assertEquals(0.5 * tyre.peakFrictionY(2000), wet.peakFrictionY(2000), 1e-15);
        assertEquals(0.3, wet.relaxationLength(), 0);
    }
}
