package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** The laws of {@link Tyre}, for every model of the library and for one that brings only the combined-slip force. */
class TyreContractTest {

    /** Forces agree to a millionth of the peak: what the searches inside the models promise. */
    private static final double FORCE_ACCURACY = 1e-6;

    /** Share of the peak force at which linear law and curve must agree for a tiny slip. */
    private static final double SMALL_SLIP = 1e-6;

    @Provide
    Arbitrary<Tyre> tyres() {
        Arbitrary<SlipCurve> curves = Arbitraries.oneOf(
                Arbitraries.just(new SlipCurve.Linear()),
                Arbitraries.just(new SlipCurve.Brush()),
                Combinators.combine(
                                Arbitraries.doubles().between(1.05, 1.95),
                                Arbitraries.doubles().between(-1.5, 0.95))
                        .as(SlipCurve.MagicFormula::new));
        return Combinators.combine(
                        curves,
                        Arbitraries.doubles().between(0.4, 2.2),
                        Arbitraries.doubles().between(0.4, 2.2),
                        Arbitraries.doubles().between(0, 0.2),
                        Arbitraries.doubles().between(2500, 6000),
                        Arbitraries.doubles().between(8, 30),
                        Arbitraries.doubles().between(8, 30),
                        Arbitraries.of(false, true))
                .as((curve, muX, muY, sensitivity, reference, cornering, slip, bare) -> {
                    Tyre tyre = new FrictionTyre(curve, muX, muY, sensitivity, reference, 0.4, cornering, slip);
                    return bare ? BareTyre.of(tyre) : tyre;
                });
    }

    @Property
    void forceIsOddInSlip(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = -1, max = 1) double longitudinal,
            @ForAll @DoubleRange(min = -1, max = 1) double lateral,
            @ForAll @DoubleRange(min = 0, max = 9000) double load) {
        TyreForce there = tyre.force(longitudinal, lateral, load);
        TyreForce back = tyre.force(-longitudinal, -lateral, load);
        assertEquals(there.longitudinal(), -back.longitudinal(), FORCE_ACCURACY);
        assertEquals(there.lateral(), -back.lateral(), FORCE_ACCURACY);
    }

    @Property
    void forceStaysInsideTheFrictionEllipse(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = -1, max = 1) double longitudinal,
            @ForAll @DoubleRange(min = -1, max = 1) double lateral,
            @ForAll @DoubleRange(min = 1, max = 9000) double load) {
        TyreForce force = tyre.force(longitudinal, lateral, load);
        assertTrue(Math.hypot(force.longitudinal() / tyre.peakForceX(load), force.lateral() / tyre.peakForceY(load))
                <= 1 + FORCE_ACCURACY);
    }

    @Property
    void smallSlipSlopesAreTheStiffnesses(
            @ForAll("tyres") Tyre tyre, @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        double lateral = tyre.force(0, SMALL_SLIP, load).lateral() / SMALL_SLIP;
        double longitudinal = tyre.force(SMALL_SLIP, 0, load).longitudinal() / SMALL_SLIP;
        assertEquals(1, lateral / tyre.corneringStiffness(load), 1e-3);
        assertEquals(1, longitudinal / tyre.slipStiffness(load), 1e-3);
    }

    @Property
    void noLoadNoForce(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = -1, max = 1) double longitudinal,
            @ForAll @DoubleRange(min = -1, max = 1) double lateral,
            @ForAll @DoubleRange(min = -500, max = 0) double load) {
        assertEquals(TyreForce.NONE, tyre.force(longitudinal, lateral, load));
        assertEquals(0, tyre.lateralForce(lateral, 100, load));
        assertEquals(0, tyre.rollingForceLimit(lateral, load));
        assertEquals(TyreForce.NONE, tyre.lockedForce(lateral, load));
    }

    @Property
    void anImposedForceLeavesTheLateralForceOfTheSlipThatCarriesIt(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = 0, max = 0.3) double longitudinal,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double lateral,
            @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        double limit = tyre.rollingForceLimit(lateral, load);
        TyreForce force = tyre.force(longitudinal, lateral, load);
        double justBeyond =
                tyre.force(longitudinal * 1.001 + 1e-6, lateral, load).longitudinal();
        boolean rising = justBeyond > force.longitudinal() && force.longitudinal() < 0.99 * limit;
        if (rising) {
            assertEquals(
                    force.lateral(),
                    tyre.lateralForce(lateral, force.longitudinal(), load),
                    1e-5 * tyre.peakForceY(load));
        }
    }

    @Property
    void brakingNeverAddsLateralForce(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = 0, max = 1) double share,
            @ForAll @DoubleRange(min = 0, max = 0.4) double lateral,
            @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        // Beyond its peak a Magic Formula tyre loses force with slip either way, so the law is stated on the rising
        // side.
        double slip = Math.min(lateral, tyre.lateralSlipFor(0.999, load));
        double free = tyre.lateralForce(slip, 0, load);
        double braked = tyre.lateralForce(slip, share * tyre.rollingForceLimit(slip, load), load);
        assertTrue(braked <= free + FORCE_ACCURACY * tyre.peakForceY(load), braked + " > " + free);
    }

    @Property
    void lateralSlipForAFractionGivesThatFraction(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double fraction,
            @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        double slip = tyre.lateralSlipFor(fraction, load);
        assertEquals(fraction, tyre.force(0, slip, load).lateral() / tyre.peakForceY(load), 1e-6);
    }

    @Property
    void aLockedWheelBrakesAgainstItsMotion(
            @ForAll("tyres") Tyre tyre,
            @ForAll @DoubleRange(min = -0.8, max = 0.8) double lateral,
            @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        TyreForce force = tyre.lockedForce(lateral, load);
        assertTrue(force.longitudinal() > 0);
        assertTrue(force.lateral() * lateral >= 0);
    }

    @Property
    void aLockedWheelSlidesAgainstItsSlipVelocity(
            @ForAll @DoubleRange(min = -0.8, max = 0.8) double lateral,
            @ForAll @DoubleRange(min = 100, max = 9000) double load) {
        FrictionTyre tyre = new FrictionTyre(new SlipCurve.Brush(), 1.1, 0.9, 0.1, 3000, 0.4, 15, 20);
        TyreForce force = tyre.lockedForce(lateral, load);
        assertEquals(lateral, force.lateral() / force.longitudinal(), 1e-12);
        assertEquals(
                1,
                Math.hypot(force.longitudinal() / tyre.peakForceX(load), force.lateral() / tyre.peakForceY(load)),
                1e-9);
    }
}
