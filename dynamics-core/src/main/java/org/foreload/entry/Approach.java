package org.foreload.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.bicycle.WheelForces;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.integrate.Mark;
import org.foreload.integrate.Step;

/**
 * The flat-out approach to a corner, which all entries into it have in common up to their brake points: the joints
 * between its steps, so that an entry begins at the last one that lies far enough before its brake point. It then takes
 * the steps that it would have taken from the start, to the bit.
 */
final class Approach {

    private final double[] start;
    private final List<Joint> joints;

    private Approach(double[] start, List<Joint> joints) {
        this.start = start;
        this.joints = List.copyOf(joints);
    }

    /**
     * A joint, and what a run has seen up to it.
     *
     * @param mark where the motion stood
     * @param farthestOffset farthest distance from the line, m
     * @param topSpeed m/s
     * @param edge least distance to an edge of the track, m
     */
    record Joint(Mark mark, double farthestOffset, double topSpeed, double edge) {}

    /**
     * Drives it.
     *
     * @param simulator whose approach; its driver's foot is calm
     * @param end where its first piece ends, m
     */
    static Approach drive(EntrySimulator simulator, double end) {
        BrakePlan later = brakingAt(end);
        EntryEquations equations = simulator.equations(later, simulator.foot(Optional.empty()));
        double from = simulator.corner().path().start();
        double[] start = simulator.settled(equations, from, simulator.corner().approachSpeed());
        double[] state = start.clone();
        Keeper keeper = new Keeper(simulator, later, equations);
        EntryMotion motion = simulator.probing(equations, keeper);
        keeper.motion = motion;
        equations.enterPiece(from, end);
        keeper.enter(from, state);
        Mark beginning = motion.begin(from, state);
        keeper.joints.add(keeper.joint(beginning));
        motion.resume(beginning, end, state);
        return new Approach(start, keeper.joints);
    }

    /** A plan whose foot comes down at a station and is off the brake there. */
    static BrakePlan brakingAt(double station) {
        return Braking.of(1, 1, new Release(ReleaseShapes.ABRUPT, station, station))
                .from(station);
    }

    /** The state in which it begins. */
    double[] start() {
        return start.clone();
    }

    /** The last joint from which an entry whose first piece has this end may go on. */
    Joint before(double end) {
        int last = joints.size() - 1;
        while (last > 0 && !joints.get(last).mark().servesEnd(end)) {
            last--;
        }
        return joints.get(last);
    }

    /** A recorder that keeps the joints of a run. */
    private static final class Keeper extends EntryRecorder {

        private final List<Joint> joints = new ArrayList<>();
        private EntryMotion motion;

        Keeper(EntrySimulator simulator, BrakePlan plan, EntryEquations equations) {
            super(simulator, plan, equations, false);
        }

        @Override
        void step(Step step, WheelForces wheels) {
            super.step(step, wheels);
            joints.add(joint(motion.mark()));
        }
    }
}
