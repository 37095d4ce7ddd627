package org.foreload.braking;

import java.util.Objects;
import java.util.OptionalDouble;
import org.foreload.conventions.Checks;

/**
 * How a driver brakes for a corner, the brake point still open: how hard, how the brake comes off, where the throttle
 * is picked up, and what disturbs the pedal. {@link #from} makes a {@link BrakePlan} of it. Decelerations are positive,
 * and are what the brakes alone ask for (brake force over mass): drag slows the car on top of that.
 *
 * @param peakDeceleration brake force over mass at the peak, m/s²
 * @param buildUpTime time in which the foot reaches the peak, s
 * @param release how the brake comes off
 * @param pickUp station from which the driver asks for drive again, m; empty: from brake off on, as soon as the grip
 *     leaves anything for it
 * @param disturbance what the foot or the pedal makes of it
 */
public record Braking(
        double peakDeceleration,
        double buildUpTime,
        Release release,
        OptionalDouble pickUp,
        PedalDisturbance disturbance) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Braking {
        Objects.requireNonNull(pickUp, "pickUp");
        Checks.positive("peak_deceleration", peakDeceleration);
        Checks.notNegative("build_up_time", buildUpTime);
        Objects.requireNonNull(release, "release");
        pickUp.ifPresent(station -> Checks.finite("pick_up", station));
        Objects.requireNonNull(disturbance, "disturbance");
    }

    /**
     * Braking as intended, with a calm foot and drive as soon as the brake is off and the grip leaves anything for it.
     *
     * @param peakDeceleration brake force over mass at the peak, m/s², above zero
     * @param buildUpTime time in which the foot reaches the peak, s, zero or above
     * @param release how the brake comes off
     */
    public static Braking of(double peakDeceleration, double buildUpTime, Release release) {
        return new Braking(peakDeceleration, buildUpTime, release, OptionalDouble.empty(), PedalDisturbance.NONE);
    }

    /** The plan that brakes like this with the foot coming down at a station, m: negative on the approach. */
    public BrakePlan from(double brakePoint) {
        return new BrakePlan(brakePoint, this);
    }

    /** The same with another peak, m/s². */
    public Braking withPeakDeceleration(double peak) {
        return new Braking(peak, buildUpTime, release, pickUp, disturbance);
    }

    /** The same with drive asked for from this station on, m. */
    public Braking withPickUp(double station) {
        return new Braking(peakDeceleration, buildUpTime, release, OptionalDouble.of(station), disturbance);
    }

    /** The same with another release. */
    public Braking with(Release release) {
        return new Braking(peakDeceleration, buildUpTime, release, pickUp, disturbance);
    }

    /** The same with another foot or pedal. */
    public Braking with(PedalDisturbance disturbance) {
        return new Braking(peakDeceleration, buildUpTime, release, pickUp, disturbance);
    }

    /** The same with the whole release moved along the line by so many metres; earlier where negative. */
    public Braking withReleaseLater(double metres) {
        return with(new Release(release.shape(), release.start() + metres, release.end() + metres));
    }

    /**
     * The same in the digits that plans are given in: the peak rounded down to hundredths of m/s², but not to zero;
     * start and end of the release rounded to decimetres.
     */
    public Braking rounded() {
        double start = Math.rint(release.start() * 10) / 10;
        double end = Math.max(start, Math.rint(release.end() * 10) / 10);
        return withPeakDeceleration(Math.max(1, Math.floor(peakDeceleration * 100 + BrakePlan.ROUNDING)) / 100)
                .with(new Release(release.shape(), start, end));
    }
}
