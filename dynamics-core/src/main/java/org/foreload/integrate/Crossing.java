package org.foreload.integrate;

/**
 * A value whose fall through zero ends an integration. It is asked for at points that are no part of the solution in
 * the end, in any order and any number, so it depends on its arguments alone and changes nothing.
 */
@FunctionalInterface
public interface Crossing {

    /**
     * The value.
     *
     * @param t where
     * @param y state there; not to be written to, nor kept
     */
    double value(double t, double[] y);

    /**
     * The same value at the joint that {@link DecayingSystem#ratesAtJoint} has just been asked for: one that depends on
     * what was found there need not find it again.
     *
     * @param t where
     * @param y state there; not to be written to, nor kept
     */
    default double valueAtJoint(double t, double[] y) {
        return value(t, y);
    }
}
