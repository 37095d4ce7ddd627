package org.foreload.examples.recording;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Units that loggers write, as factors to the unit in which a quantity is kept. */
final class Units {

    private static final double FOOT = 0.3048;
    private static final double MILE = 1609.344;
    private static final double KNOT = 1852.0 / 3600;
    private static final double STANDARD_GRAVITY = 9.80665;

    private static final Map<String, Double> TIMES =
            Map.of("s", 1.0, "sec", 1.0, "ms", 1e-3, "us", 1e-6, "µs", 1e-6, "ns", 1e-9, "min", 60.0, "h", 3600.0);

    private static final Map<String, Double> LENGTHS = Map.of("m", 1.0, "km", 1e3, "ft", FOOT, "mi", MILE, "cm", 1e-2);

    private static final Map<String, Double> SPEEDS = Map.of(
            "m/s",
            1.0,
            "mps",
            1.0,
            "km/h",
            1 / 3.6,
            "kph",
            1 / 3.6,
            "kmh",
            1 / 3.6,
            "mph",
            MILE / 3600,
            "kn",
            KNOT,
            "kt",
            KNOT,
            "knots",
            KNOT,
            "ft/s",
            FOOT);

    private static final Map<String, Double> ACCELERATIONS = Map.of(
            "m/s2", 1.0, "m/s²", 1.0, "m/s^2", 1.0, "mps2", 1.0, "g", STANDARD_GRAVITY, "m/s/s", 1.0, "ft/s2", FOOT);

    private static final Map<String, Double> ANGLES =
            Map.of("rad", 1.0, "deg", Math.PI / 180, "°", Math.PI / 180, "degrees", Math.PI / 180);

    private static final Map<String, Double> RATES = Map.of(
            "rad/s",
            1.0,
            "deg/s",
            Math.PI / 180,
            "°/s",
            Math.PI / 180,
            "rad per s",
            1.0,
            "deg per s",
            Math.PI / 180,
            "dps",
            Math.PI / 180,
            "degps",
            Math.PI / 180,
            "radps",
            1.0);

    private static final Map<String, Double> DEGREES = Map.of("deg", 1.0, "°", 1.0, "degrees", 1.0);

    /** Any unit will do for a pedal: only its course counts. */
    private static final List<String> PEDALS = List.of(
            "%",
            "bar", "psi", "kpa", "mpa", "pa", "n", "kn", "lbf", "kgf", "mm", "v", "0-1", "percent", "mps2", "m/s2",
            "on/off", "-");

    private Units() {}

    /** Factor from a unit to that in which the quantity is kept; nothing if it is none of its units. */
    static Optional<Double> factor(Quantity quantity, String text) {
        String unit = text.strip().toLowerCase(Locale.ROOT);
        return switch (quantity) {
            case TIME -> Optional.ofNullable(TIMES.get(unit));
            case DISTANCE, X, Y -> Optional.ofNullable(LENGTHS.get(unit));
            case SPEED -> Optional.ofNullable(SPEEDS.get(unit));
            case LONGITUDINAL, LATERAL -> Optional.ofNullable(ACCELERATIONS.get(unit));
            case STEERING -> Optional.ofNullable(ANGLES.get(unit));
            case YAW_RATE -> Optional.ofNullable(RATES.get(unit));
            case LATITUDE, LONGITUDE -> Optional.ofNullable(DEGREES.get(unit));
            case BRAKE, THROTTLE -> PEDALS.contains(unit) ? Optional.of(1.0) : Optional.empty();
            case LAP -> unit.isEmpty() || unit.equals("-") ? Optional.of(1.0) : Optional.empty();
        };
    }

    /** Whether any quantity has this unit. */
    static boolean known(String text) {
        for (Quantity quantity : Quantity.values()) {
            if (factor(quantity, text).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** The units of a quantity, for an error. */
    static String of(Quantity quantity) {
        return switch (quantity) {
            case TIME -> "s, ms, us, ns, min, h";
            case DISTANCE, X, Y -> "m, km, cm, ft, mi";
            case SPEED -> "m/s, km/h, mph, kn, ft/s";
            case LONGITUDINAL, LATERAL -> "m/s2, g, ft/s2";
            case STEERING -> "rad, deg";
            case YAW_RATE -> "rad/s, deg/s";
            case LATITUDE, LONGITUDE -> "deg";
            case BRAKE, THROTTLE -> String.join(", ", PEDALS);
            case LAP -> "none";
        };
    }
}
