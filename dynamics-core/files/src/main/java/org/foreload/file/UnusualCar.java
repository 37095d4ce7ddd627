package org.foreload.file;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension;

/**
 * Values that a car can have but hardly any car has; most are slips of a unit or a decimal point. The ranges are wide
 * enough for a kart as well as a lorry on slicks would be unusual: they come from general knowledge of cars, not from a
 * source, and refuse nothing.
 */
final class UnusualCar {

    private final List<Warning> warnings = new ArrayList<>();
    private final String file;

    private UnusualCar(String file) {
        this.file = file;
    }

    static List<Warning> warnings(Car car, FrictionTyre front, FrictionTyre rear, String file) {
        UnusualCar unusual = new UnusualCar(file);
        unusual.chassis(car.chassis(), Math.min(front.frictionY(), rear.frictionY()));
        unusual.suspension(car.suspension(), car.chassis());
        unusual.aerodynamics(car.aerodynamics());
        unusual.range("front_brake_share", car.frontBrakeShare(), 0.4, 0.9, "");
        unusual.range("power_w", car.driveline().power(), 5e3, 1.2e6, "W");
        if (car.driveline().closedThrottleDrag() > 0) {
            double slowing =
                    car.driveline().closedThrottleDrag() / car.chassis().mass();
            if (!(slowing >= 0.02 && slowing <= 3)) {
                unusual.add(
                        "closed_throttle_drag_n",
                        car.driveline().closedThrottleDrag(),
                        "unusual; it slows this car by " + roughly(slowing) + " m/s², cars slow by 0.02 to 3 m/s²");
            }
        }
        unusual.tyre("front_tyre.", front);
        unusual.tyre("rear_tyre.", rear);
        return unusual.warnings;
    }

    private void chassis(Chassis chassis, double friction) {
        range("mass_kg", chassis.mass(), 150, 4000, "kg");
        range("wheelbase_m", chassis.wheelbase(), 1, 4.5, "m");
        double share = chassis.cgToFrontAxle() / chassis.wheelbase();
        if (!(share >= 0.3 && share <= 0.7)) {
            add(
                    "cg_to_front_axle_m",
                    chassis.cgToFrontAxle(),
                    "unusual; that is " + roughly(share) + " of the wheelbase, cars have 0.3 to 0.7 of it");
        }
        range("front_track_m", chassis.frontTrack(), 0.9, 2.3, "m");
        range("rear_track_m", chassis.rearTrack(), 0.9, 2.3, "m");
        if (chassis.cgHeight() > 0) {
            range("cg_height_m", chassis.cgHeight(), 0.15, 1.2, "m");
            double stability = Math.min(chassis.frontTrack(), chassis.rearTrack()) / (2 * chassis.cgHeight());
            if (stability < 1) {
                add(
                        "cg_height_m",
                        chassis.cgHeight(),
                        "unusual beside the track: the car would roll over at " + roughly(stability)
                                + " g of cornering; cars are above 1");
            } else if (stability < friction) {
                add(
                        "cg_height_m",
                        chassis.cgHeight(),
                        "unusual beside track and tyres: the car would roll over at " + roughly(stability)
                                + " g of cornering, before its tyres slide at " + roughly(friction) + " g");
            }
        }
        if (chassis.yawInertia() > 0) {
            double usual = chassis.mass() * chassis.cgToFrontAxle() * chassis.cgToRearAxle();
            double ratio = chassis.yawInertia() / usual;
            if (!(ratio >= 0.4 && ratio <= 1.8)) {
                add(
                        "yaw_inertia_kg_m2",
                        chassis.yawInertia(),
                        "unusual; mass and axle distances suggest about " + roughly(usual) + " kg·m²");
            }
        }
    }

    private void suspension(Suspension suspension, Chassis chassis) {
        range("front_roll_stiffness_share", suspension.frontRollStiffnessShare(), 0.25, 0.85, "");
        range("front_roll_center_height_m", suspension.frontRollCenterHeight(), -0.15, 0.4, "m");
        range("rear_roll_center_height_m", suspension.rearRollCenterHeight(), -0.15, 0.5, "m");
        response("pitch_", suspension.pitch());
        if (!Objects.equals(suspension.roll(), suspension.pitch())) { // As a rule they are one object.
            response("roll_", suspension.roll());
        }
    }

    private void response(String prefix, Suspension.Response response) {
        if (!response.rigid()) {
            range(prefix + "frequency_hz", response.frequency(), 0.7, 10, "Hz");
            range(prefix + "damping_ratio", response.dampingRatio(), 0.1, 1.5, "");
        }
    }

    private void aerodynamics(Aerodynamics aerodynamics) {
        range("drag_area_m2", aerodynamics.dragArea(), 0, 2.5, "m²");
        range("front_downforce_area_m2", aerodynamics.frontDownforceArea(), -0.5, 4, "m²");
        range("rear_downforce_area_m2", aerodynamics.rearDownforceArea(), -0.5, 5, "m²");
        if (aerodynamics.airDensity() > 0) {
            range("air_density_kg_m3", aerodynamics.airDensity(), 0.7, 1.5, "kg/m³");
        }
        range("drag_height_m", aerodynamics.dragHeight(), 0, 1.2, "m");
    }

    private void tyre(String place, FrictionTyre tyre) {
        range(place + "peak_friction_x", tyre.frictionX(), 0.05, 2.2, "");
        range(place + "peak_friction_y", tyre.frictionY(), 0.05, 2.2, "");
        range(place + "load_sensitivity", tyre.loadSensitivity(), 0, 0.3, "");
        range(place + "reference_load_n", tyre.referenceLoad(), 300, 12_000, "N");
        range(place + "relaxation_length_m", tyre.relaxationLength(), 0, 1.2, "m");
        range(place + "cornering_stiffness_per_rad", tyre.corneringStiffnessPerLoad(), 5, 50, "per rad");
        range(place + "slip_stiffness", tyre.slipStiffnessPerLoad(), 5, 60, "");
        if (tyre.curve() instanceof SlipCurve.MagicFormula magic) {
            range(place + "shape_factor", magic.shapeFactor(), 1.05, 1.9, "");
            range(place + "curvature_factor", magic.curvatureFactor(), -10, 1, "");
        }
    }

    /** With two digits that count: what is said for comparison is no more exact. */
    private static String roughly(double value) {
        return DecimalText.of(
                Double.isFinite(value) ? new BigDecimal(value).round(TWO_DIGITS).doubleValue() : value);
    }

    private static final MathContext TWO_DIGITS = new MathContext(2);

    private void range(String field, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            String range = DecimalText.of(low) + " to " + DecimalText.of(high);
            add(field, value, "unusual; cars have " + (unit.isEmpty() ? range : range + " " + unit));
        }
    }

    private void add(String field, double value, String message) {
        warnings.add(new Warning(file, field, DecimalText.of(value), message));
    }
}
