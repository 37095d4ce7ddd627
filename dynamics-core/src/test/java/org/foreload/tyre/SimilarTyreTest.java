package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

/**
 * A tyre scaled by similarity is held against one that is made with the scaled friction: for that model the similarity
 * is exact.
 */
class SimilarTyreTest {

    private static final FrictionTyre GIVEN =
            new FrictionTyre(new SlipCurve.MagicFormula(1.5, 0.2), 1.1, 1.0, 0.08, 3000, 0.4, 16, 20);

    /** Forces agree to a millionth of the peak, as the searches inside the models promise. */
    private static final double ACCURACY = 1e-6;

    @Property
    void agreesWithATyreMadeOfTheScaledFriction(
            @ForAll @DoubleRange(min = 0.3, max = 1.5) double factor,
            @ForAll @DoubleRange(min = -1, max = 1) double longitudinal,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double lateral,
            @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        Tyre similar = new SimilarTyre(GIVEN, factor);
        FrictionTyre made = GIVEN.withFriction(factor);
        double peak = made.peakForceY(load);
        assertEquals(1.1 * factor, made.frictionX(), 1e-15);
        assertEquals(made.peakFrictionX(load), similar.peakFrictionX(load), ACCURACY);
        assertEquals(made.peakFrictionY(load), similar.peakFrictionY(load), ACCURACY);
        assertEquals(made.corneringStiffness(load), similar.corneringStiffness(load), ACCURACY * peak);
        assertEquals(made.slipStiffness(load), similar.slipStiffness(load), ACCURACY * peak);
        TyreForce a = made.force(longitudinal, lateral, load);
        TyreForce b = similar.force(longitudinal, lateral, load);
        assertEquals(a.longitudinal(), b.longitudinal(), ACCURACY * peak);
        assertEquals(a.lateral(), b.lateral(), ACCURACY * peak);
        double limit = made.rollingForceLimit(lateral, load);
        assertEquals(limit, similar.rollingForceLimit(lateral, load), 1e-4 * peak);
        assertEquals(
                made.lateralForce(lateral, 0.6 * limit, load),
                similar.lateralForce(lateral, 0.6 * limit, load),
                1e-4 * peak);
        assertEquals(made.lateralSlipFor(0.9, load), similar.lateralSlipFor(0.9, load), ACCURACY);
        assertEquals(made.lateralSlipBeside(0.8, 0.9, load), similar.lateralSlipBeside(0.8, 0.9, load), ACCURACY);
    }

    @Test
    void keepsTheLawsOfATyre() {
        assertEquals(List.of(), TyreLaws.broken(new SimilarTyre(GIVEN, 0.7), 500, 2000, 6000));
    }

    @Test
    void aStoppedWheelSlidesAlongItsSlip() {
        TyreForce force = new SimilarTyre(GIVEN, 0.5).lockedForce(0.3, 4000);
        assertEquals(0.3, force.lateral() / force.longitudinal(), 1e-12);
        assertTrue(force.longitudinal() > 0);
        assertEquals(0.5 * GIVEN.lockedForce(0.3, 4000).lateral(), force.lateral(), 1e-9);
    }

    @Test
    void refusesNoFriction() {
        assertThrows(InvalidValueException.class, () -> new SimilarTyre(GIVEN, 0));
        assertThrows(InvalidValueException.class, () -> GIVEN.withFriction(Double.NaN));
    }
}
