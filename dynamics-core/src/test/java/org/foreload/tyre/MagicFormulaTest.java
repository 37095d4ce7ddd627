package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** The table behind the Magic Formula against the formula, its readable twin. */
class MagicFormulaTest {

    @Property(tries = 300)
    void theTableIsTheFormula(
            @ForAll @DoubleRange(min = 1.05, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -5, max = 0.95) double curvature,
            @ForAll @DoubleRange(min = 0, max = 160) double slip) {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(shape, curvature);
        assertEquals(curve.formula(slip), curve.value(slip), 1e-8);
        assertEquals(curve.formulaSlope(slip), curve.slope(slip), 1e-5);
    }

    @Property(tries = 300)
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

    private static double share(SlipCurve curve, double lateral, double length) {
        double ratio = lateral / length;
        return curve.value(length) * Math.sqrt(1 - ratio * ratio);
    }
}
