package org.foreload.strategy;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.DoubleFunction;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.SimulationSettings;
import org.foreload.ideal.Apexes;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.ideal.LockLimit;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;

/**
 * A car, a corner and a driver put together: what to start from. {@link #of(Car, Corner)} makes a study,
 * {@link #latest(Braking)} finds the latest brake point of one release, {@link #bound()} is the fastest entry that the
 * tyres allow, and {@link #simulator()} drives a plan as it is given. Many releases are compared by a
 * {@link ReleaseSweep}.
 *
 * <p>All stations are metres along the line, 0 at turn-in and negative on the approach. Immutable; one study serves
 * many threads.
 */
public final class CornerStudy {

    private final Bound bound;
    private final EntrySimulator simulator;
    private final Allowance allowance;

    private CornerStudy(Bound bound, EntrySimulator simulator, Allowance allowance) {
        this.bound = bound;
        this.simulator = simulator;
        this.allowance = allowance;
    }

    /**
     * A study with a practised driver, standard settings and the standard margin.
     *
     * @throws NullPointerException if the car or the corner is null
     * @throws org.foreload.conventions.InvalidValueException if the car cannot be simulated, or comes faster than any
     *     braking can slow it
     */
    public static CornerStudy of(Car car, Corner corner) {
        return of(car, corner, DriverSettings.practised(), SimulationSettings.STANDARD, Allowance.STANDARD);
    }

    /**
     * A study with a driver, settings and a margin of one's own.
     *
     * @param car what is driven; a car without yaw inertia is simulated with a twentieth of m·a·b, a and b being the
     *     distances of the CG from the axles
     * @param corner where, and how fast the car arrives
     * @param driver lags, limits and reactions of hands and feet
     * @param settings accuracy of the simulator
     * @param allowance margin with which the car must make the corner
     * @throws NullPointerException if an argument is null; its name is the message
     * @throws org.foreload.conventions.InvalidValueException if the car comes faster than any braking can slow it
     */
    public static CornerStudy of(
            Car car, Corner corner, DriverSettings driver, SimulationSettings settings, Allowance allowance) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(driver, "driver");
        Objects.requireNonNull(settings, "settings");
        Objects.requireNonNull(allowance, "allowance");
        Bound bound = new Bound(car, corner);
        SpeedPlan exit = exitPlan(car, corner, driver);
        return new CornerStudy(
                bound, new EntrySimulator(withYawInertia(car), corner, driver, exit, settings), allowance);
    }

    /**
     * A car that can be simulated: one without yaw inertia, a point mass to the quasi-steady models, gets a little, too
     * little to show in an entry. Its bound is that of the car as given.
     */
    private static Car withYawInertia(Car car) {
        Chassis chassis = car.chassis();
        if (chassis.yawInertia() > 0) {
            return car;
        }
        double inertia = POINT_MASS_SHARE * chassis.mass() * chassis.cgToFrontAxle() * chassis.cgToRearAxle();
        return car.with(new Chassis(
                chassis.mass(),
                chassis.wheelbase(),
                chassis.cgToFrontAxle(),
                chassis.cgHeight(),
                inertia,
                chassis.frontTrack(),
                chassis.rearTrack()));
    }

    /** Yaw inertia of a point mass as a share of m·a·b, about a twentieth of a real car's. */
    private static final double POINT_MASS_SHARE = 0.05;

    /**
     * The exit that the driver aims for: the ideal profile of a car with a little less friction, from where its speed
     * last is lowest.
     */
    private static SpeedPlan exitPlan(Car car, Corner corner, DriverSettings driver) {
        IdealProfile careful;
        try {
            careful = IdealEntry.solve(
                    car,
                    slowed(car, corner, driver),
                    IdealOptions.DEFAULT.withFrictionScale(driver.rightFoot().exitFriction()));
        } catch (InvalidValueException ofSlowed) {
            throw new InvalidValueException(ofSlowed.field(), corner.approachSpeed(), ofSlowed.allowed());
        }
        int opening = 0;
        for (int i = 0; i < careful.size(); i++) {
            if (careful.station(i) >= 0 && careful.speed(i) <= careful.minimumSpeed() * OPENING_BAND) {
                opening = i;
            }
        }
        opening = Math.min(opening, careful.size() - 2);
        double[] stations = new double[careful.size() - opening];
        double[] speeds = new double[stations.length];
        for (int i = 0; i < stations.length; i++) {
            stations[i] = careful.station(opening + i);
            speeds[i] = careful.speed(opening + i);
        }
        return new SpeedPlan(stations, speeds);
    }

    /** A profile this close above its minimum still counts as at its minimum: a round arc is driven at one speed. */
    private static final double OPENING_BAND = 1.002;

    /** The corner approached a little slower, so that less friction does not make the approach itself impossible. */
    private static Corner slowed(Car car, Corner corner, DriverSettings driver) {
        return new Corner(
                corner.name(),
                corner.approachSpeed() * Math.sqrt(driver.rightFoot().exitFriction()),
                corner.path());
    }

    /**
     * The same corner, settings and margin with another car and driver.
     *
     * @throws NullPointerException if one of them is null; its name is the message
     * @throws org.foreload.conventions.InvalidValueException if the car comes faster than any braking can slow it
     */
    public CornerStudy with(Car car, DriverSettings driver) {
        return of(car, simulator.corner(), driver, simulator.settings(), allowance);
    }

    /**
     * The same car, corner and driver with another margin.
     *
     * @throws NullPointerException if it is null
     */
    public CornerStudy with(Allowance allowance) {
        return new CornerStudy(bound, simulator, Objects.requireNonNull(allowance, "allowance"));
    }

    /**
     * Time, s, that the margin costs an entry: how much quicker the same release is from its quickest brake point with
     * nothing in hand. Zero where it is no quicker; NaN where no such brake point is found, as of an entry that does
     * not keep its line.
     *
     * @param entry an entry of this study that keeps the margin
     */
    public double marginCost(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        Braking braking = entry.plan().braking();
        BrakePointSearch search =
                with(new Allowance(allowance.drift(), 0, 0, 0, 0)).search();
        Trial bare = search.quickest(braking);
        if (!bare.met()) {
            bare = search.latest(braking, entry.plan().brakePoint());
        }
        if (!bare.met()) {
            return Double.NaN;
        }
        return Math.max(0, entry.time() - simulator.run(bare.entry().plan()).time());
    }

    /**
     * The fastest quasi-steady entry on the line. A simulated entry beats it only by using the width of the track, or
     * on a long straight by a few milliseconds, since its drive force lags behind the power limit, which falls as speed
     * rises.
     */
    public IdealProfile bound() {
        return bound.profile();
    }

    /**
     * Stations of the apexes of the bends that the car slows for, m, in driving order; see {@link Apexes}. Ends of a
     * release are best given as shares of the way there.
     *
     * @throws InvalidValueException if the line has no bend after turn-in
     */
    public List<Double> apexes() {
        Corner corner = simulator.corner();
        List<Double> apexes = Apexes.of(bound(), corner);
        double first = apexes.get(0);
        if (!(first > 0 && corner.path().curvature(first) != 0)) {
            throw new InvalidValueException(
                    "segments", corner.name(), "a corner whose line bends after turn-in: a straight has no apex");
        }
        return apexes;
    }

    /**
     * The apex, m, that is nearest to the brake off of a release.
     *
     * @throws InvalidValueException if the line has no bend after turn-in
     */
    public double apex(Release release) {
        Objects.requireNonNull(release, "release");
        return Collections.min(apexes(), Comparator.comparingDouble(apex -> Math.abs(apex - release.end())));
    }

    /**
     * The apex, m, for which a release makes the quickest entry from its latest brake point; where there is only one,
     * or no release makes the corner, the first: it is the first bend that the car must slow for.
     *
     * @param release makes the braking for an apex at this station, m
     * @throws InvalidValueException if the line has no bend after turn-in
     */
    public double apex(DoubleFunction<Braking> release) {
        Objects.requireNonNull(release, "release");
        List<Double> apexes = apexes();
        double best = apexes.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (double apex : apexes.size() > 1 ? apexes : List.<Double>of()) {
            Trial trial = search().latest(release.apply(apex));
            if (trial.met() && trial.entry().time() < least) {
                best = apex;
                least = trial.entry().time();
            }
        }
        return best;
    }

    /** The simulator. */
    public EntrySimulator simulator() {
        return simulator;
    }

    /** The margin asked for. */
    public Allowance allowance() {
        return allowance;
    }

    /**
     * Deceleration, m/s², that the brakes alone can ask for at the approach speed before a wheel locks, where the
     * approach, with its grade and banking, allows least. With anti-lock brakes no wheel locks: then it is the
     * deceleration from which on a harder foot changes nothing, since the wheels of both axles are held back.
     *
     * @throws IllegalStateException if the car has no grip to brake with in a straight line
     */
    public double lockLimit() {
        return lockLimit(
                simulator.car(), simulator.corner().path(), simulator.corner().approachSpeed());
    }

    /** The same at a speed, m/s. */
    static double lockLimit(Car car, Path path, double speed) {
        return LockLimit.of(car, path, speed)
                .orElseThrow(() -> new IllegalStateException("no brake force at all is possible in a straight line"));
    }

    /** The search for brake points that keep the margin. */
    public BrakePointSearch search() {
        return new BrakePointSearch(bound.profile(), simulator, allowance);
    }

    /**
     * The latest brake point from which the car makes the corner with the margin asked for: the entry from there,
     * driven with full accuracy, and what its plan has {@linkplain InHand in hand}. Where there is none,
     * {@link Finding#found()} is false and the entry is the attempt that came closest. Keeping the margin may come and
     * go with the brake point, so this tries some hundreds of them.
     *
     * @param braking how hard, and how the brake comes off
     * @throws CancellationException if the thread that calls is interrupted before it is found; it still is then
     * @throws IllegalStateException if an entry cannot be followed; see {@link EntrySimulator}
     */
    public Finding latest(Braking braking) {
        Objects.requireNonNull(braking, "braking");
        BrakePointSearch search = new BrakePointSearch(bound.profile(), simulator, allowance, true);
        Trial last = search.lastOfAll(braking);
        Finding finding = search.confirmed(last);
        return finding.found() || !last.met() ? finding : search.confirmed(search.latest(braking));
    }

    /**
     * The quickest entry with the same release where braking earlier than at the latest brake point gains
     * {@value #QUICKER} s or more, driven with full accuracy; empty where it does not.
     *
     * @param latest what was found as the {@link #latest(Braking)}
     */
    public Optional<Finding> quicker(Finding latest) {
        Objects.requireNonNull(latest, "latest");
        if (!latest.found()) {
            return Optional.empty();
        }
        BrakePointSearch search = search();
        Trial quickest = search.quickestOfAll(search.trial(latest.entry().plan()));
        if (!(quickest.entry().time() <= latest.entry().time() - QUICKER)) {
            return Optional.empty();
        }
        return Optional.of(search.confirmed(quickest))
                .filter(Finding::found)
                .filter(one -> one.entry().time() <= latest.entry().time() - QUICKER);
    }

    /** Time, s, by which an earlier brake point must be quicker to be named. */
    private static final double QUICKER = 0.002;

    /**
     * The latest brake point, looked for near a guess. This takes less time than {@link #latest(Braking)}, and finds
     * the same unless keeping the margin comes and goes with the brake point. Where the steps from the guess find none,
     * others go from the estimate. Some dozens of entries, which an interrupt does not end.
     *
     * @param braking how hard, and how the brake comes off
     * @param guess brake point, m, that makes the corner, or nearly so: the nearer, the fewer entries
     * @throws InvalidValueException if the guess is not finite
     */
    public Finding latest(Braking braking, double guess) {
        Objects.requireNonNull(braking, "braking");
        Checks.finite("guess", guess);
        BrakePointSearch search = search();
        Trial near = search.latest(braking, guess);
        return search.confirmed(near.met() ? near : search.latest(braking));
    }

    /**
     * The fastest quasi-steady entry, solved when it is first asked for: who only drives plans never asks. That there
     * is one is known from the start. Many threads may ask.
     */
    private static final class Bound {

        /**
         * Share of the approach speed above which an entry that exists on coarse steps leaves no doubt about fine ones.
         */
        private static final double BEYOND_DOUBT = 1.02;

        /** Coarse steps, m. */
        private static final double COARSE = 4;

        private final Car car;
        private final Corner corner;
        private IdealProfile profile;

        /**
         * A bound.
         *
         * @throws InvalidValueException if the car comes faster than any braking can slow it
         */
        Bound(Car car, Corner corner) {
            this.car = car;
            this.corner = corner;
            if (!beyondDoubt(car, corner)) {
                profile();
            }
        }

        private static boolean beyondDoubt(Car car, Corner corner) {
            try {
                Corner faster = new Corner(corner.name(), BEYOND_DOUBT * corner.approachSpeed(), corner.path());
                IdealEntry.solve(car, faster, IdealOptions.DEFAULT.withStep(COARSE));
                return true;
            } catch (InvalidValueException close) {
                return false;
            }
        }

        /** The entry. */
        synchronized IdealProfile profile() {
            if (profile == null) {
                profile = IdealEntry.solve(car, corner);
            }
            return profile;
        }
    }
}
