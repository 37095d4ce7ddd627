package org.foreload.entry;

import static org.foreload.entry.EntryState.CAR;
import static org.foreload.entry.EntryState.VX;
import static org.foreload.entry.EntryState.VY;

import java.util.Locale;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.SlipLag;
import org.foreload.bicycle.WheelForces;
import org.foreload.integrate.Accuracy;
import org.foreload.integrate.DecayingSystem;
import org.foreload.integrate.Integration;
import org.foreload.integrate.Mark;
import org.foreload.integrate.Step;
import org.foreload.integrate.Stop;

/**
 * Follows the equations of an entry along the line: the lag of the tyres' slip, which they hold in place of the slip
 * itself, decays over the relaxation length and is solved exactly within each step.
 */
final class EntryMotion implements DecayingSystem {

    /** Evaluations after which a piece of an entry is given up: a hundred times what a whole entry takes. */
    private static final long MOST_EVALUATIONS = 200_000;

    /** First step of each piece, m: what most steps in a corner come to. */
    private static final double FIRST_STEP = 0.8;

    /** Longest step of all, m. */
    private static final double LONGEST_STEP = 25;

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
    private final double frontRate;
    private final double rearRate;
    private final int[] decaying = {CAR + BicycleState.FRONT_SLIP, CAR + BicycleState.REAR_SLIP};
    private final WheelForces within = new WheelForces();
    private final WheelForces joint = new WheelForces();
    private final Integration integration;
    private final double[] state;

    private Condition until = Condition.NONE;

    /**
     * @param tolerance relative accuracy asked of each step
     * @param scales size of one unit of each state
     * @param recorder watches
     */
    EntryMotion(EntryEquations equations, SlipLag lag, double tolerance, double[] scales, EntryRecorder recorder) {
        this.equations = equations;
        this.frontRate = lag.frontDecay(1);
        this.rearRate = lag.rearDecay(1);
        double[] tolerances = new double[equations.size()];
        for (int i = 0; i < tolerances.length; i++) {
            tolerances[i] = ESTIMATE * tolerance * scales[i];
        }
        Accuracy accuracy =
                new Accuracy(tolerances, FIRST_STEP, LONGEST_STEP, LONGEST_LOOK, LOCATION_ACCURACY, MOST_EVALUATIONS);
        state = new double[tolerances.length];
        integration = new Integration(this, accuracy, step -> taken(step, recorder), recorder.crossings(joint));
    }

    /** From here on it goes no further than to the first joint between steps at which this holds. */
    void until(Condition reached) {
        until = reached;
    }

    /** Something that may hold at a joint between two steps. */
    @FunctionalInterface
    interface Condition {

        /** Holds nowhere: to go on to the end. */
        Condition NONE = (station, state) -> false;

        boolean holds(double station, double[] state);
    }

    private void taken(Step step, EntryRecorder recorder) {
        recorder.step(step, joint);
        if (until != Condition.NONE) {
            integration.state(state);
            if (until.holds(step.end(), state)) {
                integration.stop();
            }
        }
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
        equations.perMetre(station, y, within, rate);
    }

    @Override
    public void ratesAtJoint(double station, double[] y, double[] rate) {
        equations.perMetre(station, y, joint, rate);
    }

    /**
     * Goes on to a station, or to what comes before it.
     *
     * @param from station, m
     * @param to station, m
     * @param state receives where it ends
     * @param longest longest step, m
     * @return the station reached, m
     * @throws IllegalStateException if the motion cannot be followed with any reasonable amount of work
     */
    double advance(double from, double to, double[] state, double longest) {
        integration.begin(from, state);
        integration.limit(Math.min(longest, LONGEST_STEP));
        return advance(to, state);
    }

    /** The same from where another motion of these equations stood, with steps of any length. */
    double resume(Mark mark, double to, double[] state) {
        integration.resume(mark);
        integration.limit(LONGEST_STEP);
        return advance(to, state);
    }

    /** Whether a crossing ended the last advance, be it at its end. */
    boolean crossed() {
        return integration.crossed() >= 0;
    }

    /** Where it stands: at a beginning, or between two steps. */
    Mark mark() {
        return integration.mark();
    }

    /** The mark of a beginning. */
    Mark begin(double from, double[] state) {
        integration.begin(from, state);
        return integration.mark();
    }

    private double advance(double to, double[] into) {
        Stop stop = integration.advance(to);
        integration.state(into);
        if (stop == Stop.EXHAUSTED || stop == Stop.STUCK) {
            throw new IllegalStateException(String.format(
                    Locale.ROOT,
                    "the entry cannot be followed beyond %.1f m: %s",
                    integration.at(),
                    why(integration.at() + AHEAD, into)));
        }
        return integration.at();
    }

    /** What keeps it from going on: a state that becomes no number, or that the steps get too short. */
    private String why(double station, double[] y) {
        double[] rate = new double[y.length];
        equations.perMetre(station, y, within, rate);
        for (int i = 0; i < rate.length; i++) {
            if (!Double.isFinite(rate[i])) {
                return "its " + EntryState.words(i) + " is not a finite number from there on";
            }
        }
        return "its numbers make a motion too quick or too stiff; look for one that is far from usual, or use a larger"
                + " tolerance";
    }

    /** How far ahead, m, is looked for a number that is none: a hair beyond what was reached. */
    private static final double AHEAD = 1e-6;

    /** Speed of a state, m/s. */
    static double speed(double[] state) {
        return Math.sqrt(state[VX] * state[VX] + state[VY] * state[VY]);
    }
}
