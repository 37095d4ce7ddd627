package org.foreload.file;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.foreload.tyre.FrictionTyre;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;

/**
 * A car as a JSON file; {@code docs/car.schema.json} describes every field.
 *
 * <p>May be left out: 0 for the aerodynamic fields, the engine's drag, roll-centre heights, load sensitivity,
 * relaxation length and curvature factor; anti-lock brakes (none); one of the two tracks (as the other); the pitch
 * response (rigid: load moves at once) and the roll response (as the pitch response). The word {@code "rigid"} in place
 * of a frequency says so in words.
 */
public final class CarFile {

    /** Names of the fields, in the order in which they are written. */
    static final List<String> NAMES = List.of(
            "name",
            "mass_kg",
            "wheelbase_m",
            "cg_to_front_axle_m",
            "cg_height_m",
            "yaw_inertia_kg_m2",
            "front_track_m",
            "rear_track_m",
            "front_roll_stiffness_share",
            "front_roll_center_height_m",
            "rear_roll_center_height_m",
            "front_brake_share",
            "drag_area_m2",
            "front_downforce_area_m2",
            "rear_downforce_area_m2",
            "air_density_kg_m3",
            "drag_height_m",
            "power_w",
            "driven_axle",
            "closed_throttle_drag_n",
            "anti_lock",
            "pitch_frequency_hz",
            "pitch_damping_ratio",
            "roll_frequency_hz",
            "roll_damping_ratio",
            "front_tyre",
            "rear_tyre");

    private static final String RIGID = "rigid";

    private static final Map<String, DrivenAxle> DRIVEN_AXLES = new LinkedHashMap<>();

    static {
        DRIVEN_AXLES.put("front", DrivenAxle.FRONT);
        DRIVEN_AXLES.put("rear", DrivenAxle.REAR);
        DRIVEN_AXLES.put("all", DrivenAxle.ALL);
    }

    private CarFile() {}

    /** Whether a car file has a field of that name at its outermost level. */
    public static boolean hasField(String name) {
        return NAMES.contains(name);
    }

    /**
     * Reads a car.
     *
     * @param path the file
     * @throws InputException if the file or a value in it cannot be used
     */
    public static Loaded<Car> read(Path path) {
        String file = path.toString();
        return parse(TextFile.read(path, file), file);
    }

    /**
     * Reads a car from JSON text.
     *
     * @param text the JSON
     * @param file the name that errors and warnings give
     * @throws InputException if a value cannot be used
     */
    public static Loaded<Car> parse(String text, String file) {
        List<Warning> warnings = new ArrayList<>();
        Car car = car(JsonFields.of(file, JsonText.read(text, file), NAMES, warnings), warnings, file);
        return new Loaded<>(car, warnings);
    }

    private static Car car(JsonFields fields, List<Warning> warnings, String file) {
        String name = fields.text("name");
        Chassis chassis = chassis(fields);
        Suspension suspension = suspension(fields);
        Aerodynamics aerodynamics = aerodynamics(fields);
        double frontBrakeShare = fields.number("front_brake_share");
        double power = fields.number("power_w");
        DrivenAxle drivenAxle = fields.choice("driven_axle", DRIVEN_AXLES);
        double engineDrag = fields.number("closed_throttle_drag_n", 0);
        boolean antiLock = fields.yes("anti_lock", false);
        Driveline driveline = fields.build(() -> new Driveline(power, drivenAxle, engineDrag));
        FrictionTyre front = TyreFields.read(fields.object("front_tyre", TyreFields.NAMES));
        FrictionTyre rear = TyreFields.read(fields.object("rear_tyre", TyreFields.NAMES));
        Car car = fields.build(() ->
                new Car(name, chassis, suspension, aerodynamics, frontBrakeShare, driveline, front, rear, antiLock));
        warnings.addAll(UnusualCar.warnings(car, front, rear, file));
        return car;
    }

    private static Chassis chassis(JsonFields fields) {
        double mass = fields.number("mass_kg");
        double wheelbase = fields.number("wheelbase_m");
        double cgToFrontAxle = fields.number("cg_to_front_axle_m");
        double cgHeight = fields.number("cg_height_m");
        double yawInertia = fields.number("yaw_inertia_kg_m2");
        if (!fields.has("front_track_m") && !fields.has("rear_track_m")) {
            throw fields.refuse("front_track_m", "must be given: a number (or rear_track_m, if the two are equal)");
        }
        double frontTrack =
                fields.has("front_track_m") ? fields.number("front_track_m") : fields.number("rear_track_m");
        double rearTrack = fields.number("rear_track_m", frontTrack);
        return fields.build(
                () -> new Chassis(mass, wheelbase, cgToFrontAxle, cgHeight, yawInertia, frontTrack, rearTrack));
    }

    private static Suspension suspension(JsonFields fields) {
        double share = fields.number("front_roll_stiffness_share");
        double front = fields.number("front_roll_center_height_m", 0);
        double rear = fields.number("rear_roll_center_height_m", 0);
        Response pitch = response(fields, "pitch_", Response.RIGID);
        Response roll = response(fields, "roll_", pitch);
        return fields.build(() -> new Suspension(share, front, rear, pitch, roll));
    }

    private static Response response(JsonFields fields, String prefix, Response absent) {
        String frequencyName = prefix + "frequency_hz";
        String dampingName = prefix + "damping_ratio";
        if (fields.isText(frequencyName)
                ? rigid(fields, frequencyName)
                : absent.rigid() && !fields.has(frequencyName)) {
            if (fields.has(dampingName)) {
                fields.number(dampingName);
                fields.warn(dampingName, "has no effect without a number for " + frequencyName);
            }
            return Response.RIGID;
        }
        if (!absent.rigid()) {
            double frequency = fields.number(frequencyName, absent.frequency());
            double damping = fields.number(dampingName, absent.dampingRatio());
            return fields.build(prefix, () -> new Response(frequency, damping));
        }
        double frequency = fields.number(frequencyName);
        if (!fields.has(dampingName)) {
            throw fields.refuse(dampingName, "must be given with " + frequencyName + ": a number above 0");
        }
        double damping = fields.number(dampingName);
        return fields.build(prefix, () -> new Response(frequency, damping));
    }

    private static boolean rigid(JsonFields fields, String name) {
        if (!fields.text(name).equals(RIGID)) {
            throw fields.refuse(name, "must be a number above 0 or \"" + RIGID + "\"");
        }
        return true;
    }

    private static Aerodynamics aerodynamics(JsonFields fields) {
        double drag = fields.number("drag_area_m2", 0);
        double front = fields.number("front_downforce_area_m2", 0);
        double rear = fields.number("rear_downforce_area_m2", 0);
        double density = fields.number("air_density_kg_m3", 0);
        double dragHeight = fields.number("drag_height_m", 0);
        Aerodynamics aerodynamics = fields.build(() -> new Aerodynamics(drag, front, rear, density, dragHeight));
        if (density == 0) {
            for (String name : List.of("drag_area_m2", "front_downforce_area_m2", "rear_downforce_area_m2")) {
                if (fields.number(name, 0) != 0) {
                    fields.warn(name, "has no effect without air_density_kg_m3 (about 1.2 kg/m³ near sea level)");
                }
            }
        }
        return aerodynamics;
    }

    /**
     * The car as JSON text, which {@link #parse} reads back to an equal car.
     *
     * @throws IllegalArgumentException if a tyre is a model of the user's own
     */
    public static String write(Car car) {
        ObjectNode out = JsonNodeFactory.instance.objectNode();
        Chassis chassis = car.chassis();
        Suspension suspension = car.suspension();
        Aerodynamics aerodynamics = car.aerodynamics();
        out.put("name", car.name());
        out.put("mass_kg", chassis.mass());
        out.put("wheelbase_m", chassis.wheelbase());
        out.put("cg_to_front_axle_m", chassis.cgToFrontAxle());
        out.put("cg_height_m", chassis.cgHeight());
        out.put("yaw_inertia_kg_m2", chassis.yawInertia());
        out.put("front_track_m", chassis.frontTrack());
        out.put("rear_track_m", chassis.rearTrack());
        out.put("front_roll_stiffness_share", suspension.frontRollStiffnessShare());
        out.put("front_roll_center_height_m", suspension.frontRollCenterHeight());
        out.put("rear_roll_center_height_m", suspension.rearRollCenterHeight());
        out.put("front_brake_share", car.frontBrakeShare());
        out.put("drag_area_m2", aerodynamics.dragArea());
        out.put("front_downforce_area_m2", aerodynamics.frontDownforceArea());
        out.put("rear_downforce_area_m2", aerodynamics.rearDownforceArea());
        out.put("air_density_kg_m3", aerodynamics.airDensity());
        out.put("drag_height_m", aerodynamics.dragHeight());
        out.put("power_w", car.driveline().power());
        DRIVEN_AXLES.forEach((word, axle) -> {
            if (axle == car.driveline().drivenAxle()) {
                out.put("driven_axle", word);
            }
        });
        out.put("closed_throttle_drag_n", car.driveline().closedThrottleDrag());
        out.put("anti_lock", car.antiLock());
        write(suspension.pitch(), "pitch_", out);
        write(suspension.roll(), "roll_", out);
        TyreFields.write(car.frontTyre(), out.putObject("front_tyre"));
        TyreFields.write(car.rearTyre(), out.putObject("rear_tyre"));
        return JsonWriter.write(out);
    }

    private static void write(Response response, String prefix, ObjectNode out) {
        if (response.rigid()) {
            out.put(prefix + "frequency_hz", RIGID);
        } else {
            out.put(prefix + "frequency_hz", response.frequency());
            out.put(prefix + "damping_ratio", response.dampingRatio());
        }
    }
}
