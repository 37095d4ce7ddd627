package org.foreload.driver;

import java.util.Arrays;
import java.util.Objects;
import org.foreload.conventions.Bounds;
import org.foreload.conventions.InvalidValueException;
import org.foreload.conventions.Rising;

/**
 * The speed that the driver expects or aims for at each station: on the way out, from where the throttle opens; or
 * along a whole entry, as the plan of it leads one to expect.
 *
 * <p>Two plans with the same numbers are equal.
 *
 * @param stations each beyond the one before, m; for an exit the first is where the throttle opens
 * @param speeds m/s at the stations, zero or above
 */
public record SpeedPlan(double[] stations, double[] speeds) {

    /**
     * Checks and copies the arrays.
     *
     * @throws IllegalArgumentException unless there are two or more stations, each with a speed
     * @throws org.foreload.conventions.InvalidValueException if a station is not finite or not beyond the one before,
     *     or a speed not finite or below zero; it names the first of them
     */
    public SpeedPlan {
        Objects.requireNonNull(stations, "stations");
        Objects.requireNonNull(speeds, "speeds");
        if (stations.length < 2 || stations.length != speeds.length) {
            throw new IllegalArgumentException("a speed plan needs two or more stations, each with a speed, not "
                    + stations.length + " and " + speeds.length);
        }
        stations = stations.clone();
        speeds = speeds.clone();
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < stations.length; i++) {
            // A long plan is made for each entry of a reacting foot: names only for what is wrong.
            if (!(stations[i] > last && stations[i] < Double.POSITIVE_INFINITY)) {
                throw new InvalidValueException(
                        "speed plan, station " + i, stations[i], i == 0 ? "finite" : "finite, and above " + last);
            }
            if (!(speeds[i] >= 0 && speeds[i] < Double.POSITIVE_INFINITY)) {
                throw new InvalidValueException("speed plan, speed " + i, speeds[i], "finite, zero or above, in m/s");
            }
            last = stations[i];
        }
    }

    /** First station, m. */
    public double opening() {
        return stations[0];
    }

    /** Whether the station lies between the first and the last one. */
    public boolean covers(double station) {
        return station >= stations[0] && station <= stations[stations.length - 1];
    }

    /** Last station, m. */
    public double end() {
        return stations[stations.length - 1];
    }

    /** Speed expected, m/s: its square runs linearly between the stations. */
    public double speed(double station) {
        int i = Rising.cell(stations, station);
        double share = Bounds.clamp(0, (station - stations[i]) / (stations[i + 1] - stations[i]), 1);
        double square = speeds[i] * speeds[i] * (1 - share) + speeds[i + 1] * speeds[i + 1] * share;
        return Math.sqrt(square);
    }

    /** Acceleration that the plan implies, m/s². */
    public double acceleration(double station) {
        if (Double.isNaN(station)) {
            return station;
        }
        int i = Rising.cell(stations, station);
        return (speeds[i + 1] * speeds[i + 1] - speeds[i] * speeds[i]) / (2 * (stations[i + 1] - stations[i]));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SpeedPlan plan
                && Arrays.equals(stations, plan.stations)
                && Arrays.equals(speeds, plan.speeds);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(stations) + Arrays.hashCode(speeds);
    }

    @Override
    public double[] stations() {
        return stations.clone();
    }

    @Override
    public double[] speeds() {
        return speeds.clone();
    }
}
