package org.foreload.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import org.foreload.collocation.OptimalControl;
import org.foreload.collocation.Progress;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.ideal.LockLimit;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.vehicle.Car;

/**
 * The quickest that perfect hands and feet could drive a car through a corner: the controls that minimise the time from
 * the start to the end of the line, subject to the transient equations of the car and to the bounds of tyres, actuators
 * and road. See the package page for what is free and what is not.
 */
public final class Limit {

    /** Shares of the friction that the first guess may use; less where the line cannot be driven at the first. */
    private static final double[] GUESS_FRICTION = {0.9, 0.95, 1};

    /** Share of the deceleration at which the first wheel locks that the foot asks for, if nothing else is said. */
    private static final double PEAK_SHARE = 0.907;

    /**
     * Station, m, before which the steering is held when the car keeps to the line: free hands would weave under
     * braking to scrub off speed.
     */
    private static final double HELD_BEFORE = -15;

    /** Curvature, 1/m, below which a line counts as straight: within a centimetre over a hundred metres. */
    private static final double STRAIGHT = 2e-6;

    /** Banking, rad, that a car on a straight need not steer against: in three seconds it drifts by 2 cm. */
    private static final double LEVEL = 5e-4;

    private static final int APPROACH_SAMPLES = 50;

    /** Price of holding the wheel still there: so much that it does not turn. */
    private static final double HELD_PRICE = 1e6;

    /**
     * The same where the whole road is free and the car must still get across it: steering as it takes to change sides
     * costs next to nothing, weaving costs more than it brings.
     */
    private static final double APPROACH_PRICE = 0.2;

    /** Price of turning the wheel at full rate elsewhere, as a share of the time: it costs about a millisecond. */
    private static final double STEERING_PRICE = 5e-3;

    /** Price of asking for brake where the foot shall be off: so much that it is. */
    private static final double OFF_PRICE = 100;

    /**
     * How often the time at the end of the line counts: so often that the road goes on there for one more interval.
     * Were the end the end of all, what is done in the last interval would move nothing but its error: to first order,
     * braking at its end raises the speed at the point before by as much as it counts more, so that the search would
     * brake there for some tenths of a millisecond that are none.
     */
    private static final double END_COUNTS = 1 + 1 / OptimalControl.weights()[OptimalControl.weights().length - 1];

    /** Heading errors, rad, beyond which the car no longer goes along the road. */
    private static final double MOST_HEADING_ERROR = 1.4;

    /** Speed, m/s, below which slip angles lose their meaning. */
    private static final double LOWEST_SPEED = 1;

    /** Distance from a kink, m, at which its near side is read. */
    private static final double BESIDE = 1e-9;

    private Limit() {}

    /**
     * Brake force over mass, m/s², a little below that at which a wheel would lock in a straight line at the approach
     * speed, on the slopes of the approach. With anti-lock brakes, which let none lock, the one at which they hold back
     * the wheels of both axles.
     *
     * @throws InvalidValueException if the car cannot brake there at all
     */
    public static double peakDeceleration(Car car, Corner corner) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(corner, "corner");
        return (car.antiLock() ? 1 : PEAK_SHARE)
                * LockLimit.of(car, corner.path(), corner.approachSpeed())
                        .orElseThrow(() -> new InvalidValueException(
                                "approach_speed_mps", corner.approachSpeed(), "one at which the car can brake at all"));
    }

    /**
     * The limit with practised hands and standard settings; see {@link #solve(Car, Corner, Band, Hands, LimitOptions,
     * Progress)}.
     */
    public static LimitResult solve(Car car, Corner corner, Band band) {
        return solve(
                car, corner, band, Hands.practised(peakDeceleration(car, corner)), LimitOptions.STANDARD, (i, r) -> {});
    }

    /**
     * The limit.
     *
     * @param car with a yaw inertia above zero and tyres of the ready model
     * @param corner line, road and approach speed
     * @param band where the car may go
     * @param hands what hands and feet can do
     * @param options settings of the solution
     * @param watcher follows each step; what it throws ends the search
     * @throws CancellationException if the thread that calls is interrupted before an optimum is found; it still is
     *     then
     * @throws NullPointerException if an argument is null; its name is the message
     * @throws InvalidValueException if the car cannot be described by the equations, or comes too fast for the corner
     */
    public static LimitResult solve(
            Car car, Corner corner, Band band, Hands hands, LimitOptions options, Progress watcher) {
        return solve(
                car,
                corner,
                band,
                hands,
                options,
                new OwnLine(Objects.requireNonNull(corner, "corner").path()),
                watcher);
    }

    /**
     * The limit that is found from another line: an optimum is one among its neighbours, and a wide road has several.
     *
     * @param start where the search begins; the car sets out on the road's own line all the same
     * @throws CancellationException if the thread that calls is interrupted before an optimum is found; it still is
     *     then
     * @throws NullPointerException if an argument is null; its name is the message
     * @throws InvalidValueException also if the line cannot be driven from that approach speed
     */
    public static LimitResult solve(
            Car car, Corner corner, Band band, Hands hands, LimitOptions options, Start start, Progress watcher) {
        Objects.requireNonNull(band, "band");
        Objects.requireNonNull(hands, "hands");
        Objects.requireNonNull(options, "options");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(watcher, "watcher");
        Objects.requireNonNull(car, "car");
        Path path = Objects.requireNonNull(corner, "corner").path();
        IdealProfile profile = guess(car, corner);
        double letGo = band instanceof Band.Within && straight(path) ? HELD_BEFORE : 0;
        double[] ends = MeshMaker.ends(path, profile, options.intervals(), letGo, HELD_BEFORE, hands.brakeUntil());
        double[] lengths = new double[ends.length - 1];
        for (int k = 0; k < lengths.length; k++) {
            lengths[k] = ends[k + 1] - ends[k];
        }
        List<RoadEquations.Place> places = places(car, path, band, hands.brakeUntil(), ends);
        RoadEquations equations = new RoadEquations(car, hands, places);
        double[] scale = equations.scale();
        Corner along = new Corner(corner.name(), corner.approachSpeed(), start.line());
        QuasiSteadyStart guess = new QuasiSteadyStart(car, start.line(), guess(car, along));
        double[] unknowns = new double[places.size() * Unknowns.ALL];
        for (int p = 0; p < places.size(); p++) {
            double station = places.get(p).station();
            double[] x = guess.at(start.lineStation(station));
            x[Unknowns.OFFSET] = start.offset(station);
            x[Unknowns.HEADING_ERROR] += start.direction(station);
            for (int i = 0; i < Unknowns.ALL; i++) {
                unknowns[p * Unknowns.ALL + i] = x[i] / scale[i];
            }
        }
        double[] first = new QuasiSteadyStart(car, path, profile).at(ends[0]);
        for (int i = 0; i < Unknowns.ALL; i++) {
            first[i] /= scale[i];
        }
        OptimalControl.Ending ending = OptimalControl.solve(
                equations,
                lengths,
                first,
                new boolean[Unknowns.STATES],
                unknowns,
                options.tolerance(),
                options.mostSteps(),
                (step, residual) -> {
                    if (Thread.currentThread().isInterrupted()) {
                        throw new CancellationException(
                                "interrupted after " + step + " steps, before an optimum was found");
                    }
                    watcher.accept(step, residual);
                });
        return new ResultMaker(car, path, places, lengths, equations).result(ending);
    }

    /** A line on the road on which a search begins. */
    public interface Start {

        /** The line, with stations of its own. */
        Path line();

        /** Station of the line beside a station of the road, m. */
        double lineStation(double roadStation);

        /** Offset of the line from the road's own, m, to the left. */
        double offset(double roadStation);

        /** Direction of the line less that of the road, rad, positive to the left. */
        double direction(double roadStation);
    }

    private record OwnLine(Path line) implements Start {

        @Override
        public double lineStation(double roadStation) {
            return roadStation;
        }

        @Override
        public double offset(double roadStation) {
            return 0;
        }

        @Override
        public double direction(double roadStation) {
            return 0;
        }
    }

    /** The quasi-steady profile with a little less friction than there is. */
    private static IdealProfile guess(Car car, Corner corner) {
        for (double friction : GUESS_FRICTION) {
            try {
                return IdealEntry.solve(car, corner, IdealOptions.DEFAULT.withFrictionScale(friction));
            } catch (InvalidValueException tooFast) {
                if (friction == 1) {
                    throw tooFast;
                }
            }
        }
        throw new IllegalStateException("no friction was tried");
    }

    private static List<RoadEquations.Place> places(Car car, Path path, Band band, double brakeUntil, double[] ends) {
        double halfCar = Math.max(car.chassis().frontTrack(), car.chassis().rearTrack()) / 2;
        boolean held = straight(path);
        List<RoadEquations.Place> places = new ArrayList<>();
        for (int k = 0; k + 1 < ends.length; k++) {
            for (double node : OptimalControl.nodes()) {
                double s = ends[k] + (ends[k + 1] - ends[k]) * node;
                boolean last = k + 2 == ends.length && node == 1;
                places.add(point(path, band, halfCar, brakeUntil, held, last, Math.min(s, ends[k + 1] - BESIDE)));
            }
        }
        return List.copyOf(places);
    }

    /** Whether the line comes straight and level across: only then can the wheel be held. */
    private static boolean straight(Path path) {
        for (int i = 0; i <= APPROACH_SAMPLES; i++) {
            double s = path.start() + (HELD_BEFORE - path.start()) * i / APPROACH_SAMPLES;
            if (!(Math.abs(path.curvature(s)) < STRAIGHT && Math.abs(path.banking(s)) < LEVEL)) {
                return false;
            }
        }
        return true;
    }

    /** How far the centre of gravity may go to one side, m, on a road of that width. */
    private static double room(double width, Band band, double halfCar) {
        if (band instanceof Band.Within within) {
            Checks.positive("half_width_m", width);
            return Math.min(within.metres(), width);
        }
        if (!(width > halfCar)) {
            throw new InvalidValueException("half_width_m", width, "more than half of the car's width");
        }
        return width - halfCar;
    }

    private static RoadEquations.Place point(
            Path path, Band band, double halfCar, double brakeUntil, boolean held, boolean last, double s) {
        double left = room(path.widthLeft(s), band, halfCar);
        double right = room(path.widthRight(s), band, halfCar);
        double price = s < HELD_BEFORE ? APPROACH_PRICE : STEERING_PRICE;
        if (band instanceof Band.Within && held && s < HELD_BEFORE) {
            price = HELD_PRICE;
        }
        return new RoadEquations.Place(
                s,
                path.curvature(s),
                path.grade(s),
                path.banking(s),
                -right,
                left,
                MOST_HEADING_ERROR,
                LOWEST_SPEED,
                price,
                s > brakeUntil ? OFF_PRICE : 0,
                last ? END_COUNTS : 1);
    }
}
