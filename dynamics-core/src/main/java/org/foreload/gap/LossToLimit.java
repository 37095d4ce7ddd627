package org.foreload.gap;

import java.util.List;
import java.util.Objects;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.limit.Band;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/**
 * How much an entry loses to perfect hands and feet near the same line, and where. The ideal of
 * {@link org.foreload.ideal} has no lags, so the time above it mixes what no driver could help with what this one gave
 * away; the time above the limit is the latter alone. A part below zero is a stretch in which the entry is ahead: it
 * may brake later than the limit and pay for it further on.
 *
 * @param limitTime time of the limit, s
 * @param toTurnIn s lost from the start of the approach to turn-in
 * @param toApex s lost from turn-in to the apex
 * @param toExit s lost from the apex to the end of the exit
 * @param curve loss so far over station: columns {@code s_m}, {@code lost_s}, a row for each row of the entry's
 *     profile; time is read linearly between the points of either
 */
public record LossToLimit(double limitTime, double toTurnIn, double toApex, double toExit, Trace curve) {

    /** Refuses null. */
    public LossToLimit {
        Objects.requireNonNull(curve, "curve");
    }

    /** How far, m, perfect hands may leave the line to each side: about as far as a driver does who keeps to it. */
    private static final double BAND = 0.15;

    /** Shortest build-up of the brake, s, that the limit is solved with: a step has no rate. */
    private static final double SHORTEST_BUILD_UP = 0.01;

    /** Where the perfect hands that an entry is compared with may go: near the line. */
    public static Band band() {
        return Band.within(BAND);
    }

    /**
     * Perfect hands and feet with the lags of a driver, on a brake a little below what locks a wheel in a straight
     * line.
     *
     * @param buildUpTime in which the foot comes down to the peak, s
     */
    public static Hands hands(Car car, Corner corner, DriverSettings driver, double buildUpTime) {
        Objects.requireNonNull(driver, "driver");
        Hands usual = Hands.practised(Limit.peakDeceleration(car, corner));
        return new Hands(
                driver.hands().rate(),
                driver.leftFoot().lag(),
                driver.rightFoot().lag(),
                Math.max(SHORTEST_BUILD_UP, buildUpTime),
                usual.peakDeceleration(),
                usual.axleShare(),
                usual.brakeUntil(),
                usual.mostSideslip());
    }

    /**
     * Compares an entry with the limit of the same car on the same line from the same approach.
     *
     * @param apex station of the apex, m, between turn-in and the end of the line
     * @param entry with its profile
     * @param limit a limit that converged
     * @throws IllegalArgumentException if the entry was made without profile or did not make the corner, or if the
     *     limit did not converge
     */
    public static LossToLimit of(double apex, EntryResult entry, LimitResult limit) {
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(limit, "limit");
        if (!entry.made()) {
            throw new IllegalArgumentException("only an entry that made the corner has a time to compare");
        }
        if (!limit.converged()) {
            throw new IllegalArgumentException("a limit that did not converge has no time to compare with");
        }
        Trace profile = Profiles.of(entry);
        Trace best = profile(limit);
        Trace.Builder curve = new Trace.Builder().column("s_m", "m").column("lost_s", "s");
        Trace.Column stations = profile.column("s_m");
        for (int i = 0; i < profile.rows(); i++) {
            curve.row(stations.at(i), lost(profile, best, stations.at(i)));
        }
        double atTurnIn = lost(profile, best, 0);
        double atApex = lost(profile, best, apex);
        double total = entry.time() - limit.time();
        return new LossToLimit(limit.time(), atTurnIn, atApex - atTurnIn, total - atApex, curve.build());
    }

    private static Trace profile(LimitResult limit) {
        Trace.Builder rows = new Trace.Builder().column("s_m", "m").column("time_s", "s");
        List<LimitPoint> points = limit.points();
        points.forEach(point -> rows.row(point.station(), point.time()));
        return rows.build();
    }

    private static double lost(Trace entry, Trace limit, double station) {
        return Profiles.timeAt(entry, station) - Profiles.timeAt(limit, station);
    }

    /** Time lost in all, s. */
    public double total() {
        return toTurnIn + toApex + toExit;
    }

    /** Time lost as a share of the limit. */
    public double share() {
        return total() / limitTime;
    }
}
