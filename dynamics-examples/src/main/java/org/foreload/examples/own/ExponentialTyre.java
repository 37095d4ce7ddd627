package org.foreload.examples.own;

import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreForce;

/**
 * A tyre whose force nears its peak exponentially: F/F_peak = 1 − e^(−s), s the length of the slip, each part of it
 * measured by its stiffness over its peak. Made up as an example; friction does not depend on load.
 *
 * @param friction peak force over load, plain number, in both directions
 * @param corneringStiffnessPerLoad 1/rad
 * @param slipStiffnessPerLoad plain number
 * @param relaxationLength m
 */
public record ExponentialTyre(
        double friction, double corneringStiffnessPerLoad, double slipStiffnessPerLoad, double relaxationLength)
        implements Tyre {

    @Override
    public double peakFrictionX(double load) {
        return friction;
    }

    @Override
    public double peakFrictionY(double load) {
        return friction;
    }

    @Override
    public double corneringStiffness(double load) {
        return corneringStiffnessPerLoad * load;
    }

    @Override
    public double slipStiffness(double load) {
        return slipStiffnessPerLoad * load;
    }

    @Override
    public TyreForce force(double longitudinalSlip, double lateralSlip, double load) {
        double x = longitudinalSlip * slipStiffnessPerLoad / friction;
        double y = lateralSlip * corneringStiffnessPerLoad / friction;
        double length = Math.hypot(x, y);
        if (!(load > 0) || length == 0) {
            return TyreForce.NONE;
        }
        double force = friction * load * -Math.expm1(-length);
        return new TyreForce(force * x / length, force * y / length);
    }
}
