package org.foreload.tyre;

import java.util.Objects;
import org.foreload.conventions.Bounds;
import org.foreload.conventions.Checks;

/**
 * A tyre with load-sensitive friction and one slip curve for all directions: the two slips are scaled by their
 * stiffness and peak force, the curve is read at the length of that vector, and the force follows its direction.
 *
 * <p>Friction and both stiffnesses per newton of load fall by {@code loadSensitivity} for each relative rise of load
 * over the reference: μ(F) = μ₀ (1 − λ (F/F₀ − 1)), never below zero. So the slip at which the tyre saturates does not
 * depend on load. Source of the combined-slip rule: H. B. Pacejka, Tyre and Vehicle Dynamics, ch. 3.2.3 and 4 (from
 * memory); for equal friction and stiffness it is the isotropic brush model exactly.
 *
 * @param curve the shape of force over slip
 * @param frictionX peak longitudinal force over load at the reference load
 * @param frictionY peak lateral force over load at the reference load
 * @param loadSensitivity relative loss of friction per relative rise of load over the reference, 0 to 1
 * @param referenceLoad wheel load at which the numbers hold, N
 * @param relaxationLength m
 * @param corneringStiffnessPerLoad cornering stiffness over load at the reference load, 1/rad
 * @param slipStiffnessPerLoad longitudinal slip stiffness over load at the reference load, plain number
 */
public record FrictionTyre(
        SlipCurve curve,
        double frictionX,
        double frictionY,
        double loadSensitivity,
        double referenceLoad,
        double relaxationLength,
        double corneringStiffnessPerLoad,
        double slipStiffnessPerLoad)
        implements Tyre {

    /** Checks every number; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public FrictionTyre {
        Objects.requireNonNull(curve, "curve");
        Checks.positive("peak_friction_x", frictionX);
        Checks.positive("peak_friction_y", frictionY);
        Checks.within("load_sensitivity", loadSensitivity, 0, 1);
        Checks.positive("reference_load_n", referenceLoad);
        Checks.notNegative("relaxation_length_m", relaxationLength);
        Checks.positive("cornering_stiffness_per_rad", corneringStiffnessPerLoad);
        Checks.positive("slip_stiffness", slipStiffnessPerLoad);
    }

    /** Makes a tyre step by step, each number by its name and unit. */
    public static FrictionTyreBuilder.Curve builder() {
        return FrictionTyreBuilder.start();
    }

    /** The same tyre with another relaxation length in metres. */
    public FrictionTyre withRelaxationLength(double length) {
        return new FrictionTyre(
                curve,
                frictionX,
                frictionY,
                loadSensitivity,
                referenceLoad,
                length,
                corneringStiffnessPerLoad,
                slipStiffnessPerLoad);
    }

    @Override
    public FrictionTyre withFriction(double factor) {
        return new FrictionTyre(
                curve,
                frictionX * factor,
                frictionY * factor,
                loadSensitivity,
                referenceLoad,
                relaxationLength,
                corneringStiffnessPerLoad,
                slipStiffnessPerLoad);
    }

    /** Factor by which friction and stiffness per load differ from their values at the reference load. */
    private double loadFactor(double load) {
        return Bounds.larger(1 - loadSensitivity * (load / referenceLoad - 1), 0);
    }

    @Override
    public double peakFrictionX(double load) {
        return frictionX * loadFactor(load);
    }

    @Override
    public double peakFrictionY(double load) {
        return frictionY * loadFactor(load);
    }

    @Override
    public double corneringStiffness(double load) {
        return corneringStiffnessPerLoad * loadFactor(load) * Bounds.larger(load, 0);
    }

    @Override
    public double slipStiffness(double load) {
        return slipStiffnessPerLoad * loadFactor(load) * Bounds.larger(load, 0);
    }

    @Override
    public TyreForce force(double longitudinalSlip, double lateralSlip, double load) {
        double x = normalisedX(longitudinalSlip);
        double y = normalisedY(lateralSlip);
        double length = length(x, y);
        if (load <= 0 || length == 0) {
            return TyreForce.NONE;
        }
        double fraction = curve.value(length);
        return new TyreForce(peakForceX(load) * fraction * x / length, peakForceY(load) * fraction * y / length);
    }

    private double normalisedX(double slip) {
        return slip * slipStiffnessPerLoad / frictionX;
    }

    private double normalisedY(double slip) {
        return slip * corneringStiffnessPerLoad / frictionY;
    }

    /**
     * {@inheritDoc}
     *
     * <p>Here the search has one unknown, the normalised longitudinal slip p: with x the length of (p, y), curve(x)·p/x
     * must be the used share of the longitudinal peak; the lateral share is then curve(x)·y/x.
     */
    @Override
    public double lateralForce(double lateralSlip, double longitudinalForce, double load) {
        double y = Math.abs(normalisedY(lateralSlip));
        double peakX = peakForceX(load);
        if (peakX <= 0 || y == 0) {
            return 0;
        }
        double share = curve.lateralShare(y, Math.abs(longitudinalForce) / peakX);
        double force = peakForceY(load) * share;
        return Double.isNaN(lateralSlip) ? lateralSlip : Math.copySign(force, lateralSlip);
    }

    @Override
    public double rollingForceLimit(double lateralSlip, double load) {
        return peakForceX(load) * curve.largestShare(Math.abs(normalisedY(lateralSlip)));
    }

    @Override
    public void roll(double lateralSlip, double asked, double load, ContactPatch patch) {
        double factor = load > 0 ? load * loadFactor(load) : 0;
        double peakX = frictionX * factor;
        double peakY = frictionY * factor;
        patch.peaks(peakX, peakY);
        double y = Math.abs(normalisedY(lateralSlip));
        if (!(peakX > 0) || y == 0) {
            patch.forces(Bounds.clamp(-peakX, asked, peakX), 0, peakX);
            return;
        }
        double most = peakX * curve.largestShare(y);
        double carried = Bounds.clamp(-most, asked, most);
        double share = curve.lateralShare(y, Math.abs(carried) / peakX);
        patch.forces(carried, Math.copySign(peakY * share, lateralSlip), most);
    }

    @Override
    public void rollAxle(
            double lateralSlip,
            double asked,
            double leftLoad,
            double rightLoad,
            ContactPatch left,
            ContactPatch right) {
        double y = Math.abs(normalisedY(lateralSlip));
        double perNewton = loadSensitivity / referenceLoad;
        double leftPressed = leftLoad * (1 + loadSensitivity - perNewton * leftLoad);
        double rightPressed = rightLoad * (1 + loadSensitivity - perNewton * rightLoad);
        if (!(leftLoad > 0 && leftPressed > 0 && rightLoad > 0 && rightPressed > 0 && y > 0)) {
            roll(lateralSlip, asked, leftLoad, left);
            roll(lateralSlip, asked, rightLoad, right);
            return;
        }
        SlipCurve.Shares shares = left.shares;
        double perLoad = Math.abs(asked) / (frictionX * (leftPressed * rightPressed));
        curve.shares(y, perLoad * rightPressed, perLoad * leftPressed, shares);
        rolling(leftPressed, asked, shares.most, Math.copySign(shares.first, lateralSlip), left);
        rolling(rightPressed, asked, shares.most, Math.copySign(shares.second, lateralSlip), right);
    }

    /** A wheel with its load, times the load factor, and with its shares. */
    private void rolling(double pressed, double asked, double mostShare, double lateralShare, ContactPatch patch) {
        double peakX = frictionX * pressed;
        double peakY = frictionY * pressed;
        double most = peakX * mostShare;
        patch.peaks(peakX, peakY);
        patch.forces(Bounds.clamp(-most, asked, most), peakY * lateralShare, most);
    }

    /**
     * {@inheritDoc}
     *
     * <p>The direction is that of the slip velocity itself, not of the scaled slip: a stopped wheel slides as a block
     * does.
     */
    @Override
    public TyreForce lockedForce(double lateralSlip, double load) {
        if (load <= 0) {
            return TyreForce.NONE;
        }
        double perUnit = slidingPerUnit(lateralSlip, peakForceX(load), peakForceY(load));
        return new TyreForce(perUnit, perUnit * lateralSlip);
    }

    @Override
    public void slide(double lateralSlip, double load, ContactPatch patch) {
        double peakX = peakForceX(load);
        double peakY = peakForceY(load);
        patch.peaks(peakX, peakY);
        double perUnit = slidingPerUnit(lateralSlip, peakX, peakY);
        patch.forces(perUnit, perUnit * lateralSlip, perUnit);
    }

    /** Force along a stopped wheel, N; across it, lateral slip times as much. */
    private double slidingPerUnit(double lateralSlip, double peakX, double peakY) {
        if (peakX <= 0) {
            return 0;
        }
        double fraction = curve.value(length(normalisedX(1), normalisedY(lateralSlip)));
        return fraction / length(1 / peakX, lateralSlip / peakY);
    }

    private static double length(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }

    @Override
    public double lateralSlipFor(double fraction, double load) {
        return curve.inverse(fraction) * frictionY / corneringStiffnessPerLoad;
    }

    /** {@inheritDoc} What the whole force lacks to its peak is that share of what the lateral one lacks to its own. */
    @Override
    public double lateralSlipBeside(double share, double fraction, double load) {
        double lack = share * Math.sqrt(1 - fraction * fraction);
        return share * fraction * curve.inverseSecant(lack) * frictionY / corneringStiffnessPerLoad;
    }
}
