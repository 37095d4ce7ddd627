package org.foreload.examples.gallery;

import java.util.Arrays;
import org.foreload.entry.EntryResult;
import org.foreload.trace.Trace;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * The way of one axle through its friction ellipse, both half-axes drawn as 100 %. The distance from the middle is the
 * grip used as simulated; the part that brakes or drives is the force asked for over the peak of both wheels; the rest
 * corners.
 *
 * @param stations m
 * @param lateral per cent, positive to the left
 * @param longitudinal per cent, negative when braking
 */
record FrictionPath(double[] stations, double[] lateral, double[] longitudinal) {

    static FrictionPath of(Car car, EntryResult entry, double apex, boolean front) {
        Trace trace = entry.profile().orElseThrow();
        double first = entry.braked() ? entry.plan().brakePoint() : 0;
        Stretch part = new Stretch(trace, Math.min(first, 0), apex);
        double[] s = part.stations();
        String axle = front ? "front" : "rear";
        double[] use = part.column(axle + "_utilisation");
        double[] left = part.column(axle + "_left_load_n");
        double[] right = part.column(axle + "_right_load_n");
        double[] brake = part.column("brake_mps2");
        double[] drive = part.column("drive_mps2");
        double[] turning = part.column("lateral_acceleration_mps2");
        Tyre tyre = front ? car.frontTyre() : car.rearTyre();
        double brakeShare = front ? car.frontBrakeShare() : 1 - car.frontBrakeShare();
        double driven = car.driveline().drivenAxle().frontShare();
        double driveShare = front ? driven : 1 - driven;
        double[] lateral = new double[s.length];
        double[] longitudinal = new double[s.length];
        for (int i = 0; i < s.length; i++) {
            double force = car.chassis().mass() * (driveShare * drive[i] - brakeShare * brake[i]);
            double peak = tyre.peakForceX(left[i]) + tyre.peakForceX(right[i]);
            double along = Math.max(-use[i], Math.min(use[i], peak > 0 ? force / peak : 0));
            longitudinal[i] = 100 * along;
            lateral[i] = Math.copySign(100 * Math.sqrt(Math.max(0, use[i] * use[i] - along * along)), turning[i]);
        }
        return new FrictionPath(s, lateral, longitudinal);
    }

    /** Index of the first station at or after {@code s}; −1 if there is none. */
    int indexOf(double s) {
        int found = Arrays.binarySearch(stations, s);
        int index = found >= 0 ? found : -found - 1;
        return index < stations.length ? index : -1;
    }
}
