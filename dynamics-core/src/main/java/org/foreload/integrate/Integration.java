package org.foreload.integrate;

import java.util.Arrays;
import java.util.Objects;
import org.foreload.conventions.Bounds;

/**
 * Integrates a {@link DecayingSystem} by an exponential Runge-Kutta rule of fourth order with steps as long as their
 * error allows: Krogstad's ETDRK4, which is the classic rule of Runge and Kutta where nothing decays, and exact where
 * nothing else happens. So a component that decays does not shorten the steps, as it does with any explicit rule.
 * Source: S. Krogstad, Generalized integrating factor methods for stiff PDEs, J. Comput. Phys. 203 (2005) 72-88, eq. 51
 * (from memory; the order is tested).
 *
 * <p>The rates at the end of a step, which the next one needs anyway, in place of those of the fourth stage make a rule
 * of third order; the difference of the two is taken for the error of the step, as in P. Whalen, M. Brio, J. V.
 * Moloney, Exponential time-differencing with embedded Runge-Kutta adaptive step control, J. Comput. Phys. 280 (2015)
 * 579-601 (from memory). The length of a step follows from the error of the one before (E. Hairer, S. P. Nørsett, G.
 * Wanner, Solving Ordinary Differential Equations I, section II.4, from memory).
 *
 * <p>A step takes four evaluations and makes no objects. One instance serves one integration at a time, any number one
 * after the other; the same beginnings lead to the same bits.
 */
public final class Integration {

    /** Part of the step that the error would allow which is taken: steps that fail cost more than short ones. */
    private static final double SAFETY = 0.8;

    /** Bounds of the change from one step to the next. */
    private static final double MOST_GROWTH = 4;

    private static final double MOST_SHRINKING = 0.2;

    /** By this factor a step may be longer than wanted to reach the end: rounding leaves no sliver. */
    private static final double STRETCH = 1 + 1e-9;

    /**
     * Part of the error of a rule of second order that counts too: where rates depend on t alone, the rules of third
     * and fourth order are one, and their difference sees nothing.
     */
    private static final double GUARD = 0.03;

    /** Shortest step as a part of the size of t or of the longest step: below it, rounding decides. */
    private static final double SHORTEST = 1e-13;

    private final DecayingSystem system;
    private final int size;
    private final int[] decaying;
    private final double[] perTolerance;
    private final Accuracy accuracy;
    private final Crossings crossings;
    private final StepObserver observer;
    private final Step taken;

    private double t;
    private double longestStep;
    private double step;
    private double nearestEnd;
    private boolean ratesKnown;
    private boolean asked;
    private long evaluations;
    private long steps;
    private long rejections;
    private final double[] y;
    private final double[] rate;
    private final double[] next;
    private final double[] nextRate;
    private final double[] decay;
    private final Phi[] half;
    private final Phi[] whole;
    private final double[] stage;
    private final double[] second;
    private final double[] third;
    private final double[] fourth;

    /**
     * An integration that has not begun.
     *
     * @param system the equations
     * @param accuracy how finely
     * @param observer sees every step
     * @param crossings what ends it before its end
     * @throws IllegalArgumentException if there are not as many tolerances as components
     */
    public Integration(DecayingSystem system, Accuracy accuracy, StepObserver observer, Crossing... crossings) {
        this.system = Objects.requireNonNull(system, "system");
        this.accuracy = Objects.requireNonNull(accuracy, "accuracy");
        this.observer = Objects.requireNonNull(observer, "observer");
        Objects.requireNonNull(crossings, "crossings");
        this.size = system.size();
        this.decaying = system.decaying().clone();
        this.perTolerance = accuracy.tolerances();
        this.longestStep = accuracy.longestStep();
        if (perTolerance.length != size) {
            throw new IllegalArgumentException(perTolerance.length + " tolerances for " + size + " components");
        }
        for (int i = 0; i < size; i++) {
            perTolerance[i] = 1 / perTolerance[i];
        }
        this.crossings = new Crossings(size, crossings);
        y = new double[size];
        rate = new double[size];
        next = new double[size];
        nextRate = new double[size];
        stage = new double[size];
        second = new double[size];
        third = new double[size];
        fourth = new double[size];
        decay = new double[decaying.length];
        half = phis(decaying.length);
        whole = phis(decaying.length);
        this.taken = new Step(size, decaying, decay, whole);
    }

    private static Phi[] phis(int count) {
        Phi[] phis = new Phi[count];
        Arrays.setAll(phis, i -> new Phi());
        return phis;
    }

    /** Begins at a point, with nothing of what was before. */
    public void begin(double at, double[] state) {
        t = at;
        System.arraycopy(state, 0, y, 0, size);
        step = accuracy.firstStep();
        nearestEnd = Double.NEGATIVE_INFINITY;
        evaluations = 0;
        steps = 0;
        rejections = 0;
        restart();
    }

    /** Begins where another integration of the same system, with the same accuracy and limit, stood. */
    public void resume(Mark mark) {
        begin(mark.t, mark.state);
        step = mark.step;
    }

    /** Where it stands: at its beginning, or between two steps, as in an observer. */
    public Mark mark() {
        return new Mark(t, y, step, nearestEnd);
    }

    /** From here on no step is longer than this, in the unit of t, until another one is set. */
    public void limit(double longest) {
        longestStep = longest;
        step = Bounds.smaller(step, longest);
    }

    /** Says that the rates have changed where the integration stands, as when a switch is thrown. */
    public void restart() {
        ratesKnown = false;
        step = Bounds.smaller(step, accuracy.firstStep());
        crossings.forget();
    }

    /** Asks it, from an observer, to go no further than where it stands. */
    public void stop() {
        asked = true;
    }

    /** Where the integration stands. */
    public double at() {
        return t;
    }

    /** One component of the state where it stands. */
    public double state(int index) {
        return y[index];
    }

    /** The whole state where it stands. */
    public void state(double[] into) {
        System.arraycopy(y, 0, into, 0, size);
    }

    /** Evaluations of the rates since the beginning. */
    public long evaluations() {
        return evaluations;
    }

    /** Steps since the beginning, those that failed left out. */
    public long steps() {
        return steps;
    }

    /** Steps that were too long and were taken anew. */
    public long rejections() {
        return rejections;
    }

    /** Index of the crossing that ended the last advance, in the order they were given in; −1 if none did. */
    public int crossed() {
        return crossings.crossed();
    }

    /** Goes on to {@code end}, or to what comes before it. */
    public Stop advance(double end) {
        double shortest = SHORTEST * Bounds.larger(Math.abs(end), Bounds.larger(Math.abs(t), longestStep));
        if (!ratesKnown) {
            joint(t, y, rate);
            ratesKnown = true;
        }
        crossings.arm(t, y);
        asked = false;
        while (end - t > shortest) {
            if (evaluations >= accuracy.mostEvaluations()) {
                return Stop.EXHAUSTED;
            }
            double remaining = end - t;
            double wanted = Bounds.smaller(step, longestStep);
            boolean last = wanted * STRETCH >= remaining;
            // Two even steps to the end rather than a long and a short one.
            double length = last ? remaining : remaining < 2 * wanted ? remaining / 2 : wanted;
            nearestEnd = length < wanted || last
                    ? Double.POSITIVE_INFINITY
                    : Bounds.larger(nearestEnd, t + 2 * wanted * STRETCH);
            double error = attempt(length);
            if (!(error <= 1)) {
                rejections++;
                step = length * Bounds.larger(MOST_SHRINKING, allowed(error));
                if (!(step > shortest)) {
                    return Stop.STUCK;
                }
                continue;
            }
            steps++;
            accept(last ? end : t + length, length, error);
            if (crossings.crossed() >= 0) {
                return Stop.CROSSED;
            }
            if (asked) {
                return Stop.ASKED;
            }
        }
        return Stop.REACHED;
    }

    private void evaluate(double at, double[] state, double[] into) {
        evaluations++;
        system.rates(at, state, into);
    }

    private void joint(double at, double[] state, double[] into) {
        evaluations++;
        system.ratesAtJoint(at, state, into);
    }

    /** Takes a step into {@code next} and {@code nextRate} and returns its error in tolerances. */
    private double attempt(double length) {
        double middle = t + length / 2;
        double end = t + length;
        system.decay(t, y, decay);
        for (int k = 0; k < decaying.length; k++) {
            if (k > 0 && decay[k] == decay[k - 1]) {
                half[k].set(half[k - 1]);
                whole[k].set(whole[k - 1]);
            } else {
                half[k].set(-decay[k] * length / 2);
                whole[k].set(-decay[k] * length);
            }
        }
        for (int i = 0; i < size; i++) {
            stage[i] = y[i] + length / 2 * rate[i];
        }
        for (int k = 0; k < decaying.length; k++) {
            int i = decaying[k];
            stage[i] = half[k].zero * y[i] + length / 2 * half[k].one * driven(rate, y, k);
        }
        evaluate(middle, stage, second);
        for (int k = 0; k < decaying.length; k++) {
            second[decaying[k]] = driven(second, stage, k);
        }
        for (int i = 0; i < size; i++) {
            stage[i] = y[i] + length / 2 * second[i];
        }
        for (int k = 0; k < decaying.length; k++) {
            int i = decaying[k];
            stage[i] = half[k].zero * y[i]
                    + length * ((half[k].one / 2 - half[k].two) * driven(rate, y, k) + half[k].two * second[i]);
        }
        evaluate(middle, stage, third);
        for (int k = 0; k < decaying.length; k++) {
            third[decaying[k]] = driven(third, stage, k);
        }
        for (int i = 0; i < size; i++) {
            stage[i] = y[i] + length * third[i];
        }
        for (int k = 0; k < decaying.length; k++) {
            int i = decaying[k];
            stage[i] = whole[k].zero * y[i]
                    + length * ((whole[k].one - 2 * whole[k].two) * driven(rate, y, k) + 2 * whole[k].two * third[i]);
        }
        evaluate(end, stage, fourth);
        for (int k = 0; k < decaying.length; k++) {
            fourth[decaying[k]] = driven(fourth, stage, k);
        }
        for (int i = 0; i < size; i++) {
            next[i] = y[i] + length / 6 * (rate[i] + 2 * (second[i] + third[i]) + fourth[i]);
        }
        for (int k = 0; k < decaying.length; k++) {
            int i = decaying[k];
            Phi phi = whole[k];
            next[i] = phi.zero * y[i]
                    + length
                            * ((phi.one - 3 * phi.two + 4 * phi.three) * driven(rate, y, k)
                                    + (2 * phi.two - 4 * phi.three) * (second[i] + third[i])
                                    + (4 * phi.three - phi.two) * fourth[i]);
        }
        joint(end, next, nextRate);
        return error(length);
    }

    /** The part n of a rate, beside the decay, of the k-th component that decays. */
    private double driven(double[] rates, double[] state, int k) {
        int i = decaying[k];
        return rates[i] + decay[k] * state[i];
    }

    private double error(double length) {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            stage[i] = length / 6 * larger(fourth[i] - nextRate[i], rate[i] - second[i] - third[i] + nextRate[i]);
        }
        for (int k = 0; k < decaying.length; k++) {
            int i = decaying[k];
            double ahead = driven(nextRate, next, k);
            double difference = (4 * whole[k].three - whole[k].two) * (fourth[i] - ahead);
            double bend = (whole[k].two - 2 * whole[k].three) * (driven(rate, y, k) - second[i] - third[i] + ahead);
            stage[i] = length * larger(difference, bend);
        }
        for (int i = 0; i < size; i++) {
            double part = stage[i] * perTolerance[i];
            sum += part * part;
        }
        double error = Math.sqrt(sum / size);
        return error < Double.POSITIVE_INFINITY ? error : Double.POSITIVE_INFINITY;
    }

    private static double larger(double difference, double bend) {
        return Bounds.larger(Math.abs(difference), GUARD * Math.abs(bend));
    }

    /** How many times as long a step may be, whose error grows with the fourth power of its length. */
    private static double allowed(double error) {
        return SAFETY / Math.sqrt(Math.sqrt(error));
    }

    private void accept(double end, double length, double error) {
        double factor = allowed(error);
        double proposed = length * Bounds.clamp(MOST_SHRINKING, factor, MOST_GROWTH);
        // A step that was cut for the end's sake says nothing against the one that was wanted.
        boolean cut = length < step && length < longestStep;
        step = Bounds.smaller(cut && factor >= 1 ? Bounds.larger(step, proposed) : proposed, longestStep);
        taken.set(t, end, length, y, rate, next, nextRate);
        double crossing = crossings.search(taken, next, accuracy);
        if (crossings.crossed() >= 0) {
            taken.cut(crossing);
            taken.state(crossing, next);
            joint(crossing, next, nextRate);
            t = crossing;
            nearestEnd = Double.POSITIVE_INFINITY;
        } else {
            t = end;
        }
        System.arraycopy(nextRate, 0, rate, 0, size);
        System.arraycopy(next, 0, y, 0, size);
        observer.taken(taken);
    }
}
