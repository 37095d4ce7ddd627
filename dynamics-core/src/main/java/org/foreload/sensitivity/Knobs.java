package org.foreload.sensitivity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.driver.DriverSettings;
import org.foreload.parameter.Parameter;
import org.foreload.path.Corner;
import org.foreload.sensitivity.Knob.Kind;
import org.foreload.tyre.FrictionTyre;
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
    private static final String PLAIN = "";

    private Knobs() {}

    /** The knobs that a setup has: a number that is zero because the car lacks the thing has none. */
    public static List<Knob> of(Setup setup) {
        List<Knob> knobs = new ArrayList<>();
        chassis(knobs);
        suspension(knobs, setup.car());
        aerodynamics(knobs, setup.car());
        tyres(knobs, setup.car());
        around(knobs);
        plan(knobs);
        return knobs;
    }

    private static void chassis(List<Knob> knobs) {
        knobs.add(chassis(
                "mass_kg",
                KILOGRAMS,
                10,
                Chassis::mass,
                (c, v) -> new Chassis(
                        v,
                        c.wheelbase(),
                        c.cgToFrontAxle(),
                        c.cgHeight(),
                        c.yawInertia(),
                        c.frontTrack(),
                        c.rearTrack())));
        knobs.add(chassis(
                "wheelbase_m",
                METRES,
                0.02,
                Chassis::wheelbase,
                (c, v) -> new Chassis(
                        c.mass(), v, c.cgToFrontAxle(), c.cgHeight(), c.yawInertia(), c.frontTrack(), c.rearTrack())));
        knobs.add(chassis(
                "cg_to_front_axle_m",
                METRES,
                0.01,
                Chassis::cgToFrontAxle,
                (c, v) -> new Chassis(
                        c.mass(), c.wheelbase(), v, c.cgHeight(), c.yawInertia(), c.frontTrack(), c.rearTrack())));
        knobs.add(chassis(
                "cg_height_m",
                METRES,
                0.01,
                Chassis::cgHeight,
                (c, v) -> new Chassis(
                        c.mass(), c.wheelbase(), c.cgToFrontAxle(), v, c.yawInertia(), c.frontTrack(), c.rearTrack())));
        knobs.add(chassis(
                "yaw_inertia_kg_m2",
                "kg·m²",
                50,
                Chassis::yawInertia,
                (c, v) -> new Chassis(
                        c.mass(), c.wheelbase(), c.cgToFrontAxle(), c.cgHeight(), v, c.frontTrack(), c.rearTrack())));
        knobs.add(chassis(
                "front_track_m",
                METRES,
                0.02,
                Chassis::frontTrack,
                (c, v) -> new Chassis(
                        c.mass(), c.wheelbase(), c.cgToFrontAxle(), c.cgHeight(), c.yawInertia(), v, c.rearTrack())));
        knobs.add(chassis(
                "rear_track_m",
                METRES,
                0.02,
                Chassis::rearTrack,
                (c, v) -> new Chassis(
                        c.mass(), c.wheelbase(), c.cgToFrontAxle(), c.cgHeight(), c.yawInertia(), c.frontTrack(), v)));
        knobs.add(car("front_brake_share", PLAIN, 0.01, Car::frontBrakeShare, Car::withFrontBrakeShare));
        knobs.add(car(
                "power_w",
                "W",
                5000,
                c -> c.driveline().power(),
                (c, v) -> c.with(new Driveline(v, c.driveline().drivenAxle()))));
    }

    private static Knob chassis(
            String name,
            String unit,
            double change,
            ToDoubleFunction<Chassis> read,
            BiFunction<Chassis, Double, Chassis> with) {
        return car(
                name, unit, change, c -> read.applyAsDouble(c.chassis()), (c, v) -> c.with(with.apply(c.chassis(), v)));
    }

    private static void suspension(List<Knob> knobs, Car car) {
        knobs.add(suspension(
                "front_roll_stiffness_share",
                PLAIN,
                0.01,
                Suspension::frontRollStiffnessShare,
                (s, v) -> new Suspension(v, s.frontRollCenterHeight(), s.rearRollCenterHeight(), s.pitch(), s.roll())));
        knobs.add(suspension(
                "front_roll_center_height_m",
                METRES,
                0.01,
                Suspension::frontRollCenterHeight,
                (s, v) ->
                        new Suspension(s.frontRollStiffnessShare(), v, s.rearRollCenterHeight(), s.pitch(), s.roll())));
        knobs.add(suspension(
                "rear_roll_center_height_m",
                METRES,
                0.01,
                Suspension::rearRollCenterHeight,
                (s, v) -> new Suspension(
                        s.frontRollStiffnessShare(), s.frontRollCenterHeight(), v, s.pitch(), s.roll())));
        if (!car.suspension().pitch().rigid()) {
            knobs.add(suspension(
                    "pitch_frequency_hz",
                    "Hz",
                    0.1,
                    s -> s.pitch().frequency(),
                    (s, v) -> withPitch(s, new Suspension.Response(v, s.pitch().dampingRatio()))));
            knobs.add(suspension(
                    "pitch_damping_ratio",
                    PLAIN,
                    0.05,
                    s -> s.pitch().dampingRatio(),
                    (s, v) -> withPitch(s, new Suspension.Response(s.pitch().frequency(), v))));
        }
    }

    private static Suspension withPitch(Suspension s, Suspension.Response pitch) {
        return new Suspension(
                s.frontRollStiffnessShare(), s.frontRollCenterHeight(), s.rearRollCenterHeight(), pitch, s.roll());
    }

    private static Knob suspension(
            String name,
            String unit,
            double change,
            ToDoubleFunction<Suspension> read,
            BiFunction<Suspension, Double, Suspension> with) {
        return car(
                name,
                unit,
                change,
                c -> read.applyAsDouble(c.suspension()),
                (c, v) -> c.with(with.apply(c.suspension(), v)));
    }

    private static void aerodynamics(List<Knob> knobs, Car car) {
        if (car.aerodynamics().airDensity() == 0) {
            return;
        }
        if (car.aerodynamics().dragArea() > 0) {
            knobs.add(aerodynamics(
                    "drag_area_m2",
                    SQUARE_METRES,
                    0.02,
                    Aerodynamics::dragArea,
                    (a, v) -> new Aerodynamics(
                            v, a.frontDownforceArea(), a.rearDownforceArea(), a.airDensity(), a.dragHeight())));
        }
        knobs.add(aerodynamics(
                "front_downforce_area_m2",
                SQUARE_METRES,
                0.05,
                Aerodynamics::frontDownforceArea,
                (a, v) -> new Aerodynamics(a.dragArea(), v, a.rearDownforceArea(), a.airDensity(), a.dragHeight())));
        knobs.add(aerodynamics(
                "rear_downforce_area_m2",
                SQUARE_METRES,
                0.05,
                Aerodynamics::rearDownforceArea,
                (a, v) -> new Aerodynamics(a.dragArea(), a.frontDownforceArea(), v, a.airDensity(), a.dragHeight())));
        knobs.add(aerodynamics(
                "air_density_kg_m3",
                "kg/m³",
                0.02,
                Aerodynamics::airDensity,
                (a, v) -> new Aerodynamics(
                        a.dragArea(), a.frontDownforceArea(), a.rearDownforceArea(), v, a.dragHeight())));
    }

    private static Knob aerodynamics(
            String name,
            String unit,
            double change,
            ToDoubleFunction<Aerodynamics> read,
            BiFunction<Aerodynamics, Double, Aerodynamics> with) {
        return car(
                name,
                unit,
                change,
                c -> read.applyAsDouble(c.aerodynamics()),
                (c, v) -> c.with(with.apply(c.aerodynamics(), v)));
    }

    private static void tyres(List<Knob> knobs, Car car) {
        knobs.add(car(
                "friction_scale",
                PLAIN,
                0.01,
                c -> 1,
                (c, v) ->
                        c.withTyres(c.frontTyre().withFriction(v), c.rearTyre().withFriction(v))));
        tyre(knobs, "front_tyre.", car.frontTyre(), Car::frontTyre, (c, t) -> c.withTyres(t, c.rearTyre()));
        tyre(knobs, "rear_tyre.", car.rearTyre(), Car::rearTyre, (c, t) -> c.withTyres(c.frontTyre(), t));
    }

    private static void tyre(
            List<Knob> knobs, String where, Tyre tyre, Function<Car, Tyre> read, BiFunction<Car, Tyre, Car> with) {
        if (!(tyre instanceof FrictionTyre friction)) {
            return;
        }
        knobs.add(tyre(where + "peak_friction_x", PLAIN, 0.01, FrictionTyre::frictionX, 1, read, with));
        knobs.add(tyre(where + "peak_friction_y", PLAIN, 0.01, FrictionTyre::frictionY, 2, read, with));
        if (friction.loadSensitivity() > 0) {
            knobs.add(tyre(where + "load_sensitivity", PLAIN, 0.01, FrictionTyre::loadSensitivity, 3, read, with));
        }
        if (friction.relaxationLength() > 0) {
            knobs.add(tyre(where + "relaxation_length_m", METRES, 0.05, FrictionTyre::relaxationLength, 4, read, with));
        }
        knobs.add(tyre(
                where + "cornering_stiffness_per_rad",
                "1/rad",
                1,
                FrictionTyre::corneringStiffnessPerLoad,
                5,
                read,
                with));
        knobs.add(tyre(where + "slip_stiffness", PLAIN, 1, FrictionTyre::slipStiffnessPerLoad, 6, read, with));
    }

    private static Knob tyre(
            String name,
            String unit,
            double change,
            ToDoubleFunction<FrictionTyre> value,
            int field,
            Function<Car, Tyre> read,
            BiFunction<Car, Tyre, Car> with) {
        return car(name, unit, change, c -> value.applyAsDouble((FrictionTyre) read.apply(c)), (c, v) -> {
            FrictionTyre t = (FrictionTyre) read.apply(c);
            return with.apply(
                    c,
                    new FrictionTyre(
                            t.curve(),
                            field == 1 ? v : t.frictionX(),
                            field == 2 ? v : t.frictionY(),
                            field == 3 ? v : t.loadSensitivity(),
                            t.referenceLoad(),
                            field == 4 ? v : t.relaxationLength(),
                            field == 5 ? v : t.corneringStiffnessPerLoad(),
                            field == 6 ? v : t.slipStiffnessPerLoad()));
        });
    }

    private static Knob car(
            String name, String unit, double change, ToDoubleFunction<Car> read, BiFunction<Car, Double, Car> with) {
        return new Knob(
                new Parameter<>(name, unit, s -> read.applyAsDouble(s.car()), (s, v) -> s.with(with.apply(s.car(), v))),
                change,
                Kind.WORLD);
    }

    private static void around(List<Knob> knobs) {
        knobs.add(new Knob(
                new Parameter<>(
                        "approach_speed_mps",
                        "m/s",
                        s -> s.corner().approachSpeed(),
                        (s, v) -> new Setup(
                                s.car(),
                                new Corner(s.corner().name(), v, s.corner().path()),
                                s.driver(),
                                s.plan())),
                1,
                Kind.WORLD));
        knobs.add(driver("brake_lag_s", SECONDS, 0.01, DriverSettings::brakeLag, DriverSettings::withBrakeLag));
        knobs.add(driver("exit_friction", PLAIN, 0.01, DriverSettings::exitFriction, DriverSettings::withExitFriction));
        knobs.add(new Knob(
                new Parameter<>(
                        "build_up_time_s",
                        SECONDS,
                        s -> s.plan().buildUpTime(),
                        (s, v) -> s.with(new BrakePlan(
                                s.plan().brakePoint(),
                                s.plan().peakDeceleration(),
                                v,
                                s.plan().release()))),
                0.05,
                Kind.WORLD));
    }

    private static Knob driver(
            String name,
            String unit,
            double change,
            ToDoubleFunction<DriverSettings> read,
            BiFunction<DriverSettings, Double, DriverSettings> with) {
        return new Knob(
                new Parameter<>(
                        name, unit, s -> read.applyAsDouble(s.driver()), (s, v) -> s.with(with.apply(s.driver(), v))),
                change,
                Kind.WORLD);
    }

    private static void plan(List<Knob> knobs) {
        knobs.add(plan("brake_point_m", METRES, 1, BrakePlan::brakePoint, BrakePlan::withBrakePoint));
        knobs.add(plan(
                "peak_deceleration_mps2",
                "m/s²",
                0.1,
                BrakePlan::peakDeceleration,
                (p, v) -> new BrakePlan(p.brakePoint(), v, p.buildUpTime(), p.release())));
        knobs.add(plan(
                "release_start_m",
                METRES,
                1,
                p -> p.release().start(),
                (p, v) -> released(p, v, p.release().end())));
        knobs.add(plan(
                "release_end_m",
                METRES,
                1,
                p -> p.release().end(),
                (p, v) -> released(p, p.release().start(), v)));
    }

    private static BrakePlan released(BrakePlan plan, double start, double end) {
        return new BrakePlan(
                plan.brakePoint(),
                plan.peakDeceleration(),
                plan.buildUpTime(),
                new Release(plan.release().shape(), start, end));
    }

    private static Knob plan(
            String name,
            String unit,
            double change,
            ToDoubleFunction<BrakePlan> read,
            BiFunction<BrakePlan, Double, BrakePlan> with) {
        return new Knob(
                new Parameter<>(
                        name, unit, s -> read.applyAsDouble(s.plan()), (s, v) -> s.with(with.apply(s.plan(), v))),
                change,
                Kind.PLAN);
    }

    /** The knob of that name. */
    public static Optional<Knob> named(List<Knob> knobs, String name) {
        return knobs.stream()
                .filter(knob -> knob.parameter().name().equals(name))
                .findFirst();
    }
}
