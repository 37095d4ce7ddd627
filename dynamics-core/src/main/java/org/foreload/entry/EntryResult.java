package org.foreload.entry;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.Checks;
import org.foreload.trace.Trace;

/**
 * One simulated entry. Stations are metres along the line, 0 at turn-in and negative on the approach.
 *
 * @param plan the brake plan it was driven with
 * @param outcome how it ended
 * @param longestLock longest time for which a wheel stood in one go, s; zero if none did
 * @param events what happened, in the order of the line
 * @param turnInSpeed m/s at station zero; NaN if the car did not get there
 * @param topSpeed highest speed up to the brake point, m/s
 * @param minimumSpeed lowest speed after the brake point, m/s; NaN if the car did not get beyond that
 * @param minimumSpeedAt its station, m; NaN likewise
 * @param time from the start of the approach to the end of the exit, s; NaN unless the car got there
 * @param trailShare speed shed after turn-in over all speed shed from the brake point to the minimum, 0 to 1; NaN if
 *     none was shed, the foot never came down on the brake, or the car did not get to turn-in
 * @param farthestOffset greatest distance from the line, m
 * @param lockReserve how much harder, as a share, the brake could have been before a wheel stopped, where that was
 *     least; zero if one stopped, infinite if there was no braking or none can stop
 * @param margins what was left unused
 * @param limit what came closest to its limit on the way in
 * @param profile the run by station; empty for a run made or kept without profile
 * @param evaluations evaluations of the equations of motion that it took
 */
public record EntryResult(
        BrakePlan plan,
        Outcome outcome,
        double longestLock,
        List<EntryEvent> events,
        double turnInSpeed,
        double topSpeed,
        double minimumSpeed,
        double minimumSpeedAt,
        double time,
        double trailShare,
        double farthestOffset,
        double lockReserve,
        Margins margins,
        Limit limit,
        Optional<Trace> profile,
        long evaluations) {

    /** Copies the events. */
    public EntryResult {
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(outcome, "outcome");
        Objects.requireNonNull(margins, "margins");
        Objects.requireNonNull(limit, "limit");
        Objects.requireNonNull(profile, "profile");
        events = List.copyOf(Objects.requireNonNull(events, "events"));
    }

    /** Whether the car made the corner. */
    public boolean made() {
        return outcome == Outcome.MADE_IT;
    }

    /** Why it ended as it did, in one line. */
    public String cause() {
        return EntryCause.describe(this);
    }

    /** The same entry without its profile, of which a sweep would keep thousands. */
    public EntryResult withoutProfile() {
        return new EntryResult(
                plan,
                outcome,
                longestLock,
                events,
                turnInSpeed,
                topSpeed,
                minimumSpeed,
                minimumSpeedAt,
                time,
                trailShare,
                farthestOffset,
                lockReserve,
                margins,
                limit,
                Optional.empty(),
                evaluations);
    }

    /**
     * Whether the foot came down on the brake at all: a plan may put its brake point at the end of its own release, or
     * beyond where the run ended. One before the start of the line counts as braked there.
     */
    public boolean braked() {
        return event(EntryEvent.Kind.BRAKE_ON).isPresent();
    }

    /**
     * Station at which the foot first asks for drive after the brake, m; NaN where no drive comes. The plan with its
     * pick-up point there drives the same entry.
     */
    public double pickUp() {
        return event(EntryEvent.Kind.PICK_UP).map(EntryEvent::station).orElse(Double.NaN);
    }

    /**
     * What went wrong first: a wheel that stopped, or an axle that had no more lateral force to give in the turn. A
     * lock comes before the saturation that goes with it. Empty where nothing did, or where a run without profile shows
     * no lock.
     */
    public Optional<EntryEvent> wentFirst() {
        return EntryCause.wentFirst(outcome, events);
    }

    /** The first event of a kind. */
    public Optional<EntryEvent> event(EntryEvent.Kind kind) {
        Objects.requireNonNull(kind, "kind");
        for (EntryEvent event : events) {
            if (event.kind() == kind) {
                return Optional.of(event);
            }
        }
        return Optional.empty();
    }

    /**
     * What an entry left unused on the way in, and over its whole length. The way in begins where the throttle has gone
     * after the brake point, or the brake outweighs it. It ends where the throttle comes, at the latest at the apex, or
     * at the slowest point where that lies beyond it.
     *
     * @param onBrake what the axles had left while the brake was on
     * @param offBrake what they had left before and after that
     * @param rollOver lateral force that the car could still have answered to without its inner wheels leaving the
     *     road, as a share of all that it could, where that was least; on the way in, but up to the apex even where the
     *     throttle has come; NaN where an axle was nearer to its limit there
     * @param edge distance, m, between the CG and the edge of the track where they came closest; negative beyond it
     */
    public record Margins(AxleMargins onBrake, AxleMargins offBrake, double rollOver, double edge) {

        /** Refuses null. */
        public Margins {
            Objects.requireNonNull(onBrake, "onBrake");
            Objects.requireNonNull(offBrake, "offBrake");
        }

        /** What the axles left unused wherever the brake was on or off; shares, and m. */
        public Margins(double front, double rear, double rollOver, double edge) {
            this(new AxleMargins(front, rear), new AxleMargins(front, rear), rollOver, edge);
        }

        /** Friction that the front axle still had at its fullest, as a share of all it had; on the way in. */
        public double front() {
            return Math.min(onBrake.front(), offBrake.front());
        }

        /** The same for the rear axle. */
        public double rear() {
            return Math.min(onBrake.rear(), offBrake.rear());
        }

        /**
         * What came closest to its limit: an axle, or the car to rolling over; the axles where they are equally near.
         *
         * @param keptFront share of the front axle's friction that does not count as left
         * @param keptRear the same for the rear axle
         * @throws org.foreload.conventions.InvalidValueException if one of them is NaN
         */
        public Limit fullest(double keptFront, double keptRear) {
            double leftFront = front() - Checks.number("kept_front", keptFront);
            double leftRear = rear() - Checks.number("kept_rear", keptRear);
            if (rollOver < leftFront && rollOver < leftRear) {
                return Limit.ROLL_OVER;
            }
            return leftFront <= leftRear ? Limit.FRONT_AXLE : Limit.REAR_AXLE;
        }
    }

    /**
     * What the axles left unused on a stretch of the way in.
     *
     * @param front friction that the front axle still had at its fullest, as a share of all it had; 1 where there was
     *     no such stretch
     * @param rear the same for the rear axle
     */
    public record AxleMargins(double front, double rear) {}

    /** What limits an entry. */
    public enum Limit {
        /** The front axle was fullest. */
        FRONT_AXLE("front axle"),
        /** The rear axle was fullest. */
        REAR_AXLE("rear axle"),
        /** The edge of the track, or the drift allowed. */
        TRACK_EDGE("track edge"),
        /** A wheel locked. */
        LOCK("lock"),
        /** The inner wheels left the road, or were nearer to that than the axles to their friction. */
        ROLL_OVER("roll-over");

        private final String words;

        Limit(String words) {
            this.words = words;
        }

        /** In words, for reports. */
        public String words() {
            return words;
        }
    }
}
