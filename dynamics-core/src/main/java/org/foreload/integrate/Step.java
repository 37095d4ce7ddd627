package org.foreload.integrate;

/**
 * One step of an {@link Integration} and the solution within it: a cubic that has the states and rates of both ends,
 * and for a component that decays, the exact answer to a part n that runs linearly, bent to the states of both ends.
 */
public final class Step {

    private final int size;
    private final int[] decaying;
    private final double[] decay;
    private final Phi[] whole;
    private final Phi part = new Phi();

    private double start;
    private double length;
    private double end;
    private final double[] from;
    private final double[] to;
    private final double[] rateFrom;
    private final double[] rateTo;

    /**
     * @param size number of components
     * @param decaying indices of those that decay
     * @param decay their rates in this step, kept up to date by the owner
     * @param whole their functions over the whole step, kept up to date by the owner
     */
    Step(int size, int[] decaying, double[] decay, Phi[] whole) {
        this.size = size;
        this.decaying = decaying;
        this.decay = decay;
        this.whole = whole;
        from = new double[size];
        to = new double[size];
        rateFrom = new double[size];
        rateTo = new double[size];
    }

    void set(
            double begin,
            double finish,
            double span,
            double[] stateFrom,
            double[] slopeFrom,
            double[] stateTo,
            double[] slopeTo) {
        start = begin;
        length = span;
        end = finish;
        System.arraycopy(stateFrom, 0, from, 0, size);
        System.arraycopy(slopeFrom, 0, rateFrom, 0, size);
        System.arraycopy(stateTo, 0, to, 0, size);
        System.arraycopy(slopeTo, 0, rateTo, 0, size);
    }

    /** The same step with numbers of its own, which no later step overwrites. */
    public Step kept() {
        Phi[] phis = new Phi[whole.length];
        for (int k = 0; k < phis.length; k++) {
            phis[k] = new Phi();
            phis[k].set(whole[k]);
        }
        Step copy = new Step(size, decaying, decay.clone(), phis);
        copy.set(start, end, length, from, rateFrom, to, rateTo);
        return copy;
    }

    /** Lets the step end at a point inside; the solution stays what it was. */
    void cut(double t) {
        end = t;
    }

    /** Where it begins. */
    public double start() {
        return start;
    }

    /** Where it ends. */
    public double end() {
        return end;
    }

    /**
     * The solution at a point.
     *
     * @param t from {@link #start()} to {@link #end()}
     * @param state receives the state there
     */
    public void state(double t, double[] state) {
        if (t == start + length) {
            System.arraycopy(to, 0, state, 0, size);
            return;
        }
        double u = (t - start) / length;
        double v = 1 - u;
        for (int i = 0; i < size; i++) {
            state[i] = cubic(i, u, v);
        }
        for (int k = 0; k < decaying.length; k++) {
            if (decay[k] > 0) {
                if (k == 0 || decay[k] != decay[k - 1]) {
                    part.set(-decay[k] * length * u);
                }
                state[decaying[k]] = decayed(k, u);
            }
        }
    }

    /**
     * One component of the solution at a point; many threads may ask.
     *
     * @param i index of a component that does not decay, or whose decay is over
     * @param t from {@link #start()} to {@link #end()}
     */
    public double value(int i, double t) {
        double u = (t - start) / length;
        return cubic(i, u, 1 - u);
    }

    /** Rate of one component where the step begins, that of the solution too, per unit of t. */
    public double rateAtStart(int i) {
        return rateFrom[i];
    }

    /** One component where the step begins. */
    public double valueAtStart(int i) {
        return from[i];
    }

    private double cubic(int i, double u, double v) {
        double rise = to[i] - from[i];
        double a = length * rateFrom[i] - rise;
        double b = rise - length * rateTo[i];
        return from[i] + u * rise + u * v * (a * v + b * u);
    }

    private double decayed(int k, double u) {
        int i = decaying[k];
        double drive = rateFrom[i] + decay[k] * from[i];
        double change = rateTo[i] + decay[k] * to[i] - drive;
        Phi over = whole[k];
        double atEnd = over.zero * from[i] + length * (over.one * drive + over.two * change);
        double here = part.zero * from[i] + u * length * (part.one * drive + u * part.two * change);
        return here + u * (to[i] - atEnd);
    }
}
