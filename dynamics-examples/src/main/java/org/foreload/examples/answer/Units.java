package org.foreload.examples.answer;

import org.foreload.conventions.Gravity;
import org.foreload.examples.output.Numbers;

/** Units in which sentences give speeds and decelerations; tables, JSON and CSV stay in SI. */
public enum Units {
    /** SI, with km/h and g beside it. */
    KMH("km/h", 3.6),
    /** SI, with mph and g beside it. */
    MPH("mph", 3600 / 1609.344),
    /** SI alone. */
    SI("m/s", 1);

    private final String name;
    private final double perMetrePerSecond;

    Units(String name, double perMetrePerSecond) {
        this.name = name;
        this.perMetrePerSecond = perMetrePerSecond;
    }

    /** The unit of a speed where it is given alone: {@code km/h}, {@code mph} or {@code m/s}. */
    public String speedUnit() {
        return name;
    }

    /** A speed, from m/s, in the unit in which it is given alone. */
    public double ofSpeed(double metresPerSecond) {
        return perMetrePerSecond * metresPerSecond;
    }

    /** The same as text without its unit: whole km/h or mph, or m/s with a decimal; a dash for NaN. */
    public String speedAlone(double metresPerSecond) {
        return Numbers.rounded(ofSpeed(metresPerSecond), this == SI ? 1 : 0);
    }

    /** {@code 27.5 m/s (99 km/h)}. */
    public String speed(double metresPerSecond) {
        String si = Numbers.rounded(metresPerSecond, 1) + " m/s";
        return this == SI || !Double.isFinite(metresPerSecond)
                ? si
                : si + " (" + Numbers.rounded(perMetrePerSecond * metresPerSecond, 0) + " " + name + ")";
    }

    /** {@code 9.24 m/s² (0.94 g)}. */
    public String deceleration(double metresPerSecondSquared) {
        String si = Numbers.rounded(metresPerSecondSquared, 2) + " m/s²";
        return this == SI || !Double.isFinite(metresPerSecondSquared)
                ? si
                : si + " (" + Numbers.rounded(metresPerSecondSquared / Gravity.G, 2) + " g)";
    }

    /** An understeer gradient in rad per m/s²: {@code -0.10°/g}, or {@code -0.0103° per m/s²}. */
    public String understeerGradient(double radPerMps2) {
        double degrees = Math.toDegrees(radPerMps2);
        return this == SI
                ? Numbers.rounded(degrees, 4) + "° per m/s²"
                : Numbers.rounded(degrees * Gravity.G, 2) + "°/g";
    }
}
