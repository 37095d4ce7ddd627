package org.foreload.tyre;

import java.util.function.UnaryOperator;

/** A model that brings nothing but the six methods without a body: those of another tyre, its force changed. */
public class BareTyre implements Tyre {

    private final Tyre tyre;
    private final UnaryOperator<TyreForce> change;

    BareTyre(Tyre tyre, UnaryOperator<TyreForce> change) {
        this.tyre = tyre;
        this.change = change;
    }

    /** The same forces: what has no body in {@link Tyre} is all that is taken over. */
    public static BareTyre of(Tyre tyre) {
        return new BareTyre(tyre, UnaryOperator.identity());
    }

    @Override
    public double peakFrictionX(double load) {
        return tyre.peakFrictionX(load);
    }

    @Override
    public double peakFrictionY(double load) {
        return tyre.peakFrictionY(load);
    }

    @Override
    public double corneringStiffness(double load) {
        return tyre.corneringStiffness(load);
    }

    @Override
    public double slipStiffness(double load) {
        return tyre.slipStiffness(load);
    }

    @Override
    public double relaxationLength() {
        return tyre.relaxationLength();
    }

    @Override
    public TyreForce force(double longitudinalSlip, double lateralSlip, double load) {
        return change.apply(tyre.force(longitudinalSlip, lateralSlip, load));
    }
}
