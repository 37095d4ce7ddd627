package org.foreload.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.bicycle.WheelForces;
import org.foreload.braking.BrakePlan;
import org.foreload.integrate.Step;

/**
 * The drive away along the straight that a corner ends with, which all entries have in common once they have settled:
 * driven once, from a low speed on. On a straight of one slope the equations do not depend on the station. So an entry
 * whose state is the one that this drive has at the same speed goes on as it does, and needs no steps to know when it
 * reaches the end.
 */
final class Departure {

    /**
     * How near the states must be, in units of {@link EntryState#scales}: a millimetre off the line, 0.1 mrad, 0.01
     * m/s² of drive. What is left dies away; it changed the times of 4 010 random entries by 0.16 ms at most.
     */
    private static final double NEAR = 0.001;

    /** The drive begins at this share of the speed that the driver aims for at the beginning of the straight. */
    private static final double SLOWEST = 0.6;

    /** It serves entries that have settled at up to this share of that speed. */
    private static final double FASTEST = 1.4;

    /** Lengths of the straight after which it ends in any case: a car may be too slow ever to get that fast. */
    private static final double MOST_LENGTHS = 8;

    /** Rate of speed, 1/s, below which a car gains so little that its speed does not say where on the drive it is. */
    private static final double LEAST_GAIN = 1e-3;

    /** Rounds in which a place is found: so many halvings of a few metres leave nothing. */
    private static final int ROUNDS = 50;

    private final double from;
    private final double to;
    private final double lookBack;
    private final double[] scales;
    private final List<Step> steps;

    private Departure(EntrySimulator simulator, List<Step> steps) {
        this.from = simulator.corner().path().exitStraight();
        this.to = simulator.corner().path().end();
        this.lookBack = simulator.driver().hands().curvatureWindow();
        this.scales = EntryState.scales(simulator.car().chassis().mass());
        this.steps = List.copyOf(steps);
    }

    /** Drives it. In a corner that does not end with a straight no entry joins it. */
    static Departure drive(EntrySimulator simulator) {
        double end = simulator.corner().path().end();
        double length = end - simulator.corner().path().exitStraight();
        if (!(length > 0)) {
            return new Departure(simulator, List.of());
        }
        BrakePlan over = Approach.brakingAt(simulator.corner().path().start());
        EntryEquations equations = simulator.equations(over, simulator.foot(Optional.empty()));
        double aimed = simulator.exit().speed(end - length);
        double[] state = simulator.settled(equations, end, SLOWEST * aimed);
        equations.foot(EntryEquations.Foot.DRIVING, 0);
        Keeper keeper = new Keeper(simulator, over, equations, FASTEST * aimed);
        EntryMotion motion = simulator.probing(equations, keeper);
        motion.until((station, x) -> !keeper.gaining || station > keeper.fast + length);
        motion.advance(end, end + MOST_LENGTHS * length, state, length);
        return new Departure(simulator, keeper.steps);
    }

    /** Whether an entry that is here, driving, goes on as this drive does. */
    boolean joins(double station, double[] state) {
        double speed = state[EntryState.VX];
        Step step = stepAt(speed);
        if (step == null
                || station - lookBack * speed < from
                || far(state, step.valueAtStart(EntryState.OFFSET), EntryState.OFFSET)) {
            return false;
        }
        double place = place(step, speed);
        if (!(place + to - station <= steps.get(steps.size() - 1).end())) {
            return false;
        }
        for (int i = 0; i < EntryState.SIZE; i++) {
            if (i != EntryState.TIME && far(state, step.value(i, place), i)) {
                return false;
            }
        }
        return true;
    }

    private boolean far(double[] state, double there, int i) {
        return !(Math.abs(state[i] - there) <= NEAR * scales[i]);
    }

    /** Takes an entry that has joined at a station to the end. */
    void leave(double station, double[] state) {
        Step step = stepAt(state[EntryState.VX]);
        double place = place(step, state[EntryState.VX]);
        double before = step.value(EntryState.TIME, place) - state[EntryState.TIME];
        double ahead = place + to - station;
        Step last = steps.stream().filter(one -> ahead <= one.end()).findFirst().orElseThrow();
        for (int i = 0; i < EntryState.SIZE; i++) {
            state[i] = last.value(i, ahead);
        }
        state[EntryState.TIME] -= before;
    }

    /** The step in which the drive has a speed; null where it never has. */
    private Step stepAt(double speed) {
        int low = 0;
        int high = steps.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (steps.get(middle).valueAtStart(EntryState.VX) <= speed) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low > 0 ? steps.get(low - 1) : null;
    }

    /** Where in a step the drive has a speed; the end of the step if it is faster still. */
    private static double place(Step step, double speed) {
        double low = step.start();
        double high = step.end();
        for (int round = 0; round < ROUNDS; round++) {
            double middle = (low + high) / 2;
            if (step.value(EntryState.VX, middle) <= speed) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** A recorder that keeps the steps of a run, as long as it gains speed. */
    private static final class Keeper extends EntryRecorder {

        private final double fastest;
        private final List<Step> steps = new ArrayList<>();
        private boolean gaining = true;
        private double fast = Double.POSITIVE_INFINITY;

        Keeper(EntrySimulator simulator, BrakePlan plan, EntryEquations equations, double fastest) {
            super(simulator, plan, equations, false);
            this.fastest = fastest;
        }

        @Override
        void step(Step step, WheelForces wheels) {
            super.step(step, wheels);
            gaining = gaining && step.rateAtStart(EntryState.VX) > LEAST_GAIN;
            if (gaining) {
                steps.add(step.kept());
                boolean passed = step.value(EntryState.VX, step.end()) >= fastest;
                fast = passed ? Math.min(fast, step.end()) : fast;
            }
        }
    }
}
