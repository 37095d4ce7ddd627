package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The table behind the Magic Formula against the formula, its readable twin. */
class MagicFormulaTest {

    @Property
    void theTableIsTheFormula(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.95) double curvature,
            @ForAll @DoubleRange(min = 0, max = 160) double slip) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        assertEquals(curve.plain().value(slip), curve.value(slip), 1e-8);
        assertEquals(curve.plain().slope(slip), curve.slope(slip), 1e-5);
    }

    @Property
    void nothingIsMoreThanTheLargestShare(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.95) double curvature,
            @ForAll @DoubleRange(min = 0.01, max = 6) double lateral,
            @ForAll @DoubleRange(min = 1, max = 20) double stretch) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        double best = share(curve, lateral, curve.lengthOfLargestShare(lateral));
        assertEquals(best, curve.largestShare(lateral), 1e-6);
        assertTrue(share(curve, lateral, lateral * stretch) <= best + 1e-9);
    }

    /** The table of lengths, found by Newton's rule, against the search; what most is at them, to second order. */
    @Property
    void theTableOfLengthsIsTheSearch(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.9) double curvature,
            @ForAll @DoubleRange(min = 0, max = 11.9) double lateral) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        double length = curve.lengthOfLargestShare(lateral);
        if (length < 300 * (lateral + curve.peakSlip())) {
            assertEquals(length, ShareLengths.of(curve).value(lateral), 1e-4 * length);
        }
    }

    @Property
    void theBendIsTheSlopeOfTheSlope(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.95) double curvature,
            @ForAll @DoubleRange(min = 0.01, max = 30) double slip) {
        PlainMagicFormula curve = new PlainMagicFormula(shape, curvature);
        double bend = (curve.slope(slip + 1e-5) - curve.slope(slip - 1e-5)) / 2e-5;
        assertEquals(bend, curve.bend(slip), 1e-7);
    }

    /** With E = 0 the peak is where C·atan(x/C) is a right angle: x = C·tan(π/2C). */
    @ParameterizedTest
    @ValueSource(doubles = {1.1, 1.3, 1.65, 1.9})
    void thePeakIsThatOfTheClosedForm(double shape) {
        double peak = shape * Math.tan(Math.PI / 2 / shape);
        assertEquals(peak, new SlipCurve.MagicFormula(shape, 0).peakSlip(), 1e-12 * peak);
    }

    /** Whatever E is, the curve is highest where its slope is zero, and it is 1 there. */
    @Property
    void theCurveIsOneAndLevelAtItsPeak(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.95) double curvature) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        double peak = curve.peakSlip();
        assertEquals(1, curve.plain().value(peak), 1e-12);
        assertEquals(0, curve.plain().slope(peak), 1e-7);
        assertEquals(peak, curve.inverse(1), 0);
        assertEquals(0.4, curve.plain().value(curve.inverse(0.4)), 1e-8);
    }

    /** A wheel that hardly slips sideways carries most at the peak of the curve itself, to the last digits of both. */
    @Property
    void withHardlyAnySideSlipThePeakCarriesMost(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.95) double curvature,
            @ForAll @DoubleRange(min = 6, max = 18) double digits) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        double length = curve.lengthOfLargestShare(Math.pow(10, -digits));
        assertEquals(curve.peakSlip(), length, 1e-6 * curve.peakSlip());
    }

    /** The slope of the largest share is zero: a little more or less slip carries less. */
    @Property
    void theLargestShareIsAMaximum(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.9) double curvature,
            @ForAll @DoubleRange(min = 0.01, max = 30) double lateral) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        double length = curve.lengthOfLargestShare(lateral);
        assertTrue(length >= Math.max(lateral, curve.peakSlip()));
        if (length < 300 * (lateral + curve.peakSlip())) {
            double best = share(curve, lateral, length);
            double away = 1e-2 * (length - lateral);
            assertTrue(share(curve, lateral, length + away) < best, "more carries more");
            assertTrue(share(curve, lateral, length - away) < best, "less carries more");
        }
    }

    @Test
    void curvesOfEqualFactorsAreEqual() {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(1.5, -0.5);
        assertEquals(1.5, curve.shapeFactor());
        assertEquals(-0.5, curve.curvatureFactor());
        assertEquals(curve, new SlipCurve.MagicFormula(1.5, -0.5));
        assertEquals(curve.hashCode(), new SlipCurve.MagicFormula(1.5, -0.5).hashCode());
        assertNotEquals(curve, new SlipCurve.MagicFormula(1.5, -0.4));
        assertNotEquals(curve, new SlipCurve.MagicFormula(1.4, -0.5));
        assertNotEquals(curve, new SlipCurve.Brush());
        assertNotEquals(curve.hashCode(), new SlipCurve.MagicFormula(1.4, -0.5).hashCode());
        assertNotEquals(curve.hashCode(), new SlipCurve.MagicFormula(1.5, -0.4).hashCode());
        assertEquals("MagicFormula[shapeFactor=1.5, curvatureFactor=-0.5]", curve.toString());
    }

    private static double share(SlipCurve curve, double lateral, double length) {
        double ratio = lateral / length;
        return curve.value(length) * Math.sqrt(1 - ratio * ratio);
    }

    /** The inverse is searched on the formula; its slope, in closed form, is that of the search. */
    @ParameterizedTest
    @CsvSource({"1.4, -0.4", "1.2, 0.6", "1.8, -4"})
    void theInverseAndItsSlopeAreThoseOfTheFormula(double shape, double curvature) {
        PlainMagicFormula plain = new PlainMagicFormula(shape, curvature);
        double peak = plain.peakSlip();
        double probe = 1e-5;
        for (double lack = 0; lack <= 1; lack += 0.0625) {
            double y = Math.sqrt(1 - lack * lack);
            assertEquals(y, plain.value(y * plain.inverseSecant(lack, peak)), 1e-13);
            double low = Math.max(0, lack - probe);
            double high = Math.min(1, lack + probe);
            double rise = (plain.inverseSecant(high, peak) - plain.inverseSecant(low, peak)) / (high - low);
            double slope = plain.inverseSlope(lack, peak);
            assertEquals(rise, slope, 2e-4 * Math.max(1, Math.abs(slope)), "lacks " + lack);
        }
    }

    /** Read off the table, where that is good enough, and made so by Newton's rule where it is not. */
    @ParameterizedTest
    @CsvSource({"1.4, -0.4", "1.2, 0.6", "1.8, -4", "1.95, -15", "1.05, 0.9"})
    void theInverseIsAsGoodWhetherTheTableIsOrNot(double shape, double curvature) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        double peak = curve.peakSlip();
        for (double lack = 0.003; lack < 1; lack += 0.0137) {
            double secant = curve.plain().inverseSecant(lack, peak);
            double at = lack;
            assertEquals(secant, curve.inverseSecant(lack), 1e-7 * secant / lack, () -> curve + " lacks " + at);
        }
    }
}
