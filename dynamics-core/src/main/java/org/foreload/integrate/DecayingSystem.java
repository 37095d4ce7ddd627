package org.foreload.integrate;

/**
 * A set of ordinary differential equations y' = f(t, y), some of whose components decay quickly by themselves: for such
 * a component y' = −λ·y + n(t, y), with a rate λ that changes little within a step. Whatever t is (a time, a distance),
 * rates are per unit of it.
 *
 * <p>What is asked of it: rates that depend on nothing but t and y, until its owner calls {@link Integration#restart}.
 */
public interface DecayingSystem {

    /** Number of components. */
    int size();

    /**
     * Fills in f(t, y), decay included.
     *
     * @param t where
     * @param y state; not to be written to, nor kept
     * @param rate receives the rates
     */
    void rates(double t, double[] y, double[] rate);

    /**
     * The same at a joint between two steps, where what watches the integration looks too: a system that finds more
     * than rates may keep here what it finds, until the next joint.
     *
     * @param t where
     * @param y state; not to be written to, nor kept
     * @param rate receives the rates
     */
    default void ratesAtJoint(double t, double[] y, double[] rate) {
        rates(t, y, rate);
    }

    /**
     * Indices of the components that decay by themselves; the same at every call. None in a system that is not stiff.
     */
    int[] decaying();

    /**
     * Fills in the rates λ at which they decay, zero or above, as they are at the start of a step. They need not be
     * exact: what they miss is left in n.
     *
     * @param t where
     * @param y state; not to be written to, nor kept
     * @param decay receives one rate for each index of {@link #decaying()}, in that order
     */
    void decay(double t, double[] y, double[] decay);
}
