package org.foreload.examples.answer;

import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;

/** Turns of phrase for stations, brakes and shares. */
public final class Words {

    /** Explains the brake point, wherever it is shown. */
    public static final String BRAKE_POINT =
            "Brake point: where the foot comes down. Stations are metres along the line, 0 at "
                    + "turn-in (where the line starts to bend), negative before it.";

    /** Explains the trail share, wherever it is shown. */
    public static final String TRAIL_SHARE =
            "Trail share: the part of all slowing that is done after turn-in, while the car is turning.";

    /** Explains what is in hand, wherever it is shown. */
    public static final String IN_HAND =
            "In hand: the largest of these errors that the car still forgives: the foot comes down so many metres later, "
                    + "or the release comes so many metres later, or the peak is 2.5 % a metre harder.";

    private Words() {}

    /** {@code 12.3 m before turn-in}. */
    public static String place(double station) {
        String distance = Numbers.rounded(Math.abs(station), 1);
        if (distance.equals("0.0")) {
            return "at turn-in";
        }
        return distance + (station < 0 ? " m before turn-in" : " m after turn-in");
    }

    /** {@code from 12.3 m before turn-in}; {@code from turn-in}. */
    public static String from(double station) {
        String place = place(station);
        return "from " + (place.startsWith("at ") ? place.substring("at ".length()) : place);
    }

    /**
     * {@code brake 66.0 m before turn-in, to 7.90 m/s², ease off from … (smooth)}. Where the foot comes down after the
     * release has begun, the peak is never reached, and there is no place to ease off from: then so it is said.
     */
    public static String brake(BrakePlan plan) {
        var release = plan.release();
        String brake = "brake " + place(plan.brakePoint()) + ", " + press(plan);
        String shape = " (" + release.shape().name() + ")";
        if (intoRelease(plan)) {
            return brake + ", off " + place(release.end()) + shape + "; this release is one of "
                    + Numbers.rounded(plan.peakDeceleration(), 2) + " m/s² " + from(release.start());
        }
        return release.start() == release.end()
                ? brake + ", off at once " + place(release.end())
                : brake + ", ease off " + from(release.start()) + ", off " + place(release.end()) + shape;
    }

    /** {@code to 7.90 m/s²}, or how much at most where the release has begun before the foot comes down. */
    public static String press(BrakePlan plan) {
        double most = plan.peakDeceleration() * plan.release().remaining(plan.brakePoint());
        return (intoRelease(plan) ? "to at most " : "to ") + Numbers.rounded(most, 2) + " m/s²";
    }

    /** Whether the foot comes down where the release has already begun. */
    public static boolean intoRelease(BrakePlan plan) {
        return plan.release().remaining(plan.brakePoint()) < 1;
    }

    /** How an entry was braked, in one phrase. */
    public static String brake(EntryResult entry) {
        return entry.braked() ? brake(entry.plan()) + pickUp(entry) : "no braking at all";
    }

    private static String pickUp(EntryResult entry) {
        return Double.isNaN(entry.pickUp()) ? "" : ", pick up the throttle " + place(entry.pickUp());
    }

    /** A share as a percentage with one decimal. */
    public static String percent(double share) {
        return Numbers.rounded(100 * share, 1) + " %";
    }

    /** Seconds with two decimals. */
    public static String seconds(double time) {
        return Numbers.rounded(time, 2) + " s";
    }

    /** The first letter raised. */
    public static String sentence(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
