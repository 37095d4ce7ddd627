package org.foreload.validation.subject;

import java.util.Locale;
import java.util.function.DoublePredicate;
import org.foreload.conventions.Gravity;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/** The test bench: a car from the inputs of a check, and a search. */
final class Bench {

    /** Halvings of a search: enough for every digit of a double. */
    private static final int HALVINGS = 200;

    private Bench() {}

    /**
     * A car. What the inputs leave out is neutral: no CG height, no yaw inertia, no aerodynamics, no lag, one friction
     * for all, brakes and engine on all wheels alike; so a bare input is a point mass.
     */
    static Car car(Inputs in) {
        double wheelbase = in.number("wheelbase_m", 2.5);
        double mass = in.number("mass_kg", 1000);
        double toFront = in.number("cg_to_front_axle_m", wheelbase / 2);
        double track = in.number("track_m", 1.5);
        Chassis chassis = new Chassis(
                mass,
                wheelbase,
                toFront,
                in.number("cg_height_m", 0),
                in.number("yaw_inertia_kg_m2", 0),
                in.number("front_track_m", track),
                in.number("rear_track_m", track));
        Suspension suspension = new Suspension(
                in.number("front_roll_stiffness_share", 0.5),
                in.number("front_roll_center_height_m", 0),
                in.number("rear_roll_center_height_m", 0),
                Response.RIGID,
                Response.RIGID);
        Aerodynamics aerodynamics = new Aerodynamics(
                in.number("drag_area_m2", 0),
                in.number("front_downforce_area_m2", 0),
                in.number("rear_downforce_area_m2", 0),
                in.number("air_density_kg_m3", 1.225),
                0);
        Driveline driveline = new Driveline(
                in.number("power_w", 1e9),
                DrivenAxle.valueOf(in.word("driven_axle", "all").toUpperCase(Locale.ROOT)));
        double frontLoad = mass * Gravity.G * (wheelbase - toFront) / wheelbase;
        double rearLoad = mass * Gravity.G * toFront / wheelbase;
        return new Car(
                "bench",
                chassis,
                suspension,
                aerodynamics,
                in.number("front_brake_share", 0.5),
                driveline,
                tyre(in, in.number("front_cornering_stiffness_n_per_rad", 20 * frontLoad) / frontLoad),
                tyre(in, in.number("rear_cornering_stiffness_n_per_rad", 20 * rearLoad) / rearLoad));
    }

    private static Tyre tyre(Inputs in, double stiffnessPerLoad) {
        double friction = in.number("friction", 1);
        return new FrictionTyre(
                curve(in),
                in.number("friction_x", friction),
                in.number("friction_y", friction),
                in.number("load_sensitivity", 0),
                in.number("reference_load_n", 4000),
                in.number("relaxation_length_m", 0),
                in.number("stiffness_per_load", stiffnessPerLoad),
                in.number("slip_stiffness_per_load", 25));
    }

    static SlipCurve curve(Inputs in) {
        String curve = in.word("tyre", "linear");
        return switch (curve) {
            case "linear" -> new SlipCurve.Linear();
            case "brush" -> new SlipCurve.Brush();
            case "magic-formula" ->
                new SlipCurve.MagicFormula(in.number("shape_factor"), in.number("curvature_factor"));
            default -> throw new IllegalArgumentException("no tyre " + curve);
        };
    }

    /** The value up to which a condition holds that holds at {@code low} and not at {@code high}. */
    static double lastTrue(DoublePredicate condition, double low, double high) {
        if (!condition.test(low) || condition.test(high)) {
            throw new IllegalArgumentException("no change between " + low + " and " + high);
        }
        double holds = low;
        double fails = high;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (holds + fails) / 2;
            if (condition.test(middle)) {
                holds = middle;
            } else {
                fails = middle;
            }
        }
        return holds;
    }
}
