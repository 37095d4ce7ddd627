package org.foreload.validation.subject;

/** The classic Runge-Kutta method of fourth order with a fixed step: slow, plain, and nobody's integrator but ours. */
public final class Rk4 {

    /** Rates of a state at a time. */
    @FunctionalInterface
    public interface Rates {
        /** Fills {@code rate} with the rates per second of {@code state} at {@code time}. */
        void fill(double time, double[] state, double[] rate);
    }

    private final Rates rates;
    private final double[][] slopes;
    private final double[] trial;

    /** An integrator for states of a length. */
    public Rk4(int length, Rates rates) {
        this.rates = rates;
        this.slopes = new double[4][length];
        this.trial = new double[length];
    }

    /** Moves a state in place over a step of time, s. */
    public void step(double time, double step, double[] state) {
        rates.fill(time, state, slopes[0]);
        middle(time + step / 2, step / 2, state, 0, 1);
        middle(time + step / 2, step / 2, state, 1, 2);
        middle(time + step, step, state, 2, 3);
        for (int i = 0; i < state.length; i++) {
            state[i] += step / 6 * (slopes[0][i] + 2 * slopes[1][i] + 2 * slopes[2][i] + slopes[3][i]);
        }
    }

    private void middle(double time, double step, double[] state, int from, int to) {
        for (int i = 0; i < state.length; i++) {
            trial[i] = state[i] + step * slopes[from][i];
        }
        rates.fill(time, trial, slopes[to]);
    }
}
