package org.foreload.examples.answer;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.ideal.IdealProfile;
import org.foreload.vehicle.Car;

/** Turns of phrase for stations, brakes and shares. */
public final class Words {

    /** Explains the brake point, wherever it is shown. */
    public static final String BRAKE_POINT =
            "Brake point: where the foot comes down. Stations are metres along the line, 0 at "
                    + "turn-in (where the line starts to bend), negative before it.";

    private static final String ANTI_LOCK =
            "With anti-lock brakes the peak of a plan is what the pedal asks for: the wheels give as much of it as they "
                    + "hold.";

    /** Explains the peak of a plan where the car's brakes do not give it; empty where they do. */
    public static Optional<String> heldBack(Car car) {
        return car.antiLock() ? Optional.of(ANTI_LOCK) : Optional.empty();
    }

    /** A report that explains stations, and a peak that the brakes do not give. */
    static Report places(Report report, Car car) {
        Report more = report.note(BRAKE_POINT);
        return heldBack(car).map(more::note).orElse(more);
    }

    /** Explains the trail share, wherever it is shown. */
    public static final String TRAIL_SHARE =
            "Trail share: the part of all slowing that is done after turn-in, while the car is turning.";

    /** Explains what is in hand, wherever it is shown. */
    public static final String IN_HAND =
            "In hand: the largest error that the car still forgives, in metres: braking that much later, easing that much "
                    + "later from release point to brake off, or pressing 2.5 % harder for each metre. An error by "
                    + "which the car would only stop too early counts as forgiven: its driver lets go of the brake.";

    /** Explains what the margin costs, wherever it is shown. */
    public static final String MARGIN_COST =
            "Margin cost: how much quicker the same release would be from its own quickest brake point, with nothing in "
                    + "hand. It is next to nothing where braking later does not pay: the car then runs wide of its line and "
                    + "picks up the throttle later. Another release with nothing in hand may gain more: --no-margin.";

    /** Said where straight-line braking slows for a bend behind another. */
    public static final String SLOWS_FOR_A_LATER_BEND =
            "Much of that is no merit of the release: straight-line braking must be over before the first bend, and slows "
                    + "the car there for a tighter one that comes later.";

    private static final String NO_BRAKING = "no braking at all";

    /** Said where nobody brakes. */
    public static final String NOTHING_TO_BRAKE = "This corner needs no brake: how it is released gains nothing.";

    /** Said where the best entry has a brake that hardly slows it, and not braking is as good. */
    static final String HARDLY_BRAKES = "This corner needs no brake: the best hardly slows with it, and what it gains "
            + "on not braking is a later lift of the throttle.";

    /** Said where an entry is quicker than the bound: what the bound takes for given. */
    static final String UNDER_THE_BOUND =
            "The bound keeps to the very line, and turns in as quickly as it bends; this entry leaves it a little.";

    private Words() {}

    /** Said where straight-line braking is the best release, of all or, after a stop, of what was tried. */
    public static String nothingToTrail(boolean complete) {
        return complete
                ? "The best release is straight-line braking: trailing the brake gains nothing."
                : "So far straight-line braking is the quickest.";
    }

    /** {@code 12.3 m before turn-in}. */
    public static String place(double station) {
        return beside(station, Numbers.rounded(Math.abs(station), 1), "0.0");
    }

    /** A place as boards beside the track would show it: {@code 12 m before turn-in}. */
    public static String board(double station) {
        return beside(station, Numbers.rounded(Math.abs(station), 0), "0");
    }

    /** The metre that {@link #board(double)} shows: differences of these agree with what stands beside them. */
    public static long metre(double station) {
        return (long) Math.rint(station);
    }

    /** A brake point as boards would show it: the last whole metre before it, never one after. */
    public static String brakeBoard(double station) {
        return board(Math.floor(station));
    }

    private static String beside(double station, String distance, String none) {
        if (distance.equals(none)) {
            return "at turn-in";
        }
        return distance + (station < 0 ? " m before turn-in" : " m after turn-in");
    }

    /**
     * {@code brake 118 m before turn-in, peak 9.24 m/s² (0.94 g), release point 5 m before turn-in, brake off 28 m
     * after turn-in (held release)}. Where the brake point lies inside the release, the peak is never reached, and the
     * words say so; where it lies behind it, nobody brakes. A release all at once has one place, where the brake is
     * off.
     */
    public static String brake(BrakePlan plan, Units units) {
        return brake(plan, "", units);
    }

    private static String brake(BrakePlan plan, String reached, Units units) {
        var release = plan.release();
        if (plan.brakePoint() >= release.end()) {
            return NO_BRAKING;
        }
        String brake = "brake " + brakeBoard(plan.brakePoint()) + ", ";
        String off = "brake off " + board(release.end());
        String shape = release.shape().name() + " release";
        if (intoRelease(plan)) {
            return brake + press(plan, units) + ", easing at once, " + off + " (" + shape + " of "
                    + units.deceleration(plan.peakDeceleration()) + " that starts " + board(release.start()) + ")";
        }
        String peak = brake + press(plan, units) + reached + ", ";
        return atOnce(plan)
                ? peak + off + ", all at once"
                : peak + "release point " + board(release.start()) + ", " + off + " (" + shape + ")";
    }

    /** {@code peak 7.90 m/s² (0.81 g)}, or the most that is reached where the brake point lies inside the release. */
    public static String press(BrakePlan plan, Units units) {
        return (intoRelease(plan) ? "to at most " : "peak ") + units.deceleration(hardest(plan));
    }

    /** The most that a plan asks of the brakes, m/s²: its peak, or what is left of it where the foot comes down. */
    static double hardest(BrakePlan plan) {
        return plan.peakDeceleration() * plan.release().remaining(plan.brakePoint());
    }

    /**
     * Where the foot begins to ease, m: at the release point, or as it comes down where that lies behind it; where the
     * brake is off if that is all at once.
     */
    public static double eases(BrakePlan plan) {
        return atOnce(plan) ? plan.release().end() : Math.max(plan.release().start(), plan.brakePoint());
    }

    /** Whether the brake comes off all at once, so that there is no easing to start. */
    public static boolean atOnce(BrakePlan plan) {
        Release release = plan.release();
        return release.start() == release.end() || release.shape() == ReleaseShapes.ABRUPT;
    }

    /**
     * The most that was asked of the brakes alone in an entry whose foot begins to ease before it has reached the peak,
     * m/s²; empty where it reaches it, where it comes down inside the release, or without a profile.
     */
    public static OptionalDouble shortOfPeak(EntryResult entry) {
        double most = entry.profile().stream()
                .flatMapToDouble(
                        profile -> Arrays.stream(profile.column("brake_mps2").values()))
                .max()
                .orElse(Double.NaN);
        return most < REACHED * entry.plan().peakDeceleration() && !intoRelease(entry.plan())
                ? OptionalDouble.of(most)
                : OptionalDouble.empty();
    }

    /** Share of a peak from which on it counts as reached: rows of a profile need not meet a short one. */
    private static final double REACHED = 0.99;

    /** Whether the brake point lies inside the release. */
    public static boolean intoRelease(BrakePlan plan) {
        return plan.release().remaining(plan.brakePoint()) < 1;
    }

    /** How an entry was braked, in one phrase. */
    public static String brake(EntryResult entry, Units units) {
        String reached = shortOfPeak(entry).stream()
                .mapToObj(most -> ", of which " + units.deceleration(most) + " is reached")
                .findFirst()
                .orElse("");
        return entry.braked() ? brake(entry.plan(), reached, units) + pickUp(entry) : NO_BRAKING;
    }

    private static String pickUp(EntryResult entry) {
        return Double.isNaN(entry.pickUp()) ? "" : ", pick-up " + board(entry.pickUp());
    }

    /** Least share that does not read as none. */
    static final double PERCENT_SHOWN = 0.0005;

    /** A share as a percentage with one decimal. */
    public static String percent(double share) {
        return Numbers.rounded(100 * share, 1) + " %";
    }

    /** How far a time is from a bound: {@code 1.9 % above}, which is the slower side. */
    public static String besideBound(double above) {
        return percent(Math.abs(above)) + (above < -PERCENT_SHOWN ? " below" : " above");
    }

    /** Seconds with two decimals. */
    public static String seconds(double time) {
        return Numbers.rounded(time, 2) + " s";
    }

    /** The first letter raised. */
    public static String sentence(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** Where a car that cannot climb its line comes to a standstill; empty if it has the power, or the momentum. */
    public static Optional<String> standstill(IdealProfile profile) {
        if (Double.isFinite(profile.time())) {
            return Optional.empty();
        }
        double at = IntStream.range(0, profile.size())
                .filter(i -> profile.speed(i) == 0)
                .mapToDouble(profile::station)
                .findFirst()
                .orElseThrow();
        return Optional.of("The car cannot climb this line: it comes to a standstill " + place(at) + ".");
    }
}
