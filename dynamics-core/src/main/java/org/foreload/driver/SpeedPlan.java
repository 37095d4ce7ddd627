package org.foreload.driver;

import java.util.Arrays;
import org.foreload.conventions.Bounds;

/**
 * The speed that the driver expects or aims for at each station: on the way out, from where the throttle opens; or
 * along a whole entry, as the plan of it leads one to expect.
 *
 * @param stations rising, m; for an exit the first is where the throttle opens
 * @param speeds m/s at the stations
 */
public record SpeedPlan(double[] stations, double[] speeds) {

    /** Copies the arrays. */
    public SpeedPlan {
        if (stations.length < 2 || stations.length != speeds.length) {
            throw new IllegalArgumentException("a speed plan needs two or more stations, each with a speed, not "
                    + stations.length + " and " + speeds.length);
        }
        stations = stations.clone();
        speeds = speeds.clone();
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
        int i = interval(station);
        double share = Bounds.clamp(0, (station - stations[i]) / (stations[i + 1] - stations[i]), 1);
        double square = speeds[i] * speeds[i] * (1 - share) + speeds[i + 1] * speeds[i + 1] * share;
        return Math.sqrt(square);
    }

    /** Acceleration that the plan implies, m/s². */
    public double acceleration(double station) {
        int i = interval(station);
        return (speeds[i + 1] * speeds[i + 1] - speeds[i] * speeds[i]) / (2 * (stations[i + 1] - stations[i]));
    }

    private int interval(double station) {
        int i = Arrays.binarySearch(stations, station);
        i = i >= 0 ? i : -i - 2;
        return Math.max(0, Math.min(i, stations.length - 2));
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
