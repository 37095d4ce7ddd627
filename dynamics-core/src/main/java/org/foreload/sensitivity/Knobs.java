package org.foreload.sensitivity;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.Hands;
import org.foreload.driver.LeftFoot;
import org.foreload.driver.RightFoot;
import org.foreload.parameter.Parameter;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.TiltedPath;
import org.foreload.sensitivity.Knob.Kind;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve.MagicFormula;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/** The knobs of a setup, named as in the files. */
public final class Knobs {

    private static final String KILOGRAMS = "kg";
    private static final String METRES = "m";
    private static final String SQUARE_METRES = "m²";
    private static final String SECONDS = "s";
    private static final String PER_SECOND = "1/s";
    private static final String RADIANS_PER_SECOND = "rad/s";
    private static final String HERTZ = "Hz";
    private static final String PLAIN = "";

    private Knobs() {}

    /** The knobs that a setup has: a number that does nothing because the car lacks the thing has none. */
    public static List<Knob> of(Setup setup) {
        Objects.requireNonNull(setup, "setup");
        List<Knob> knobs = new ArrayList<>();
        knobs.addAll(chassis());
        knobs.addAll(driveline(setup.car().driveline()));
        knobs.addAll(suspension(setup.car().suspension()));
        knobs.addAll(aerodynamics(setup.car().aerodynamics()));
        knobs.add(friction());
        knobs.addAll(
                tyre("front_tyre.", setup.car().frontTyre(), Car::frontTyre, (c, t) -> c.withTyres(t, c.rearTyre())));
        knobs.addAll(
                tyre("rear_tyre.", setup.car().rearTyre(), Car::rearTyre, (c, t) -> c.withTyres(c.frontTyre(), t)));
        knobs.addAll(corner());
        knobs.addAll(driver(setup.driver()));
        knobs.addAll(plan());
        return knobs;
    }

    /** The knob of that name. */
    public static Optional<Knob> named(List<Knob> knobs, String name) {
        Objects.requireNonNull(knobs, "knobs");
        Objects.requireNonNull(name, "name");
        return knobs.stream()
                .filter(knob -> knob.parameter().name().equals(name))
                .findFirst();
    }

    private static List<Knob> chassis() {
        Part<Chassis> numbers = new Part<>(Chassis.class, Car::chassis, Car::with);
        return List.of(
                numbers.knob("mass", "mass_kg", KILOGRAMS, 10),
                numbers.knob("wheelbase", "wheelbase_m", METRES, 0.02),
                numbers.knob("cgToFrontAxle", "cg_to_front_axle_m", METRES, 0.01),
                numbers.knob("cgHeight", "cg_height_m", METRES, 0.01),
                numbers.knob("yawInertia", "yaw_inertia_kg_m2", "kg·m²", 50),
                numbers.knob("frontTrack", "front_track_m", METRES, 0.02),
                numbers.knob("rearTrack", "rear_track_m", METRES, 0.02),
                new Part<>(Car.class, car -> car, (car, other) -> other)
                        .knob("frontBrakeShare", "front_brake_share", PLAIN, 0.01));
    }

    private static List<Knob> driveline(Driveline driveline) {
        Part<Driveline> numbers = new Part<>(Driveline.class, Car::driveline, Car::with);
        List<Knob> knobs = new ArrayList<>(List.of(numbers.knob("power", "power_w", "W", 5000)));
        if (driveline.closedThrottleDrag() > 0) {
            knobs.add(numbers.knob("closedThrottleDrag", "closed_throttle_drag_n", "N", 20));
        }
        return knobs;
    }

    private static List<Knob> suspension(Suspension suspension) {
        Part<Suspension> numbers = new Part<>(Suspension.class, Car::suspension, Car::with);
        List<Knob> knobs = new ArrayList<>(List.of(
                numbers.knob("frontRollStiffnessShare", "front_roll_stiffness_share", PLAIN, 0.01),
                numbers.knob("frontRollCenterHeight", "front_roll_center_height_m", METRES, 0.01),
                numbers.knob("rearRollCenterHeight", "rear_roll_center_height_m", METRES, 0.01)));
        if (!suspension.pitch().rigid()) {
            knobs.addAll(response("pitch", Suspension::pitch, Suspension::withPitch));
        }
        if (!suspension.roll().rigid()) {
            knobs.addAll(response("roll", Suspension::roll, Suspension::withRoll));
        }
        return knobs;
    }

    private static List<Knob> response(
            String motion,
            Function<Suspension, Suspension.Response> part,
            BiFunction<Suspension, Suspension.Response, Suspension> with) {
        Part<Suspension.Response> numbers = new Part<>(
                Suspension.Response.class,
                car -> part.apply(car.suspension()),
                (car, response) -> car.with(with.apply(car.suspension(), response)));
        return List.of(
                numbers.knob("frequency", motion + "_frequency_hz", HERTZ, 0.1),
                numbers.knob("dampingRatio", motion + "_damping_ratio", PLAIN, 0.05));
    }

    private static List<Knob> aerodynamics(Aerodynamics air) {
        if (air.airDensity() == 0) {
            return List.of();
        }
        Part<Aerodynamics> numbers = new Part<>(Aerodynamics.class, Car::aerodynamics, Car::with);
        List<Knob> knobs = new ArrayList<>(List.of(
                numbers.knob("frontDownforceArea", "front_downforce_area_m2", SQUARE_METRES, 0.05),
                numbers.knob("rearDownforceArea", "rear_downforce_area_m2", SQUARE_METRES, 0.05),
                numbers.knob("airDensity", "air_density_kg_m3", "kg/m³", 0.02)));
        if (air.dragArea() > 0) {
            knobs.add(numbers.knob("dragArea", "drag_area_m2", SQUARE_METRES, 0.02));
            knobs.add(numbers.knob("dragHeight", "drag_height_m", METRES, 0.05));
        }
        return knobs;
    }

    /** One for grip everywhere: a factor, so once applied it is one again. */
    private static Knob friction() {
        return world(
                new Parameter<Car>(
                        "friction_scale",
                        PLAIN,
                        c -> 1,
                        (c, v) -> c.withTyres(
                                c.frontTyre().withFriction(v), c.rearTyre().withFriction(v))),
                0.01);
    }

    private static List<Knob> tyre(String where, Tyre tyre, Function<Car, Tyre> read, BiFunction<Car, Tyre, Car> with) {
        if (!(tyre instanceof FrictionTyre friction)) {
            return List.of();
        }
        Part<FrictionTyre> numbers = new Part<>(FrictionTyre.class, car -> (FrictionTyre) read.apply(car), with::apply);
        List<Knob> knobs = new ArrayList<>(List.of(
                numbers.knob("frictionX", where + "peak_friction_x", PLAIN, 0.01),
                numbers.knob("frictionY", where + "peak_friction_y", PLAIN, 0.01),
                numbers.knob("corneringStiffnessPerLoad", where + "cornering_stiffness_per_rad", "1/rad", 1),
                numbers.knob("slipStiffnessPerLoad", where + "slip_stiffness", PLAIN, 1)));
        if (friction.loadSensitivity() > 0) {
            knobs.add(numbers.knob("loadSensitivity", where + "load_sensitivity", PLAIN, 0.01));
            knobs.add(numbers.knob("referenceLoad", where + "reference_load_n", "N", 100));
        }
        if (friction.relaxationLength() > 0) {
            knobs.add(numbers.knob("relaxationLength", where + "relaxation_length_m", METRES, 0.05));
        }
        if (friction.curve() instanceof MagicFormula) {
            knobs.add(numbers.knob(
                    new Parameter<>(
                            where + "shape_factor",
                            PLAIN,
                            t -> curve(t).shapeFactor(),
                            (t, v) -> withCurve(t, new MagicFormula(v, curve(t).curvatureFactor()))),
                    0.02));
            knobs.add(numbers.knob(
                    new Parameter<>(
                            where + "curvature_factor",
                            PLAIN,
                            t -> curve(t).curvatureFactor(),
                            (t, v) -> withCurve(t, new MagicFormula(curve(t).shapeFactor(), v))),
                    0.1));
        }
        return knobs;
    }

    private static MagicFormula curve(FrictionTyre tyre) {
        return (MagicFormula) tyre.curve();
    }

    private static FrictionTyre withCurve(FrictionTyre t, MagicFormula curve) {
        return new FrictionTyre(
                curve,
                t.frictionX(),
                t.frictionY(),
                t.loadSensitivity(),
                t.referenceLoad(),
                t.relaxationLength(),
                t.corneringStiffnessPerLoad(),
                t.slipStiffnessPerLoad());
    }

    private static List<Knob> corner() {
        return List.of(
                knob(Parameter.component(Corner.class, "approachSpeed", "approach_speed_mps", "m/s"), 1),
                knob(
                        new Parameter<>(
                                "grade_percent",
                                "%",
                                c -> 100 * Math.tan(tilt(c.path()).addedGrade()),
                                (c, percent) -> tilted(
                                        c,
                                        Math.atan(percent / 100),
                                        tilt(c.path()).addedBanking())),
                        1),
                knob(
                        new Parameter<>(
                                "banking_deg",
                                "°",
                                c -> Math.toDegrees(tilt(c.path()).addedBanking()),
                                (c, degrees) -> tilted(c, tilt(c.path()).addedGrade(), Math.toRadians(degrees))),
                        1));
    }

    private static Knob knob(Parameter<Corner> number, double change) {
        return new Knob(number.within(Setup::corner, Setup::with), change, Kind.WORLD);
    }

    private static TiltedPath tilt(Path path) {
        return path instanceof TiltedPath tilted ? tilted : new TiltedPath(path, 0, 0);
    }

    private static Corner tilted(Corner corner, double grade, double banking) {
        Path level = tilt(corner.path()).original();
        Path path = grade == 0 && banking == 0 ? level : new TiltedPath(level, grade, banking);
        return new Corner(corner.name(), corner.approachSpeed(), path);
    }

    private static List<Knob> driver(DriverSettings driver) {
        List<Knob> knobs = new ArrayList<>(List.of(
                hands("lag", "steering_lag_s", SECONDS, 0.01),
                hands("rate", "steering_rate_radps", RADIANS_PER_SECOND, 0.1),
                leftFoot("lag", "brake_lag_s", SECONDS, 0.01),
                rightFoot("lag", "throttle_lag_s", SECONDS, 0.01),
                hands("bandwidth", "tracking_bandwidth_radps", RADIANS_PER_SECOND, 0.2),
                hands("damping", "tracking_damping", PLAIN, 0.05),
                hands("yawDamping", "yaw_damping", PLAIN, 0.05),
                hands("curvatureWindow", "curvature_window_s", SECONDS, 0.01),
                hands("slipUse", "slip_use", PLAIN, 0.005),
                rightFoot("gripUse", "throttle_grip_use", PLAIN, 0.005),
                rightFoot("exitFriction", "exit_friction", PLAIN, 0.005),
                new Knob(braking("buildUpTime", "build_up_time_s", SECONDS), 0.05, Kind.WORLD)));
        if (driver.leftFoot().slowestBraking() > 0) {
            knobs.add(leftFoot("slowestBraking", "slowest_braking", PLAIN, 0.05));
        }
        return knobs;
    }

    private static Knob hands(String component, String name, String unit, double change) {
        return driver(
                Parameter.component(Hands.class, component, name, unit)
                        .within(DriverSettings::hands, DriverSettings::with),
                change);
    }

    private static Knob rightFoot(String component, String name, String unit, double change) {
        return driver(
                Parameter.component(RightFoot.class, component, name, unit)
                        .within(DriverSettings::rightFoot, DriverSettings::with),
                change);
    }

    private static Knob leftFoot(String component, String name, String unit, double change) {
        return driver(
                Parameter.component(LeftFoot.class, component, name, unit)
                        .within(DriverSettings::leftFoot, DriverSettings::with),
                change);
    }

    private static Knob driver(Parameter<DriverSettings> number, double change) {
        return new Knob(number.within(Setup::driver, Setup::with), change, Kind.WORLD);
    }

    private static List<Knob> plan() {
        return List.of(
                new Knob(
                        Parameter.component(BrakePlan.class, "brakePoint", "brake_point_m", METRES)
                                .within(Setup::plan, Setup::with),
                        1,
                        Kind.PLAN),
                new Knob(braking("peakDeceleration", "peak_deceleration_mps2", "m/s²"), 0.1, Kind.PLAN),
                new Knob(release("start", "release_start_m"), 1, Kind.PLAN),
                new Knob(release("end", "release_end_m"), 1, Kind.PLAN));
    }

    private static Parameter<Setup> braking(String component, String name, String unit) {
        return Parameter.component(Braking.class, component, name, unit)
                .within(BrakePlan::braking, (plan, other) -> other.from(plan.brakePoint()))
                .within(Setup::plan, Setup::with);
    }

    private static Parameter<Setup> release(String component, String name) {
        return Parameter.component(Release.class, component, name, METRES)
                .within(BrakePlan::release, BrakePlan::with)
                .within(Setup::plan, Setup::with);
    }

    private static Knob world(Parameter<Car> number, double change) {
        return new Knob(number.within(Setup::car, Setup::with), change, Kind.WORLD);
    }

    /**
     * A part of the car whose numbers have knobs.
     *
     * @param <T> the part
     */
    private record Part<T extends Record>(Class<T> type, Function<Car, T> read, BiFunction<Car, T, Car> with) {

        Knob knob(String component, String name, String unit, double change) {
            return knob(Parameter.component(type, component, name, unit), change);
        }

        Knob knob(Parameter<T> number, double change) {
            return world(number.within(read, with), change);
        }
    }
}
