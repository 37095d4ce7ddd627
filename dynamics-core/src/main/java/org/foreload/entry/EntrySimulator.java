package org.foreload.entry;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.foreload.bicycle.BicycleModel;
import org.foreload.bicycle.BicycleState;
import org.foreload.bicycle.SlipLag;
import org.foreload.bicycle.WheelForces;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.PedalDisturbance;
import org.foreload.driver.BrakeFoot;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.Reaction;
import org.foreload.driver.SpeedPlan;
import org.foreload.driver.Steering;
import org.foreload.driver.Throttle;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/**
 * Drives one car through one corner, with one brake plan after another.
 *
 * <p>Nothing that shows here changes, so one simulator serves many threads.
 *
 * <p>How an entry ends is a value. An entry that has no end is an {@link IllegalStateException}: numbers that are legal
 * one by one can make a motion that no reasonable amount of work follows (a yaw inertia of 1e-6 kg·m², a body that
 * pitches a million times a second, a foot that ripples as quickly), and a path, tyre or release shape of one's own can
 * give numbers that are none. The message says where, and which state is not finite if one is not.
 */
public final class EntrySimulator {

    /** Pieces shorter than this, m, are joined: they come from two names for one point. */
    private static final double SHORTEST_PIECE = 1e-6;

    private final Car car;
    private final Corner corner;
    private final DriverSettings driver;
    private final SimulationSettings settings;
    private final SpeedPlan exit;
    private final double apex;
    private final double[] joints;
    private final double[] scales;
    private final AtomicReference<Approach> approach = new AtomicReference<>();
    private final AtomicReference<Departure> departure = new AtomicReference<>();

    /**
     * @param car what is driven
     * @param corner where
     * @param driver who drives
     * @param exit the speed aimed for after the throttle opens
     * @param settings numerical settings
     * @throws NullPointerException if an argument is null; its name is the message
     * @throws org.foreload.conventions.InvalidValueException if the car has no yaw inertia
     */
    public EntrySimulator(Car car, Corner corner, DriverSettings driver, SpeedPlan exit, SimulationSettings settings) {
        this(
                car,
                corner,
                driver,
                exit,
                settings,
                Objects.requireNonNull(corner, "corner")
                        .apex(corner.path().start(), corner.path().end()));
    }

    private EntrySimulator(
            Car car, Corner corner, DriverSettings driver, SpeedPlan exit, SimulationSettings settings, double apex) {
        this.car = new BicycleModel(Objects.requireNonNull(car, "car")).car();
        this.corner = corner;
        this.driver = Objects.requireNonNull(driver, "driver");
        this.settings = Objects.requireNonNull(settings, "settings");
        this.exit = Objects.requireNonNull(exit, "exit");
        this.apex = apex;
        this.joints = joints(corner.path(), apex);
        this.scales = EntryState.scales(car.chassis().mass());
    }

    /** The same car in the same corner with another driver, who aims for the same exit. */
    public EntrySimulator with(DriverSettings driver) {
        return with(car, driver);
    }

    /**
     * Another car in the same corner with another driver, who aims for the same exit.
     *
     * @throws org.foreload.conventions.InvalidValueException if the car has no yaw inertia
     */
    public EntrySimulator with(Car car, DriverSettings driver) {
        return new EntrySimulator(car, corner, driver, exit, settings, apex);
    }

    /** The car. */
    public Car car() {
        return car;
    }

    /** The corner. */
    public Corner corner() {
        return corner;
    }

    /** The driver. */
    public DriverSettings driver() {
        return driver;
    }

    /** The plan for the exit. */
    public SpeedPlan exit() {
        return exit;
    }

    /** Numerical settings. */
    public SimulationSettings settings() {
        return settings;
    }

    /** Station of the apex, m: the middle of the stretch where the line is tightest; of several bends the first. */
    public double apex() {
        return apex;
    }

    /**
     * Drives and keeps the whole run: profile, margins and limit. A driver whose foot reacts expects the speeds of this
     * plan driven as planned, which costs a run of its own.
     *
     * @throws IllegalStateException if the motion cannot be followed; see the class
     */
    public EntryResult run(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return drive(plan, ownExpectation(plan), true);
    }

    /**
     * The same for a driver who expects these speeds.
     *
     * @param plan what the foot sets out to do
     * @param expected without effect on a foot that brakes as planned
     * @throws IllegalStateException if the motion cannot be followed; see the class
     */
    public EntryResult run(BrakePlan plan, SpeedPlan expected) {
        Objects.requireNonNull(plan, "plan");
        return drive(plan, Optional.of(Objects.requireNonNull(expected, "expected")), true);
    }

    /**
     * A probe is computed with a tolerance this much coarser, for two thirds of the work. Over random plans of ordinary
     * cars its drift is within 2 mm of the full run's and its time mostly within a millisecond; some in a thousand end
     * otherwise. So a search is free to use it, and what it finds is driven again as a run.
     */
    private static final double PROBE_COARSENING = 10;

    /**
     * Drives and keeps only how it ended, with a coarser tolerance: what a search needs, for less work. A driver whose
     * foot reacts expects the speeds of this plan driven as planned, which costs a run of its own.
     *
     * @throws IllegalStateException if the motion cannot be followed; see the class
     */
    public EntryResult probe(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return drive(plan, ownExpectation(plan), false);
    }

    /**
     * The same for a driver who expects these speeds.
     *
     * @param plan what the foot sets out to do
     * @param expected without effect on a foot that brakes as planned
     * @throws IllegalStateException if the motion cannot be followed; see the class
     */
    public EntryResult probe(BrakePlan plan, SpeedPlan expected) {
        Objects.requireNonNull(plan, "plan");
        return drive(plan, Optional.of(Objects.requireNonNull(expected, "expected")), false);
    }

    private Optional<SpeedPlan> ownExpectation(BrakePlan plan) {
        return driver.leftFoot().reaction().reacts() ? Optional.of(expected(plan)) : Optional.empty();
    }

    /**
     * The speeds to which a plan leads as it stands, with a calm foot: what a driver who follows it expects. Where the
     * entry ends before the exit, there they end.
     *
     * @throws IllegalStateException if the motion cannot be followed; see the class
     */
    public SpeedPlan expected(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        EntryResult told = with(driver.with(Reaction.NONE)).run(plan.with(PedalDisturbance.NONE));
        return expected(told.profile().orElseThrow());
    }

    /** The speeds of a run that went as intended: what a driver who drives it again expects. */
    public static SpeedPlan expected(Trace profile) {
        Objects.requireNonNull(profile, "profile");
        double[] stations = profile.column("s_m").values();
        double[] speeds = profile.column("speed_mps").values();
        // A run may end where it begins; then nobody comes to the second station.
        return stations.length > 1
                ? new SpeedPlan(stations, speeds)
                : new SpeedPlan(new double[] {stations[0], stations[0] + 1}, new double[] {speeds[0], speeds[0]});
    }

    private EntryResult drive(BrakePlan plan, Optional<SpeedPlan> expected, boolean keep) {
        BrakeFoot brake = foot(expected);
        EntryEquations equations = equations(plan, brake);
        EntryRecorder recorder = new EntryRecorder(this, plan, equations, keep);
        EntryMotion motion = keep ? motion(equations, settings.tolerance(), recorder) : probing(equations, recorder);
        double[] stations = pieces(plan, brake.expectedUpTo());
        boolean shared = !keep
                && !brake.reacts()
                && plan.disturbance() == PedalDisturbance.NONE
                && footAt((stations[0] + stations[1]) / 2, plan) == EntryEquations.Foot.FLAT_OUT;
        double[] state =
                shared ? approach().start() : settled(equations, corner.path().start(), corner.approachSpeed());
        for (int i = 0; i + 1 < stations.length && recorder.running(); i++) {
            double start = stations[i];
            double end = stations[i + 1];
            equations.enterPiece(start, end);
            EntryEquations.Foot foot = footAt((start + end) / 2, plan);
            equations.foot(foot, state[EntryState.TIME]);
            recorder.enter(start, state);
            double at = start;
            if (shared && i == 0 && recorder.running()) {
                Approach.Joint joint = approach().before(end);
                recorder.takeOver(joint);
                at = motion.resume(joint.mark(), end, state);
                stopped(motion, at, state, recorder);
            }
            boolean leaves = !keep
                    && foot == EntryEquations.Foot.DRIVING
                    && start >= corner.path().exitStraight();
            EntryMotion.Condition joined = leaves
                    ? (station, x) -> !equations.locks().any() && departure().joins(station, x)
                    : EntryMotion.Condition.NONE;
            motion.until(joined);
            while (at < end - SHORTEST_PIECE && recorder.running()) {
                double longest = equations.shortestPeriod() * EntryMotion.speed(state) / STEPS_PER_PERIOD;
                at = motion.advance(at, end, state, longest);
                stopped(motion, at, state, recorder);
                if (at < end && !motion.crossed() && joined.holds(at, state)) {
                    departure().leave(at, state);
                    at = end;
                }
            }
        }
        return recorder.result(state);
    }

    private static void stopped(EntryMotion motion, double at, double[] state, EntryRecorder recorder) {
        if (motion.crossed()) {
            recorder.stoppedAt(at, state);
        }
    }

    /** The approach of a driver with a calm foot: driven by the first probe that asks, and then known. */
    private Approach approach() {
        if (approach.get() == null) {
            double first = Arrays.stream(joints)
                    .filter(joint -> joint - corner.path().start() > SHORTEST_PIECE)
                    .min()
                    .orElseThrow();
            // Two threads that come at once drive the same.
            approach.set(Approach.drive(this, first));
        }
        return approach.get();
    }

    /** The departure: driven by the first probe that comes to the straight after the corner, and then known. */
    private Departure departure() {
        if (departure.get() == null) {
            departure.set(Departure.drive(this));
        }
        return departure.get();
    }

    BrakeFoot foot(Optional<SpeedPlan> expected) {
        return new BrakeFoot(car, driver.leftFoot(), exit.speed(exit.opening()), expected);
    }

    EntryEquations equations(BrakePlan plan, BrakeFoot brake) {
        return new EntryEquations(
                new BicycleModel(car),
                corner.path(),
                new Steering(car, corner.path(), driver.hands()),
                new Throttle(car, exit, driver.rightFoot()),
                brake,
                driver,
                plan);
    }

    EntryMotion probing(EntryEquations equations, EntryRecorder recorder) {
        return motion(equations, PROBE_COARSENING * settings.tolerance(), recorder);
    }

    private EntryMotion motion(EntryEquations equations, double tolerance, EntryRecorder recorder) {
        return new EntryMotion(equations, new SlipLag(car), tolerance, scales, recorder);
    }

    /** Steps in a period of a disturbed pedal: so many that none of its swings is stepped over. */
    private static final double STEPS_PER_PERIOD = 10;

    /** Where the equations switch, in order: between one and the next they are smooth. */
    private double[] pieces(BrakePlan plan, double expectedUpTo) {
        double[] kinks = plan.release().kinks();
        double[] stations = Arrays.copyOf(joints, joints.length + kinks.length + 4);
        int count = joints.length;
        count = add(stations, count, plan.brakePoint());
        count = add(stations, count, plan.drivenFrom());
        count = add(stations, count, exit.opening());
        count = add(stations, count, expectedUpTo);
        for (double kink : kinks) {
            count = add(stations, count, kink);
        }
        Arrays.sort(stations, 0, count);
        int kept = 1;
        for (int i = 1; i < count; i++) {
            if (stations[i] - stations[kept - 1] > SHORTEST_PIECE) {
                stations[kept++] = stations[i];
            }
        }
        return Arrays.copyOf(stations, kept);
    }

    /** Adds a station, if it lies on the line, and returns the number that there are then. */
    private int add(double[] stations, int count, double station) {
        if (!(station > corner.path().start() && station < corner.path().end())) {
            return count;
        }
        stations[count] = station;
        return count + 1;
    }

    /** What every entry into this corner switches at: both ends, turn-in, apex and where the curvature has a kink. */
    private static double[] joints(Path path, double apex) {
        double[] kinks = path.kinks();
        double[] joints = Arrays.copyOf(kinks, kinks.length + 4);
        joints[kinks.length] = path.start();
        joints[kinks.length + 1] = path.end();
        joints[kinks.length + 2] = apex;
        joints[kinks.length + 3] = path.start() < 0 && path.end() > 0 ? 0 : path.start();
        return joints;
    }

    private EntryEquations.Foot footAt(double station, BrakePlan plan) {
        if (station < plan.release().end()) {
            return station < plan.brakePoint() ? EntryEquations.Foot.FLAT_OUT : EntryEquations.Foot.BRAKING;
        }
        if (station < plan.drivenFrom()) {
            return EntryEquations.Foot.COASTING;
        }
        return station < exit.opening() ? EntryEquations.Foot.PICKING_UP : EntryEquations.Foot.DRIVING;
    }

    /** Straight ahead at a station with a speed, throttle open, load settled. */
    double[] settled(EntryEquations equations, double start, double speed) {
        double[] state = new double[equations.size()];
        state[EntryState.VX] = speed;
        equations.enterPiece(start, start);
        WheelForces wheels = new WheelForces();
        Throttle throttle = new Throttle(car, exit, driver.rightFoot());
        for (int i = 0; i < SETTLING_ROUNDS; i++) {
            equations.wheelsAt(start, state, wheels);
            state[EntryState.DRIVE] =
                    throttle.flatOut(speed, wheels) / car.chassis().mass();
            equations.wheelsAt(start, state, wheels);
            double before = state[EntryState.CAR + BicycleState.PITCH_TRANSFER];
            state[EntryState.CAR + BicycleState.PITCH_TRANSFER] = wheels.pitchTarget();
            if (wheels.pitchTarget() == before) {
                break;
            }
        }
        return state;
    }

    /** Rounds in which load and drive force settle on each other at the start; each cuts the error by about h/L. */
    private static final int SETTLING_ROUNDS = 12;

    double leftMargin(double station, double[] state) {
        return corner.path().widthLeft(station) - state[EntryState.OFFSET];
    }

    double rightMargin(double station, double[] state) {
        return corner.path().widthRight(station) + state[EntryState.OFFSET];
    }
}
