package org.foreload.tyre;

import org.foreload.conventions.Checks;

/**
 * Any tyre on a road of other friction, by similarity: the force is k times that of the given tyre at 1/k of its slip.
 * Peaks grow by k, the slopes at zero slip stay. Source: H. B. Pacejka, Tyre and Vehicle Dynamics, ch. 4.2, the
 * similarity method (from memory).
 *
 * @param given the tyre on the road it was described on
 * @param factor k, friction over that of the given tyre, above 0
 */
record SimilarTyre(Tyre given, double factor) implements Tyre {

    SimilarTyre {
        Checks.positive("friction_scale", factor);
    }

    @Override
    public double peakFrictionX(double load) {
        return factor * given.peakFrictionX(load);
    }

    @Override
    public double peakFrictionY(double load) {
        return factor * given.peakFrictionY(load);
    }

    @Override
    public double corneringStiffness(double load) {
        return given.corneringStiffness(load);
    }

    @Override
    public double slipStiffness(double load) {
        return given.slipStiffness(load);
    }

    @Override
    public double relaxationLength() {
        return given.relaxationLength();
    }

    @Override
    public TyreForce force(double longitudinalSlip, double lateralSlip, double load) {
        return scaled(given.force(longitudinalSlip / factor, lateralSlip / factor, load));
    }

    @Override
    public double lateralForce(double lateralSlip, double longitudinalForce, double load) {
        return factor * given.lateralForce(lateralSlip / factor, longitudinalForce / factor, load);
    }

    @Override
    public double rollingForceLimit(double lateralSlip, double load) {
        return factor * given.rollingForceLimit(lateralSlip / factor, load);
    }

    /** {@inheritDoc} A stopped wheel slides in the direction of its slip velocity, whatever the friction. */
    @Override
    public TyreForce lockedForce(double lateralSlip, double load) {
        return scaled(given.lockedForce(lateralSlip, load));
    }

    @Override
    public void roll(double lateralSlip, double asked, double load, ContactPatch patch) {
        given.roll(lateralSlip / factor, asked / factor, load, patch);
        patch.scale(factor);
    }

    @Override
    public void rollAxle(
            double lateralSlip,
            double asked,
            double leftLoad,
            double rightLoad,
            ContactPatch left,
            ContactPatch right) {
        given.rollAxle(lateralSlip / factor, asked / factor, leftLoad, rightLoad, left, right);
        left.scale(factor);
        right.scale(factor);
    }

    @Override
    public void slide(double lateralSlip, double load, ContactPatch patch) {
        given.slide(lateralSlip, load, patch);
        patch.scale(factor);
    }

    @Override
    public double lateralSlipFor(double fraction, double load) {
        return factor * given.lateralSlipFor(fraction, load);
    }

    @Override
    public double lateralSlipBeside(double share, double fraction, double load) {
        return factor * given.lateralSlipBeside(share, fraction, load);
    }

    private TyreForce scaled(TyreForce force) {
        return new TyreForce(factor * force.longitudinal(), factor * force.lateral());
    }
}
