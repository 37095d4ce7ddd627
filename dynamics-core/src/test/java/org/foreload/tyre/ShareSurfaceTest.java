package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The table against the search that serves any curve, {@link CombinedSlip}. */
class ShareSurfaceTest {

    private final SlipCurve.Shares shares = new SlipCurve.Shares();

    private static double searched(SlipCurve curve, double y, double along) {
        double length = new CombinedSlip(curve, y).lengthFor(along);
        return curve.value(length) * y / length;
    }

    /** Anywhere on the table, whatever the curve; a curve without a table is searched, and so is what lies beyond. */
    @Property
    void theTableHoldsWhatASearchFinds(
            @ForAll @DoubleRange(min = 1.02, max = 1.95) double shape,
            @ForAll @DoubleRange(min = -8, max = 0.98) double curvature,
            @ForAll @DoubleRange(min = 0.01, max = 11) double y,
            @ForAll @DoubleRange(min = 0, max = 0.99) double first,
            @ForAll @DoubleRange(min = 0, max = 0.99) double second) {
        SlipCurve curve = new SlipCurve.MagicFormula(shape, curvature);
        double most = curve.largestShare(y);
        curve.shares(y, first * most, second * most, shares);
        assertEquals(most, shares.most, 2 * ShareSurface.ACCURACY);
        assertEquals(searched(curve, y, first * most), shares.first, 2 * ShareSurface.ACCURACY);
        assertEquals(searched(curve, y, second * most), shares.second, 2 * ShareSurface.ACCURACY);
    }

    /** With nothing along the wheel the curve itself is left. */
    @Example
    void aFreeWheelHasTheCurve() {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(1.4, -0.4);
        ShareSurface table = new ShareSurface(curve);
        for (double y = 0; y < 8; y += 0.013) {
            assertTrue(table.holds(y));
            table.shares(y, 0, 0, shares);
            assertEquals(curve.plain().value(y), shares.first, ShareSurface.ACCURACY);
            assertEquals(shares.first, shares.second);
        }
    }

    /** Near the most that there is a share falls with the root of what is left: no polynomial over it follows that. */
    @Example
    void nearTheMostThereIsTheTableFollows() {
        SlipCurve.MagicFormula curve = new SlipCurve.MagicFormula(1.6, -0.5);
        ShareSurface table = new ShareSurface(curve);
        for (double y = 0.05; y < 7.9; y *= 1.2) {
            double most = curve.largestShare(y);
            for (double lack = 1e-2; lack > 1e-5; lack /= 3) {
                table.shares(y, most * (1 - lack), 0, shares);
                assertEquals(
                        searched(curve, y, most * (1 - lack)), shares.first, ShareSurface.ACCURACY, y + " " + lack);
            }
            // Asked for all there is, or more, a wheel has what that leaves.
            table.shares(y, most, 2 * most, shares);
            assertEquals(searched(curve, y, most), shares.first, 1e-3);
            assertEquals(searched(curve, y, most), shares.second, ShareSurface.ACCURACY);
        }
    }

    @Test
    void aCurveTooSharpHasNoTable() {
        assertFalse(new ShareSurface(new SlipCurve.MagicFormula(1.3, -20)).holds(0.1));
        assertFalse(new ShareSurface(new SlipCurve.MagicFormula(1.4, -0.4)).holds(8));
    }
}
