package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The quick searches of {@link FrictionTyre} against the slow ones that any tyre has: halving on the force of combined
 * slip alone, without a derivative or a table.
 */
class CombinedSlipTest {

    private static final double LOAD = 3500;

    /** The largest share is found by halving a maximum, which knows its place to the root of the accuracy. */
    private static final double AT_THE_LIMIT = 2e-3;

    /** What rounding in the longitudinal force makes of the lateral one at the limit: its root. */
    private static final double AT_THE_EDGE = 1e-7;

    private static final double[] SLIPS = {-0.3, -0.08, -0.02, 0.003, 0.01, 0.04, 0.1, 0.22};

    static Stream<FrictionTyre> tyres() {
        return Stream.of(
                        new SlipCurve.Linear(),
                        new SlipCurve.Brush(),
                        new SlipCurve.MagicFormula(1.2, 0.4),
                        new SlipCurve.MagicFormula(1.5, -0.6),
                        new SlipCurve.MagicFormula(1.9, -3))
                .map(curve -> new FrictionTyre(curve, 1.15, 0.95, 0.08, 3000, 0.3, 17, 23));
    }

    @ParameterizedTest
    @MethodSource("tyres")
    void anImposedForceLeavesTheSame(FrictionTyre tyre) {
        Tyre slow = BareTyre.of(tyre);
        double peak = tyre.peakForceY(LOAD);
        for (double slip : SLIPS) {
            double limit = slow.rollingForceLimit(slip, LOAD);
            for (double share : new double[] {0, 1e-6, 0.1, 0.35, 0.6, 0.8, 0.9, 0.97}) {
                for (double force : new double[] {share * limit, -share * limit}) {
                    assertEquals(
                            slow.lateralForce(slip, force, LOAD),
                            tyre.lateralForce(slip, force, LOAD),
                            1e-6 * peak,
                            () -> tyre.curve() + " at " + slip + ", " + share);
                }
            }
        }
    }

    /** A curve that falls has a most that it can carry; asked for more, it gives what is left there. */
    @ParameterizedTest
    @MethodSource("tyres")
    void moreThanAWheelHasLeavesWhatItsMostLeaves(FrictionTyre tyre) {
        Tyre slow = BareTyre.of(tyre);
        if (tyre.curve() instanceof SlipCurve.MagicFormula) {
            for (double slip : List.of(0.02, 0.06, 0.15)) {
                double limit = slow.rollingForceLimit(slip, LOAD);
                assertEquals(limit, tyre.rollingForceLimit(slip, LOAD), 1e-6 * limit);
                double left = slow.lateralForce(slip, 1.2 * limit, LOAD);
                assertEquals(left, tyre.lateralForce(slip, 1.2 * limit, LOAD), AT_THE_LIMIT * tyre.peakForceY(LOAD));
                assertEquals(
                        tyre.lateralForce(slip, 1.2 * limit, LOAD), tyre.lateralForce(slip, 5 * limit, LOAD), 1e-9);
            }
        }
    }

    /** A curve that never falls can carry all but nothing of its peak; beyond it nothing is left. */
    @ParameterizedTest
    @MethodSource("tyres")
    void theWholePeakLeavesNothingOnACurveThatNeverFalls(FrictionTyre tyre) {
        if (!(tyre.curve() instanceof SlipCurve.MagicFormula)) {
            double peak = tyre.peakForceX(LOAD);
            assertEquals(0, tyre.lateralForce(0.1, peak, LOAD));
            assertEquals(0, tyre.lateralForce(0.1, 2 * peak, LOAD));
            // Sliding wholly, the force lies on the friction circle: the rest of a share of 0.8 is 0.6.
            assertEquals(0.6 * tyre.peakForceY(LOAD), tyre.lateralForce(0.5, 0.8 * peak, LOAD), 1e-9 * peak);
        }
    }

    /** The quick searches against the search that serves any curve. */
    @ParameterizedTest
    @MethodSource("tyres")
    void theQuickSearchFindsTheSame(FrictionTyre tyre) {
        SlipCurve curve = tyre.curve();
        for (double y = 1e-9; y < 30; y = 1.07 * y + 1e-4) {
            double most = curve.largestShare(y);
            for (double part : new double[] {0, 1e-9, 1e-3, 0.1, 0.35, 0.6, 0.8, 0.9, 0.97, 0.99, 0.999}) {
                double along = part * most;
                double length = new CombinedSlip(curve, y).lengthFor(along);
                double expected = curve.value(length) * y / length;
                double at = y;
                assertEquals(expected, curve.lateralShare(y, along), 1e-9, () -> curve + " " + at + " " + part);
            }
        }
    }

    /** Where the curve is a closed form, the forces along and across are a point of it to the last digits but a few. */
    @Test
    void onTheBrushTheQuickSearchIsExact() {
        SlipCurve.Brush brush = new SlipCurve.Brush();
        for (double y = 0.01; y < 2.9; y += 0.17) {
            for (double along = 0.02; along * along < 1 - y * y / 9; along += 0.07) {
                double across = brush.lateralShare(y, along);
                double value = Math.hypot(along, across);
                assertEquals(y / across, brush.inverse(value) / value, 1e-10 * y / across, y + " beside " + along);
            }
        }
    }

    /** The two wheels of an axle have what each has alone. */
    @ParameterizedTest
    @MethodSource("tyres")
    void anAxleIsItsTwoWheels(FrictionTyre friction) {
        ContactPatch left = new ContactPatch();
        ContactPatch right = new ContactPatch();
        ContactPatch alone = new ContactPatch();
        for (Tyre tyre : List.of(friction, new SimilarTyre(friction, 0.7))) {
            for (double leftLoad : new double[] {-10, 0, 400, LOAD, 60_000}) {
                for (double rightLoad : new double[] {0, 1500, 7000, 60_000}) {
                    for (double slip : new double[] {-0.2, 0, 0.06, 5}) {
                        for (double asked : new double[] {0, 300, -2500, 9000}) {
                            tyre.rollAxle(slip, asked, leftLoad, rightLoad, left, right);
                            tyre.roll(slip, asked, leftLoad, alone);
                            same(alone, left);
                            tyre.roll(slip, asked, rightLoad, alone);
                            same(alone, right);
                        }
                    }
                }
            }
        }
    }

    private static void same(ContactPatch expected, ContactPatch found) {
        double accuracy = ShareSurface.ACCURACY * expected.peakY() + 1e-9;
        assertEquals(expected.longitudinal(), found.longitudinal(), accuracy);
        assertEquals(expected.lateral(), found.lateral(), accuracy);
        assertEquals(expected.limit(), found.limit(), accuracy);
        assertEquals(expected.peakX(), found.peakX(), accuracy);
        assertEquals(expected.peakY(), found.peakY(), accuracy);
    }

    /** All at once, a wheel has what it has by each method alone. */
    @ParameterizedTest
    @MethodSource("tyres")
    void allAtOnceIsTheSameAsOneByOne(FrictionTyre friction) {
        ContactPatch patch = new ContactPatch();
        for (Tyre tyre : List.of(
                friction, BareTyre.of(friction), BareTyre.of(friction).withFriction(0.6), friction.withFriction(0.6))) {
            for (double load : new double[] {-10, 0, 500, LOAD, 9000, 50_000}) {
                for (double slip : new double[] {-0.3, -0.02, 0, 0.05, 0.4}) {
                    double most = tyre.rollingForceLimit(slip, load);
                    double accuracy = AT_THE_EDGE * tyre.peakForceY(Math.abs(load)) + 1e-9;
                    for (double asked : new double[] {0, 0.4 * most, -0.9 * most, 2 * most, -3 * most}) {
                        tyre.roll(slip, asked, load, patch);
                        double carried = Math.max(-most, Math.min(most, asked));
                        assertEquals(carried, patch.longitudinal(), accuracy);
                        assertEquals(tyre.lateralForce(slip, carried, load), patch.lateral(), accuracy);
                        assertEquals(most, patch.limit(), accuracy);
                        assertEquals(tyre.peakForceX(load), patch.peakX(), accuracy);
                        assertEquals(tyre.peakForceY(load), patch.peakY(), accuracy);
                    }
                    tyre.slide(slip, load, patch);
                    TyreForce sliding = tyre.lockedForce(slip, load);
                    assertEquals(sliding.longitudinal(), patch.longitudinal(), accuracy);
                    assertEquals(sliding.lateral(), patch.lateral(), accuracy);
                    assertEquals(sliding.longitudinal(), patch.limit(), accuracy);
                    assertEquals(tyre.peakForceX(load), patch.peakX(), accuracy);
                    assertEquals(tyre.peakForceY(load), patch.peakY(), accuracy);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("tyres")
    void withoutLateralSlipThereIsNoLateralForce(FrictionTyre tyre) {
        for (double share : new double[] {0, 0.5, 1, 1.5}) {
            assertEquals(0, tyre.lateralForce(0, share * tyre.peakForceX(LOAD), LOAD));
        }
    }

    @ParameterizedTest
    @MethodSource("tyres")
    void aFractionOfThePeakIsFoundAtTheSameSlip(FrictionTyre tyre) {
        Tyre slow = BareTyre.of(tyre);
        for (double fraction : new double[] {0.05, 0.3, 0.6, 0.9, 0.99}) {
            double slip = tyre.lateralSlipFor(fraction, LOAD);
            assertEquals(slow.lateralSlipFor(fraction, LOAD), slip, 1e-7, () -> tyre.curve() + " " + fraction);
            assertTrue(slip > 0);
        }
    }

    /** The force that is asked for comes back, with or without a body of the model's own. */
    @ParameterizedTest
    @MethodSource("tyres")
    void theSlipBesideABrakeForceBringsTheForceAskedFor(FrictionTyre tyre) {
        for (double share : new double[] {0.3, 0.8, 0.97, 1}) {
            double braked = Math.sqrt(1 - share * share) * tyre.peakForceX(LOAD);
            for (double fraction : new double[] {0.02, 0.3, 0.6, 0.9, 0.985}) {
                double slip = tyre.lateralSlipBeside(share, fraction, LOAD);
                double force = share * fraction * tyre.peakForceY(LOAD);
                assertEquals(
                        force,
                        tyre.lateralForce(slip, braked, LOAD),
                        1e-6 * force,
                        () -> tyre.curve().toString());
                assertEquals(slip, BareTyre.of(tyre).lateralSlipBeside(share, fraction, LOAD), 1e-6 * slip);
            }
            assertEquals(0, tyre.lateralSlipBeside(share, 0, LOAD));
        }
        assertEquals(tyre.lateralSlipFor(1, LOAD), tyre.lateralSlipBeside(1, 1, LOAD), 1e-9);
    }
}
