package org.foreload.entry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.foreload.bicycle.WheelForces;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.Bounds;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.integrate.Crossing;
import org.foreload.integrate.Mark;
import org.foreload.integrate.Step;

/** Watches one run: events, wheel locks, extremes, rows of the profile, and how it ends. */
class EntryRecorder {

    /**
     * Time, s, for which a wheel may stand still in one go before an entry driven as planned counts as locked up: a
     * chirp, not a slide. A reacting foot has its delay and what it needs to take the lock back.
     */
    private static final double LOCK_TOLERANCE = 0.1;

    /** Use of an axle's friction at which it counts as saturated. */
    private static final double SATURATED = 0.98;

    private final EntrySimulator simulator;
    private final BrakePlan plan;

    /** Where the foot comes down, m: a plan may put it before the line begins. */
    private final double brakeOn;

    private final EntryEquations equations;
    private final EntryProfile profile;
    private final Fullness fullness;
    private final List<EntryEvent> events = new ArrayList<>();
    private final WheelLockWatch locks;
    private final WheelForces looked = new WheelForces();
    private final double[] seen;

    /** Drive force over mass of a closed throttle, m/s². */
    private final double closed;

    private Outcome ending;
    private Kind endingKind;
    private double farthestOffset;
    private boolean slowed;
    private boolean driven;
    private EntryEvent asked;
    private double frontUse;
    private double rearUse;
    private double turnInSpeed = Double.NaN;
    private double brakePointSpeed = Double.NaN;
    private double topSpeed;
    private double minimumSpeed = Double.POSITIVE_INFINITY;
    private double minimumSpeedAt = Double.NaN;
    private double minimumSpeedTime = Double.NaN;

    EntryRecorder(EntrySimulator simulator, BrakePlan plan, EntryEquations equations, boolean keep) {
        this.simulator = simulator;
        this.plan = plan;
        this.brakeOn =
                Bounds.larger(plan.brakePoint(), simulator.corner().path().start());
        this.equations = equations;
        this.fullness = new Fullness(simulator.corner().path(), simulator.car().antiLock());
        this.locks = new WheelLockWatch(simulator.car(), equations, events);
        this.closed = -simulator.car().driveline().closedThrottleDrag()
                / simulator.car().chassis().mass();
        this.seen = new double[equations.size()];
        this.profile = keep ? new EntryProfile(equations) : null;
    }

    boolean running() {
        return ending == null;
    }

    /** Called at the start of each piece: the events that lie at stations, and an edge that begins within the car. */
    void enter(double station, double[] state) {
        double time = state[EntryState.TIME];
        if (braked() && passes(Kind.BRAKE_ON, brakeOn, station, time)) {
            brakePointSpeed = speed(state);
        }
        if (passes(Kind.TURN_IN, 0, station, time)) {
            turnInSpeed = speed(state);
        }
        passes(Kind.RELEASE_START, plan.release().start(), station, time);
        passes(Kind.RELEASE_END, plan.release().end(), station, time);
        passes(Kind.APEX, simulator.apex(), station, time);
        track(station, state);
        if (profile != null) {
            profile.row(station, state);
        }
        // What is below zero where a crossing begins to be watched would not be seen to fall.
        if (!(edgeMargin(station, state) > 0)) {
            end(Outcome.RAN_WIDE, Kind.TRACK_EDGE, station, state);
        }
        tips(0, station, state);
    }

    /** Whether the plan brakes at all: its brake point may lie at the end of its own release. */
    private boolean braked() {
        return brakeOn < plan.release().end();
    }

    private double edgeMargin(double station, double[] state) {
        return Bounds.smaller(simulator.leftMargin(station, state), simulator.rightMargin(station, state));
    }

    /** Notes an event that lies at a station, if this is the one. */
    private boolean passes(Kind kind, double at, double station, double time) {
        boolean there = Math.abs(station - at) < 1e-5;
        if (there) {
            events.add(new EntryEvent(kind, station, time));
        }
        return there;
    }

    private static double speed(double[] state) {
        return EntryMotion.speed(state);
    }

    /**
     * What ends a stretch of the run: the edges, a spin, a stop, a roll-over, and a wheel that stops or turns again.
     *
     * @param joint holds loads and forces at the last joint between steps
     */
    Crossing[] crossings(WheelForces joint) {
        Crossing edges = this::edgeMargin;
        Crossing spin = (station, x) -> EntryState.spinMargin(x);
        Crossing stopped = (station, x) -> EntryState.speedMargin(x);
        Crossing tips = equations.tipping(joint, looked);
        return simulator.car().antiLock()
                ? new Crossing[] {edges, spin, stopped, tips}
                : new Crossing[] {edges, spin, stopped, tips, locks.crossing(joint)};
    }

    /**
     * Takes in a step of the run. The way in begins where the throttle has gone or the brake outweighs it, and lasts to
     * the apex, or to the slowest point where that comes later. What the axles use counts no further than to where the
     * throttle comes: from there on, as on the straight before, the foot holds the car at its limit. In an entry
     * without the brake, or with one that never outweighs the throttle, it counts from the brake point all the way in.
     *
     * @param wheels loads and forces at its end
     */
    void step(Step step, WheelForces wheels) {
        double from = step.start();
        double to = step.end();
        double middle = (from + to) / 2;
        track(middle, step.value(EntryState.OFFSET, middle), speed(step, middle), step.value(EntryState.TIME, middle));
        slowest(step);
        if (profile != null) {
            double sampling = simulator.settings().sampling();
            // A station at which a step begins belongs to it: the one before ends short of it.
            for (double s = sampling * Math.ceil(from / sampling); s < to; s += sampling) {
                step.state(s, seen);
                profile.row(s, seen);
            }
        }
        step.state(to, seen);
        track(to, seen);
        pickedUp(step, seen[EntryState.DRIVE]);
        boolean pushed = braked() && seen[EntryState.DRIVE] - seen[EntryState.BRAKE] > LEAST_DRIVE;
        slowed = slowed || to >= brakeOn && !pushed;
        boolean entering = to <= simulator.apex() || minimumSpeedAt > from;
        if (to >= brakeOn) {
            fullness.wheels(wheels, seen[EntryState.BRAKE], slowed && !(driven && braked()), entering);
        }
        if (slowed && entering) {
            fullness.tipping(wheels, equations.tippingUse(wheels));
        }
        locks.brakes(wheels, seen[EntryState.BRAKE]);
        if (profile != null) {
            frontUse = saturated(Kind.FRONT_SATURATES, 0, frontUse, step, wheels);
            rearUse = saturated(Kind.REAR_SATURATES, 2, rearUse, step, wheels);
        }
    }

    private static double speed(Step step, double station) {
        double vx = step.value(EntryState.VX, station);
        double vy = step.value(EntryState.VY, station);
        return Math.sqrt(vx * vx + vy * vy);
    }

    /** What of a stretch before the brake point is kept. */
    Approach.Joint joint(Mark mark) {
        return new Approach.Joint(mark, farthestOffset, topSpeed, fullness.edge());
    }

    /** Takes over what another run has seen up to a joint of their common approach. */
    void takeOver(Approach.Joint joint) {
        farthestOffset = joint.farthestOffset();
        topSpeed = joint.topSpeed();
        fullness.edge(joint.edge());
    }

    /** Looks for a lowest speed inside a step: where it falls at the beginning and rises at the end. */
    private void slowest(Step step) {
        double low = step.start();
        double high = step.end();
        double near = NEAR * (high - low);
        if (!falls(step) || !(speed(step, high - near) < speed(step, high))) {
            return;
        }
        double lowest =
                lastBefore(step, s -> speed(step, s + PLACE_ACCURACY / 4) >= speed(step, s - PLACE_ACCURACY / 4));
        minimum(lowest, speed(step, lowest), step.value(EntryState.TIME, lowest));
    }

    /** The last place within a step, m, before something begins that lasts to its end. */
    private static double lastBefore(Step step, DoublePredicate begun) {
        double low = step.start();
        double high = step.end();
        while (high - low > PLACE_ACCURACY) {
            double middle = (low + high) / 2;
            boolean there = begun.test(middle);
            low = there ? low : middle;
            high = there ? middle : high;
        }
        return low;
    }

    /** Whether the speed falls where a step begins. */
    private static boolean falls(Step step) {
        return step.valueAtStart(EntryState.VX) * step.rateAtStart(EntryState.VX)
                        + step.valueAtStart(EntryState.VY) * step.rateAtStart(EntryState.VY)
                < 0;
    }

    /** Part of a step over which the slope of speed at its end is read. */
    private static final double NEAR = 1e-3;

    /** How closely places within a step are found, m. */
    private static final double PLACE_ACCURACY = 1e-3;

    /** Notes where an axle's use rises to saturation within a step, and returns its use at the end. */
    private double saturated(Kind kind, int left, double before, Step step, WheelForces wheels) {
        double after = fullness.bound(wheels, left);
        if (before < SATURATED && after >= SATURATED) {
            double full = lastBefore(step, s -> {
                step.state(s, seen);
                equations.wheelsAt(s, seen, looked);
                return fullness.bound(looked, left) >= SATURATED;
            });
            events.add(new EntryEvent(kind, full, step.value(EntryState.TIME, full)));
        }
        return after;
    }

    /**
     * Notes where the foot first asks for drive after the brake, once as much has come as a passenger feels: up to
     * there the throttle was closed, so that a plan with its pick-up there drives the same entry.
     *
     * @param drive drive force over mass at the end of the step, m/s²
     */
    private void pickedUp(Step step, double drive) {
        if (driven || !(step.end() > plan.drivenFrom())) {
            return;
        }
        if (asked == null && drive > closed + ASKED_DRIVE) {
            double opens = lastBefore(step, s -> step.value(EntryState.DRIVE, s) > closed + ASKED_DRIVE);
            asked = new EntryEvent(Kind.PICK_UP, opens, step.value(EntryState.TIME, opens));
        }
        if (drive > LEAST_DRIVE) {
            driven = true;
            events.add(asked);
        }
    }

    /** Drive force over mass, m/s², from which the throttle counts as picked up: a passenger would feel it. */
    private static final double LEAST_DRIVE = 0.2;

    /** Drive force over mass, m/s², beyond a closed throttle's which shows the foot going down: no error of a step. */
    private static final double ASKED_DRIVE = 0.01;

    private void track(double station, double[] state) {
        track(station, state[EntryState.OFFSET], speed(state), state[EntryState.TIME]);
    }

    private void track(double station, double offset, double speed, double time) {
        farthestOffset = Bounds.larger(farthestOffset, Math.abs(offset));
        fullness.across(station, offset);
        if (station <= brakeOn) {
            topSpeed = Bounds.larger(topSpeed, speed);
        } else {
            minimum(station, speed, time);
        }
    }

    private void minimum(double station, double speed, double time) {
        if (station > brakeOn && speed < minimumSpeed) {
            minimumSpeed = speed;
            minimumSpeedAt = station;
            minimumSpeedTime = time;
        }
    }

    /** Called when an event stopped the integration: a wheel that changes, or the end of the run. */
    void stoppedAt(double station, double[] state) {
        double tiny = 1e-3;
        if (EntryState.spinMargin(state) <= tiny) {
            end(Outcome.SPUN, Kind.SPIN, station, state);
        } else if (EntryState.speedMargin(state) <= tiny) {
            end(Outcome.STOPPED, Kind.STOPPED, station, state);
        } else if (edgeMargin(station, state) <= tiny) {
            end(Outcome.RAN_WIDE, Kind.TRACK_EDGE, station, state);
        } else if (!tips(tiny, station, state)) {
            locks.change(station, state).ifPresent(kind -> end(Outcome.LOCKED_UP, kind, station, state));
            // The forces on a rigid body jump as a wheel stops or turns.
            tips(0, station, state);
        }
    }

    /** Ends a run in which the inner wheels could answer to this much more lateral force, m/s², at most. */
    private boolean tips(double most, double station, double[] state) {
        if (running() && equations.untilTipping(station, state, looked) <= most) {
            end(Outcome.ROLLED_OVER, Kind.ROLL_OVER, station, state);
        }
        return !running();
    }

    private void end(Outcome outcome, Kind kind, double station, double[] state) {
        ending = outcome;
        endingKind = kind;
        events.add(new EntryEvent(kind, station, state[EntryState.TIME]));
    }

    /** Longest time, s, for which a wheel may stand in one go. */
    private double lockAllowed() {
        Reaction reaction = simulator.driver().leftFoot().reaction();
        return reaction.reacts() ? reaction.delay() + reaction.takeBack() : LOCK_TOLERANCE;
    }

    EntryResult result(double[] state) {
        double exit = simulator.corner().path().end();
        double time = Double.NaN;
        if (running()) {
            time = state[EntryState.TIME];
            track(exit, state);
            events.add(new EntryEvent(Kind.EXIT, exit, time));
            if (profile != null) {
                profile.row(exit, state);
            }
        }
        double longestLock = locks.longest(state[EntryState.TIME]);
        if (!Double.isNaN(minimumSpeedAt)) {
            events.add(new EntryEvent(Kind.MINIMUM_SPEED, minimumSpeedAt, minimumSpeedTime));
        }
        events.sort(Comparator.comparingDouble(EntryEvent::station));
        Outcome onTrack = running() ? Outcome.MADE_IT : ending;
        boolean stayed = running() || endingKind == Kind.STOPPED;
        Outcome outcome = stayed && longestLock > lockAllowed() ? Outcome.LOCKED_UP : onTrack;
        EntryResult.Margins margins = fullness.margins();
        return new EntryResult(
                plan,
                outcome,
                longestLock,
                events,
                turnInSpeed,
                topSpeed,
                Double.isNaN(minimumSpeedAt) ? Double.NaN : minimumSpeed,
                minimumSpeedAt,
                time,
                trailShare(),
                farthestOffset,
                locks.reserve(),
                margins,
                limit(margins),
                Optional.ofNullable(profile).map(EntryProfile::trace),
                equations.evaluations());
    }

    private double trailShare() {
        double shed = brakePointSpeed - minimumSpeed;
        if (!(shed > 0) || Double.isNaN(turnInSpeed)) {
            return Double.NaN;
        }
        if (minimumSpeedAt <= 0) {
            return 0;
        }
        return brakeOn >= 0 ? 1 : Bounds.clamp(0, (turnInSpeed - minimumSpeed) / shed, 1);
    }

    private EntryResult.Limit limit(EntryResult.Margins margins) {
        if (endingKind == Kind.ROLL_OVER) {
            return EntryResult.Limit.ROLL_OVER;
        }
        if (locks.any()) {
            return EntryResult.Limit.LOCK;
        }
        if (endingKind == Kind.TRACK_EDGE || margins.edge() < EDGE_NEAR) {
            return EntryResult.Limit.TRACK_EDGE;
        }
        return margins.fullest(0, 0);
    }

    /** Distance to the edge, m, below which the edge is what limits. */
    private static final double EDGE_NEAR = 0.3;
}
