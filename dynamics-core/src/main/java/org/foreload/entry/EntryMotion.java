package org.foreload.entry;

import static org.foreload.entry.EntryState.CAR;
import static org.foreload.entry.EntryState.STEER;
import static org.foreload.entry.EntryState.VX;
import static org.foreload.entry.EntryState.VY;

import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.SlipLag;
import org.foreload.integrate.Accuracy;
import org.foreload.integrate.Crossing;
import org.foreload.integrate.DecayingSystem;
import org.foreload.integrate.Integration;
import org.foreload.integrate.Step;
import org.foreload.integrate.Stop;

/**
 * The equations of an entry in the coordinates that integrate well: the lag of the tyres' slip in place of the slip
 * itself, which decays over the relaxation length and is solved exactly within each step. Whoever watches sees states
 * with slips.
 */
final class EntryMotion implements DecayingSystem {

    /** Evaluations after which a piece of an entry is given up: a hundred times what a whole entry takes. */
    private static final long MOST_EVALUATIONS = 200_000;

    /** First step of each piece, m: what most steps in a corner come to. */
    private static final double FIRST_STEP = 0.5;

    /** Longest stretch, m, in which a crossing could go unseen: shorter than any pulse of load that matters. */
    private static final double LONGEST_LOOK = 4;

    /** Crossings are located to a tenth of a millimetre, a few microseconds at speed. */
    private static final double LOCATION_ACCURACY = 1e-4;

    /**
     * By this factor the error that the rule estimates for a step may be larger than the accuracy asked for: the
     * estimate is that of a rule of one order less.
     */
    private static final double ESTIMATE = 30;

    private final EntryEquations equations;
    private final SlipLag lag;
    private final double frontRate;
    private final double rearRate;
    private final double[] tolerances;
    private final double[] slips;
    private final double[] seen;
    private final int[] decaying = {CAR + BicycleState.FRONT_SLIP, CAR + BicycleState.REAR_SLIP};
    private Integration integration;

    /**
     * @param tolerance relative accuracy asked of each step
     * @param scales size of one unit of each state
     */
    EntryMotion(EntryEquations equations, SlipLag lag, double tolerance, double[] scales) {
        this.equations = equations;
        this.lag = lag;
        this.frontRate = lag.frontDecay(1);
        this.rearRate = lag.rearDecay(1);
        int size = equations.size();
        tolerances = new double[size];
        for (int i = 0; i < size; i++) {
            tolerances[i] = ESTIMATE * tolerance * scales[i];
        }
        slips = new double[size];
        seen = new double[size];
    }

    @Override
    public int size() {
        return equations.size();
    }

    @Override
    public int[] decaying() {
        return decaying;
    }

    /** Per metre, the lag decays over the relaxation length whatever the speed. */
    @Override
    public void decay(double station, double[] y, double[] decay) {
        decay[0] = frontRate;
        decay[1] = rearRate;
    }

    @Override
    public void rates(double station, double[] y, double[] rate) {
        System.arraycopy(y, 0, slips, 0, slips.length);
        lag.toSlip(slips, CAR, slips[STEER]);
        equations.perMetre(station, slips, rate);
        lag.rates(slips, CAR, slips[STEER], rate[STEER], rate);
    }

    /**
     * Goes on to a station, or to what comes before it.
     *
     * @param from station, m
     * @param to station, m
     * @param state with slips; receives where it ends
     * @param longest longest step, m
     * @param recorder watches
     * @return the station reached, m
     * @throws IllegalStateException if the motion cannot be followed with any reasonable amount of work
     */
    double advance(double from, double to, double[] state, double longest, EntryRecorder recorder) {
        Accuracy accuracy = new Accuracy(
                tolerances, Math.min(FIRST_STEP, longest), longest, LONGEST_LOOK, LOCATION_ACCURACY, MOST_EVALUATIONS);
        integration = new Integration(this, accuracy, step -> watched(step, recorder), recorder.crossings(this));
        System.arraycopy(state, 0, slips, 0, slips.length);
        lag.toLag(slips, CAR, slips[STEER]);
        integration.begin(from, slips.clone());
        Stop stop = integration.advance(to);
        if (stop == Stop.EXHAUSTED || stop == Stop.STUCK) {
            throw new IllegalStateException(String.format(
                    java.util.Locale.ROOT,
                    "the entry cannot be followed beyond %.1f m: its numbers make a motion too quick or too stiff",
                    integration.at()));
        }
        integration.state(state);
        lag.toSlip(state, CAR, state[STEER]);
        return integration.at();
    }

    private void watched(Step step, EntryRecorder recorder) {
        recorder.step(step.start(), step.end(), station -> {
            step.state(station, seen);
            lag.toSlip(seen, CAR, seen[STEER]);
            return seen;
        });
    }

    /** A crossing of a value that hangs on a state with slips. */
    Crossing crossing(Crossing ofSlips) {
        double[] own = new double[equations.size()];
        return (station, y) -> {
            System.arraycopy(y, 0, own, 0, own.length);
            lag.toSlip(own, CAR, own[STEER]);
            return ofSlips.value(station, own);
        };
    }

    /** Speed of a state, m/s. */
    static double speed(double[] state) {
        return Math.sqrt(state[VX] * state[VX] + state[VY] * state[VY]);
    }
}
