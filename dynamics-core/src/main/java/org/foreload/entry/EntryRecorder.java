package org.foreload.entry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.braking.BrakePlan;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.integrate.Crossing;
import org.foreload.load.Wheel;
import org.foreload.vehicle.Car;

/** Watches one run: events, wheel locks, extremes, rows of the profile, and how it ends. */
final class EntryRecorder {

    /**
     * Time, s, for which a wheel may stand still in one go before an entry driven as planned counts as locked up: a
     * chirp, not a slide. A reacting foot has its delay and what it needs to take the lock back.
     */
    private static final double LOCK_TOLERANCE = 0.1;

    /** Changes between rolling and stopped after which a run is given up as locked up. */
    private static final int MOST_LOCK_CHANGES = 200;

    /** Use of an axle's friction at which it counts as saturated. */
    private static final double SATURATED = 0.98;

    private final EntrySimulator simulator;
    private final BrakePlan plan;
    private final EntryEquations equations;
    private final EntryProfile profile;
    private final Fullness fullness;
    private final List<EntryEvent> events = new ArrayList<>();

    private Outcome ending;
    private Kind endingKind;
    private double farthestOffset;
    private double longestLock;
    private double lockReserve = Double.POSITIVE_INFINITY;
    private final double[] stoppedSince = {Double.NaN, Double.NaN, Double.NaN, Double.NaN};
    private int lockChanges;
    private boolean driven;
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
        this.equations = equations;
        this.fullness = new Fullness(simulator.corner().path(), plan.brakePoint(), simulator.apex());
        this.profile = keep ? new EntryProfile(simulator, equations) : null;
    }

    boolean running() {
        return ending == null;
    }

    /** Called at the start of each piece: the events that lie at stations. */
    void enter(double station, double[] state) {
        double time = state[EntryState.TIME];
        if (same(station, plan.brakePoint())
                && plan.brakePoint() < plan.release().end()) {
            events.add(new EntryEvent(Kind.BRAKE_ON, station, time));
            brakePointSpeed = speed(state);
        }
        if (same(station, 0)) {
            events.add(new EntryEvent(Kind.TURN_IN, station, time));
            turnInSpeed = speed(state);
        }
        if (same(station, plan.release().start())) {
            events.add(new EntryEvent(Kind.RELEASE_START, station, time));
        }
        if (same(station, plan.release().end())) {
            events.add(new EntryEvent(Kind.RELEASE_END, station, time));
        }
        if (same(station, simulator.apex())) {
            events.add(new EntryEvent(Kind.APEX, station, time));
        }
        track(station, state);
        if (profile != null) {
            profile.row(station, state);
        }
    }

    private static boolean same(double a, double b) {
        return Math.abs(a - b) < 1e-5;
    }

    private static double speed(double[] state) {
        return Math.hypot(state[EntryState.VX], state[EntryState.VY]);
    }

    /** What ends a stretch of the run: the edges, a spin, a stop, and a wheel that stops or turns again. */
    Crossing[] crossings(EntryMotion motion) {
        Crossing edges = (station, x) -> Math.min(simulator.leftMargin(station, x), simulator.rightMargin(station, x));
        Crossing spin = (station, x) -> EntrySimulator.spinMargin(x);
        Crossing stopped = (station, x) -> EntrySimulator.speedMargin(x);
        return simulator.car().antiLock()
                ? new Crossing[] {edges, spin, stopped}
                : new Crossing[] {edges, spin, stopped, motion.crossing(this::lockMargin)};
    }

    private double lockMargin(double station, double[] state) {
        if (!equations.locks().any() && !(state[EntryState.BRAKE] > NO_BRAKE)) {
            return 1;
        }
        WheelForces wheels = equations.wheelsAt(station, state);
        double least = Double.POSITIVE_INFINITY;
        for (int wheel = 0; wheel < 4; wheel++) {
            least = Math.min(least, wheels.lockMargin(wheel));
        }
        return least;
    }

    /** Brake force over mass, m/s², that stops no wheel on any road worth braking on. */
    private static final double NO_BRAKE = 1e-3;

    /** Takes in how much more brake each wheel could take; with anti-lock brakes no wheel stops, whatever is asked. */
    private void noteReserve(WheelForces wheels, double brake) {
        Car car = simulator.car();
        if (car.antiLock()) {
            return;
        }
        for (int wheel = 0; wheel < 4; wheel++) {
            double share = Wheel.at(wheel).front() ? car.frontBrakeShare() : 1 - car.frontBrakeShare();
            double force = car.chassis().mass() * brake * share / 2;
            if (force > LEAST_BRAKE_FORCE) {
                lockReserve = Math.min(lockReserve, Math.max(0, wheels.lockMargin(wheel) / force));
            }
        }
    }

    /** Brake force at a wheel, N, below which its reserve is not asked for: even a wheel in the air is hard to feel. */
    private static final double LEAST_BRAKE_FORCE = 50;

    /**
     * Takes in a step of the run.
     *
     * @param at the state at a station of the step; the next call overwrites it
     */
    void step(double from, double to, DoubleFunction<double[]> at) {
        track((from + to) / 2, at.apply((from + to) / 2));
        slowest(from, to, at);
        if (profile != null) {
            double sampling = simulator.settings().sampling();
            for (double s = sampling * (Math.floor(from / sampling) + 1); s < to; s += sampling) {
                profile.row(s, at.apply(s));
            }
        }
        double[] end = at.apply(to);
        track(to, end);
        pickedUp(to, end);
        WheelForces wheels = equations.wheelsAt(to, end);
        fullness.wheels(to, wheels, minimumSpeedAt > from);
        noteReserve(wheels, end[EntryState.BRAKE]);
        if (profile != null) {
            frontUse = saturated(Kind.FRONT_SATURATES, 0, frontUse, from, to, at);
            rearUse = saturated(Kind.REAR_SATURATES, 2, rearUse, from, to, at);
        }
    }

    /** Looks for a lowest speed inside a step: where it falls at the beginning and rises at the end. */
    private void slowest(double from, double to, DoubleFunction<double[]> at) {
        double low = from;
        double high = to;
        double near = NEAR * (to - from);
        if (!(speed(at.apply(from + near)) < speed(at.apply(from)))
                || !(speed(at.apply(to - near)) < speed(at.apply(to)))) {
            return;
        }
        while (high - low > PLACE_ACCURACY) {
            double middle = (low + high) / 2;
            boolean falling =
                    speed(at.apply(middle + PLACE_ACCURACY / 4)) < speed(at.apply(middle - PLACE_ACCURACY / 4));
            low = falling ? middle : low;
            high = falling ? high : middle;
        }
        minimum(low, at.apply(low));
    }

    /** Part of a step over which the slope of speed at its ends is read. */
    private static final double NEAR = 1e-3;

    /** How closely places within a step are found, m. */
    private static final double PLACE_ACCURACY = 1e-3;

    /** Notes where an axle's use rises to saturation within a step, and returns its use at the end. */
    private double saturated(Kind kind, int left, double before, double from, double to, DoubleFunction<double[]> at) {
        double after = Fullness.use(equations.wheelsAt(to, at.apply(to)), left);
        if (before < SATURATED && after >= SATURATED) {
            double low = from;
            double high = to;
            while (high - low > PLACE_ACCURACY) {
                double middle = (low + high) / 2;
                boolean full = Fullness.use(equations.wheelsAt(middle, at.apply(middle)), left) >= SATURATED;
                low = full ? low : middle;
                high = full ? middle : high;
            }
            events.add(new EntryEvent(kind, high, at.apply(high)[EntryState.TIME]));
        }
        return after;
    }

    /** Notes where drive first comes after the brake. */
    private void pickedUp(double station, double[] state) {
        if (!driven && station > plan.drivenFrom() && state[EntryState.DRIVE] > LEAST_DRIVE) {
            driven = true;
            events.add(new EntryEvent(Kind.PICK_UP, station, state[EntryState.TIME]));
        }
    }

    /** Drive force over mass, m/s², from which the throttle counts as picked up: a passenger would feel it. */
    private static final double LEAST_DRIVE = 0.2;

    private void track(double station, double[] state) {
        farthestOffset = Math.max(farthestOffset, Math.abs(state[EntryState.OFFSET]));
        fullness.across(station, state[EntryState.OFFSET]);
        double speed = speed(state);
        if (station <= plan.brakePoint()) {
            topSpeed = Math.max(topSpeed, speed);
        } else {
            minimum(station, state);
        }
    }

    private void minimum(double station, double[] state) {
        double speed = speed(state);
        if (station > plan.brakePoint() && speed < minimumSpeed) {
            minimumSpeed = speed;
            minimumSpeedAt = station;
            minimumSpeedTime = state[EntryState.TIME];
        }
    }

    /** Called when an event stopped the integration: a wheel that changes, or the end of the run. */
    void stoppedAt(double station, double[] state) {
        double tiny = 1e-3;
        if (EntrySimulator.spinMargin(state) <= tiny) {
            end(Outcome.SPUN, Kind.SPIN, station, state);
        } else if (EntrySimulator.speedMargin(state) <= tiny) {
            end(Outcome.STOPPED, Kind.STOPPED, station, state);
        } else if (Math.min(simulator.leftMargin(station, state), simulator.rightMargin(station, state)) <= tiny) {
            end(Outcome.RAN_WIDE, Kind.TRACK_EDGE, station, state);
        } else {
            changeLock(station, state);
        }
    }

    private void end(Outcome outcome, Kind kind, double station, double[] state) {
        ending = outcome;
        endingKind = kind;
        events.add(new EntryEvent(kind, station, state[EntryState.TIME]));
    }

    /**
     * Changes the wheel that is farthest over, and with it every other that must change at the same point: on a
     * straight both wheels of an axle stop at once, and an event that is over already would never be seen again. Who
     * changes is settled before any does, since a rigid body moves load as soon as one has stopped; then whether that
     * makes others change.
     */
    private void changeLock(double station, double[] state) {
        int changed = 0;
        int changing = over(equations.wheelsAt(station, state), changed, true);
        while (changing != 0 && running()) {
            for (int wheel = 0; wheel < 4 && running(); wheel++) {
                if ((changing >> wheel & 1) != 0) {
                    changeLock(wheel, station, state);
                }
            }
            changed |= changing;
            changing = over(equations.wheelsAt(station, state), changed, false);
        }
    }

    /**
     * Force, N, within which two wheels change together: as little as a brake that stops not even a wheel in the air.
     */
    private static final double TOGETHER = 1;

    /**
     * The wheels that must change among those that have not changed here, one bit each.
     *
     * @param farthest whether the one with the lowest margin changes in any case: the event was its own
     */
    private static int over(WheelForces wheels, int changed, boolean farthest) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int wheel = 0; wheel < 4; wheel++) {
            lowest = Math.min(lowest, wheels.lockMargin(wheel));
        }
        double below = farthest ? Math.max(TOGETHER, Math.nextUp(lowest)) : TOGETHER;
        int over = 0;
        for (int wheel = 0; wheel < 4; wheel++) {
            if ((changed >> wheel & 1) == 0 && wheels.lockMargin(wheel) < below) {
                over |= 1 << wheel;
            }
        }
        return over;
    }

    private void changeLock(int changing, double station, double[] state) {
        double time = state[EntryState.TIME];
        WheelLocks before = equations.locks();
        boolean stops = !before.locked(changing);
        equations.locks(stops ? before.with(changing) : before.without(changing), time);
        Kind kind = !stops ? Kind.WHEEL_TURNS : Wheel.at(changing).front() ? Kind.FRONT_LOCKS : Kind.REAR_LOCKS;
        events.add(new EntryEvent(kind, station, time));
        noteStanding(changing, time);
        stoppedSince[changing] = stops ? time : Double.NaN;
        if (++lockChanges > MOST_LOCK_CHANGES) {
            end(Outcome.LOCKED_UP, kind, station, state);
        }
    }

    /** Takes in how long a wheel has stood in one go. */
    private void noteStanding(int wheel, double time) {
        if (!Double.isNaN(stoppedSince[wheel])) {
            longestLock = Math.max(longestLock, time - stoppedSince[wheel]);
        }
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
        for (int wheel = 0; wheel < 4; wheel++) {
            noteStanding(wheel, state[EntryState.TIME]);
        }
        if (!Double.isNaN(minimumSpeedAt)) {
            events.add(new EntryEvent(Kind.MINIMUM_SPEED, minimumSpeedAt, minimumSpeedTime));
        }
        events.sort(Comparator.comparingDouble(EntryEvent::station));
        Outcome onTrack = running() ? Outcome.MADE_IT : ending;
        boolean stayed = running() || endingKind == Kind.STOPPED;
        Outcome outcome = stayed && longestLock > lockAllowed() ? Outcome.LOCKED_UP : onTrack;
        String cause = EntryCause.describe(outcome, endingKind, events, longestLock);
        Margins margins = fullness.margins();
        return new EntryResult(
                plan,
                outcome,
                cause,
                events,
                turnInSpeed,
                topSpeed,
                minimumSpeed,
                minimumSpeedAt,
                time,
                trailShare(),
                farthestOffset,
                lockChanges > 0 ? 0 : lockReserve,
                margins,
                limit(margins),
                Optional.ofNullable(profile).map(EntryProfile::trace),
                equations.evaluations());
    }

    private double trailShare() {
        double shed = brakePointSpeed - minimumSpeed;
        return shed > 0 ? Math.max(0, Math.min(1, (turnInSpeed - minimumSpeed) / shed)) : Double.NaN;
    }

    private EntryResult.Limit limit(Margins margins) {
        if (lockChanges > 0) {
            return EntryResult.Limit.LOCK;
        }
        if (endingKind == Kind.TRACK_EDGE || margins.edge() < EDGE_NEAR) {
            return EntryResult.Limit.TRACK_EDGE;
        }
        return margins.front() <= margins.rear() ? EntryResult.Limit.FRONT_AXLE : EntryResult.Limit.REAR_AXLE;
    }

    /** Distance to the edge, m, below which the edge is what limits. */
    private static final double EDGE_NEAR = 0.3;
}
