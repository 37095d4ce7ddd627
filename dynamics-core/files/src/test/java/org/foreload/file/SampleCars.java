package org.foreload.file;

import java.nio.charset.StandardCharsets;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.foreload.path.Segment;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Suspension;

/** Random cars and corners, and the smallest car file. */
final class SampleCars {

    /** Every field that a car must have, and none that it may leave out. */
    static final String SMALLEST = """
            {
              "name": "smallest",
              "mass_kg": 1000,
              "wheelbase_m": 2.5,
              "cg_to_front_axle_m": 1.2,
              "cg_height_m": 0.5,
              "yaw_inertia_kg_m2": 1400,
              "front_track_m": 1.5,
              "front_roll_stiffness_share": 0.6,
              "front_brake_share": 0.7,
              "power_w": 100000,
              "driven_axle": "rear",
              "front_tyre": {
                "model": "brush",
                "peak_friction_x": 1,
                "peak_friction_y": 1.1,
                "reference_load_n": 2500,
                "cornering_stiffness_per_rad": 15,
                "slip_stiffness": 18
              },
              "rear_tyre": {
                "model": "linear",
                "peak_friction_x": 1,
                "peak_friction_y": 1.1,
                "reference_load_n": 2500,
                "cornering_stiffness_per_rad": 15,
                "slip_stiffness": 18
              }
            }
            """;

    private SampleCars() {}

    private static Arbitrary<Double> positive() {
        return Arbitraries.doubles().between(1e-6, 1e6).ofScale(9);
    }

    private static Arbitrary<Double> share() {
        return Arbitraries.doubles().between(0, 1).ofScale(12);
    }

    private static Arbitrary<Double> any() {
        return Arbitraries.doubles().between(-1e3, 1e3).ofScale(9);
    }

    static Arbitrary<Car> cars() {
        Arbitrary<Chassis> chassis = Combinators.combine(
                        positive(), positive(), share(), positive(), positive(), positive(), positive())
                .as((mass, wheelbase, cg, height, inertia, front, rear) ->
                        new Chassis(mass, wheelbase, wheelbase * (0.01 + 0.98 * cg), height, inertia, front, rear));
        Arbitrary<Suspension> suspension = Combinators.combine(share(), any(), any(), response(), response())
                .as(Suspension::new);
        Arbitrary<Aerodynamics> air = Combinators.combine(positive(), any(), any(), positive(), positive())
                .as(Aerodynamics::new);
        Arbitrary<Driveline> driveline = Combinators.combine(positive(), Arbitraries.of(Driveline.DrivenAxle.class))
                .as(Driveline::new);
        return Combinators.combine(
                        Arbitraries.strings().ofMaxLength(20).filter(SampleCars::encodable),
                        chassis,
                        suspension,
                        air,
                        share(),
                        driveline,
                        tyre(),
                        tyre())
                .as(Car::new);
    }

    /** Half surrogate pairs are no characters and cannot be written as UTF-8. */
    private static boolean encodable(String text) {
        return StandardCharsets.UTF_8.newEncoder().canEncode(text);
    }

    private static Arbitrary<Suspension.Response> response() {
        return Arbitraries.oneOf(
                Arbitraries.just(Suspension.Response.RIGID),
                Combinators.combine(positive(), positive()).as(Suspension.Response::new));
    }

    private static Arbitrary<FrictionTyre> tyre() {
        Arbitrary<SlipCurve> magic = Combinators.combine(
                        Arbitraries.doubles().between(1.001, 1.999).ofScale(6),
                        Arbitraries.doubles().between(-20, 0.999).ofScale(6))
                .as(SlipCurve.MagicFormula::new);
        Arbitrary<SlipCurve> curve = Arbitraries.oneOf(
                Arbitraries.just(new SlipCurve.Linear()), Arbitraries.just(new SlipCurve.Brush()), magic);
        return Combinators.combine(
                        curve, positive(), positive(), share(), positive(), positive(), positive(), positive())
                .as(FrictionTyre::new);
    }

    static Arbitrary<DrawnCorner> corners() {
        return Combinators.combine(
                        Arbitraries.strings().ofMaxLength(20).filter(SampleCars::encodable),
                        positive(),
                        length(),
                        length(),
                        positive(),
                        segment().list().ofMinSize(1).ofMaxSize(5),
                        slope(),
                        slope())
                .as(DrawnCorner::new)
                .filter(corner -> corner.tightest() > 0);
    }

    private static Arbitrary<Double> slope() {
        return Arbitraries.doubles().between(-60, 60).ofScale(6);
    }

    private static Arbitrary<Segment> segment() {
        Arbitrary<Turn> turn = Arbitraries.of(Turn.class);
        return Arbitraries.oneOf(
                length().map(Segment::straight),
                Combinators.combine(length(), radius(), turn).as(Segment::arc),
                Combinators.combine(length(), radius(), turn).as(Segment::spiralIn),
                Combinators.combine(length(), radius(), turn).as(Segment::spiralOut),
                Combinators.combine(length(), radius(), radius(), turn).as(Segment::spiralBetween));
    }

    private static Arbitrary<Double> length() {
        return Arbitraries.doubles().between(1e-3, 20_000).ofScale(6);
    }

    private static Arbitrary<Double> radius() {
        return Arbitraries.doubles().between(1, 1e6).ofScale(6);
    }

    /** The smallest car with one line replaced: the one that holds {@code field}, at its first place. */
    static String smallestWith(String field, String line) {
        int at = SMALLEST.indexOf("\"" + field + "\"");
        int end = SMALLEST.indexOf('\n', at);
        String old = SMALLEST.substring(at, end);
        String comma = old.endsWith(",") ? "," : "";
        return SMALLEST.substring(0, at) + line + comma + SMALLEST.substring(end);
    }

    /** The smallest car without the first line that holds {@code field}. */
    static String smallestWithout(String field) {
        int at = SMALLEST.indexOf("\"" + field + "\"");
        int end = SMALLEST.indexOf('\n', at);
        String text = SMALLEST.substring(0, at) + SMALLEST.substring(end);
        return text.replaceAll(",(\\s*})", "$1");
    }

    /** The smallest car with one more field at its front. */
    static String smallestAnd(String field) {
        return "{" + field + "," + SMALLEST.substring(1);
    }
}
