package org.foreload.gap;

import java.util.Objects;
import org.foreload.entry.EntryResult;
import org.foreload.trace.Trace;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * What braking gives the front axle and what it takes, station by station, in newtons of lateral force: load transfer
 * presses the front wheels down, and the brake uses up part of their friction (the friction ellipse of each wheel).
 */
public final class FrontGrip {

    private FrontGrip() {}

    /**
     * Columns {@code s_m}, {@code gained_by_load_n}, {@code spent_on_braking_n} and {@code net_n}, a row for each row
     * of the entry's profile.
     *
     * <p>Gained: lateral capacity of the front axle with the wheel loads as they are, less that with the load which the
     * brakes move forward, m·d·h/L with d the brake force that the wheels put on the road over mass, taken off again,
     * half from each wheel. What drag and cornering drag move is not counted: they do so with and without the brake.
     * Spent: that capacity, less what the brake force of each front wheel leaves of it; a wheel that stands still has
     * nothing left.
     *
     * @param car that drove the entry
     * @param entry with its profile
     * @throws IllegalArgumentException if the entry was made without profile
     */
    public static Trace of(Car car, EntryResult entry) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(entry, "entry");
        Trace profile = Profiles.of(entry);
        var station = profile.column("s_m");
        var left = profile.column("front_left_load_n");
        var right = profile.column("front_right_load_n");
        var brake = profile.column("brake_on_road_mps2");
        var beside = profile.column("front_beside_brake_n");
        Trace.Builder rows = new Trace.Builder()
                .column("s_m", "m")
                .column("gained_by_load_n", "N")
                .column("spent_on_braking_n", "N")
                .column("net_n", "N");
        Tyre tyre = car.frontTyre();
        double perDeceleration =
                car.chassis().mass() * car.chassis().cgHeight() / car.chassis().wheelbase();
        for (int i = 0; i < profile.rows(); i++) {
            double moved = perDeceleration * brake.at(i);
            double capacity = tyre.peakForceY(left.at(i)) + tyre.peakForceY(right.at(i));
            double unmoved = tyre.peakForceY(left.at(i) - moved / 2) + tyre.peakForceY(right.at(i) - moved / 2);
            double kept = beside.at(i);
            rows.row(station.at(i), capacity - unmoved, capacity - kept, kept - unmoved);
        }
        return rows.build();
    }
}
