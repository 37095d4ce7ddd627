package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.UnaryOperator;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

/** The checker of tyre laws: silent for the library's tyres, and loud for each law that is broken. */
class TyreLawsTest {

    private static final double[] LOADS = {800, 3000, 7000};

    private static FrictionTyre tyre(SlipCurve curve) {
        return new FrictionTyre(curve, 1.1, 1.0, 0.1, 3000, 0.3, 18, 22);
    }

    /** What was tried under no load was not tried. */
    @Test
    void withoutALoadNothingIsSaid() {
        Tyre tyre = tyre(new SlipCurve.Brush());
        assertThrows(InvalidValueException.class, () -> TyreLaws.broken(tyre));
        for (double load : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(InvalidValueException.class, () -> TyreLaws.broken(tyre, 3000, load));
        }
    }

    @Test
    void theTyresOfTheLibraryBreakNone() {
        for (SlipCurve curve :
                List.of(new SlipCurve.Linear(), new SlipCurve.Brush(), new SlipCurve.MagicFormula(1.5, -0.5))) {
            assertEquals(List.of(), TyreLaws.broken(tyre(curve), LOADS), curve.toString());
        }
    }

    /** An imposed force must leave what its slip leaves: a model that forgets it breaks only this law. */
    @Test
    void aForgottenBrakeForceIsNamed() {
        Tyre tyre = tyre(new SlipCurve.Brush());
        Tyre forgetful = new BareTyre(tyre, UnaryOperator.identity()) {
            @Override
            public double lateralForce(double lateralSlip, double longitudinalForce, double load) {
                return tyre.lateralForce(lateralSlip, 0, load);
            }
        };
        List<String> broken = TyreLaws.broken(forgetful, LOADS);
        assertTrue(broken.stream().allMatch(line -> line.startsWith("an imposed force leaves")), broken.toString());
        assertTrue(!broken.isEmpty());
    }

    /** A tyre that answers to an imposed force with an error, a share of its peak, up to a share of its limit. */
    private static List<String> brokenWith(double error, double share) {
        Tyre tyre = tyre(new SlipCurve.Brush());
        return TyreLaws.broken(
                new BareTyre(tyre, UnaryOperator.identity()) {
                    @Override
                    public double lateralForce(double lateralSlip, double longitudinalForce, double load) {
                        boolean wrong = longitudinalForce < share * tyre.rollingForceLimit(lateralSlip, load);
                        return tyre.lateralForce(lateralSlip, longitudinalForce, load)
                                + (wrong ? error * tyre.peakForceY(load) : 0);
                    }
                },
                LOADS);
    }

    /** What a search for slip leaves is no breach, and what is more is one, at any share of the limit. */
    @Test
    void anImposedForceMayDifferByWhatASearchLeaves() {
        assertEquals(List.of(), brokenWith(5e-6, 1));
        assertTrue(!brokenWith(2e-5, 1).isEmpty());
        assertTrue(!brokenWith(2e-5, 0.5).isEmpty());
    }

    /** A millionth of the peak is rounding to both sides of zero; a hundred-thousandth is not. */
    @Test
    void oddnessIsMeasuredByThePeak() {
        String law = "force is odd";
        Tyre small =
                new BareTyre(tyre(new SlipCurve.Brush()), f -> new TyreForce(f.longitudinal(), f.lateral() + 3e-4));
        assertTrue(TyreLaws.broken(small, LOADS).stream().noneMatch(line -> line.startsWith(law)));
        assertBreaks(law, f -> new TyreForce(f.longitudinal(), f.lateral() + 1e-2));
    }

    private static void assertBreaks(String law, UnaryOperator<TyreForce> spoil) {
        List<String> broken = TyreLaws.broken(new BareTyre(tyre(new SlipCurve.Brush()), spoil), LOADS);
        assertTrue(broken.stream().anyMatch(line -> line.startsWith(law)), law + " is not among " + broken);
    }

    @Test
    void everyBrokenLawIsNamed() {
        assertBreaks("no load, no force", f -> new TyreForce(f.longitudinal() + 1, f.lateral()));
        assertBreaks("zero slip, zero force", f -> new TyreForce(f.longitudinal() + 1, f.lateral()));
        assertBreaks("force is odd", f -> new TyreForce(f.longitudinal(), f.lateral() + 5));
        assertBreaks("force stays inside", f -> new TyreForce(1.01 * f.longitudinal(), 1.01 * f.lateral()));
        assertBreaks("small-slip slopes", f -> new TyreForce(f.longitudinal(), 0.9 * f.lateral()));
        assertBreaks("force opposes slip", f -> new TyreForce(f.longitudinal(), -f.lateral()));
        assertBreaks("small-slip slopes", f -> new TyreForce(0.9 * f.longitudinal(), f.lateral()));
        assertBreaks("small-slip slopes", f -> new TyreForce(Double.NaN, f.lateral()));
        assertBreaks("force is odd", f -> new TyreForce(f.longitudinal() + 5, f.lateral()));
        assertBreaks("force opposes slip", f -> new TyreForce(-f.longitudinal(), f.lateral()));
    }

    /** A negative lag would let slip run away, so a length says no such thing: physics, no source. */
    @Test
    void aRelaxationLengthThatIsNoLengthIsNamed() {
        for (double length : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            Tyre tyre = new BareTyre(tyre(new SlipCurve.Brush()), UnaryOperator.identity()) {
                @Override
                public double relaxationLength() {
                    return length;
                }
            };
            List<String> broken = TyreLaws.broken(tyre, LOADS);
            assertEquals(1, broken.size(), broken.toString());
            assertTrue(broken.get(0).contains("relaxation length"), broken.toString());
        }
    }

    /** Common practice, no source: a checker names what it finds and does not fall over it. */
    @Test
    void aForceThatIsNullIsNamed() {
        List<String> broken = TyreLaws.broken(new BareTyre(tyre(new SlipCurve.Brush()), f -> null), LOADS);
        assertEquals(1, broken.size(), broken.toString());
        assertTrue(broken.get(0).startsWith("force is never null"), broken.toString());
    }

    /**
     * A block slides against its velocity (Coulomb's law of sliding friction, from memory), whatever the stiffnesses;
     * and where the library's tyre has it in closed form, the default finds the same.
     */
    @Test
    void aLockedWheelSlidesAgainstItsSlipVelocity() {
        FrictionTyre closed = tyre(new SlipCurve.MagicFormula(1.5, -0.5));
        Tyre bare = new BareTyre(closed, UnaryOperator.identity());
        for (double slip : new double[] {-2, -0.5, 0, 0.1, 0.5, 3}) {
            TyreForce force = bare.lockedForce(slip, 3000);
            assertEquals(slip, force.lateral() / force.longitudinal(), 1e-12);
            TyreForce known = closed.lockedForce(slip, 3000);
            assertEquals(known.longitudinal(), force.longitudinal(), 1e-9 * 3000, "slip " + slip);
            assertEquals(known.lateral(), force.lateral(), 1e-9 * 3000, "slip " + slip);
        }
        assertEquals(TyreForce.NONE, bare.lockedForce(0.5, 0));
    }
}
