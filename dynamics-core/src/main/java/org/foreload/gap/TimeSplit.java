package org.foreload.gap;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.foreload.entry.EntryResult;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/**
 * Where along the line one entry gains on another. Gaps are times of the other less times of this one, at the same
 * station: positive where this one is ahead. Both must have been driven on the same line from the same approach.
 *
 * @param byBraking s gained from the start of the approach to turn-in: by braking later, since both come flat out until
 *     the earlier of the two brake points
 * @param byTurning s gained from turn-in to the apex
 * @param byExit s gained from the apex to the end of the exit
 * @param total s gained in all; the three parts sum to it
 * @param brakesLater how much later this entry brakes, m; negative if it brakes earlier
 * @param curve gap so far over station: columns {@code s_m}, {@code gap_s}; exact at turn-in, apex and both ends,
 *     elsewhere to a fraction of a millisecond, since time is read linearly between rows of the profiles
 * @param frontGrip {@linkplain FrontGrip what braking gives the front axle and takes from it} in this entry
 * @param sentence the same in words
 */
public record TimeSplit(
        double byBraking,
        double byTurning,
        double byExit,
        double total,
        double brakesLater,
        Trace curve,
        Trace frontGrip,
        String sentence) {

    /** Refuses null. */
    public TimeSplit {
        Objects.requireNonNull(curve, "curve");
        Objects.requireNonNull(frontGrip, "frontGrip");
        Objects.requireNonNull(sentence, "sentence");
    }

    /** Time, s, below which a part is not worth a word. */
    private static final double WORTH_A_WORD = 0.0005;

    /**
     * Compares two entries that made the corner, with their profiles.
     *
     * @param car that drove {@code entry}
     * @param apex station of the apex, m, between turn-in and the end of the line
     * @param entry this one
     * @param other the one compared with
     * @throws IllegalArgumentException if an entry was made without profile or did not make the corner
     */
    public static TimeSplit between(Car car, double apex, EntryResult entry, EntryResult other) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(other, "other");
        if (!entry.made() || !other.made()) {
            throw new IllegalArgumentException("only entries that made the corner have a time to compare");
        }
        Trace mine = Profiles.of(entry);
        Trace theirs = Profiles.of(other);
        double atTurnIn = gap(mine, theirs, 0);
        double atApex = gap(mine, theirs, apex);
        double total = other.time() - entry.time();
        Trace.Builder curve = new Trace.Builder().column("s_m", "m").column("gap_s", "s");
        var stations = mine.column("s_m");
        for (int i = 0; i < mine.rows(); i++) {
            curve.row(stations.at(i), gap(mine, theirs, stations.at(i)));
        }
        double later = entry.plan().brakePoint() - other.plan().brakePoint();
        double byTurning = atApex - atTurnIn;
        double byExit = total - atApex;
        Trace grip = FrontGrip.of(car, entry);
        String sentence = sentence(atTurnIn, byTurning, byExit, total, later)
                + grip(grip, apex, entry.plan().release().end());
        return new TimeSplit(atTurnIn, byTurning, byExit, total, later, curve.build(), grip, sentence);
    }

    private static double gap(Trace mine, Trace theirs, double station) {
        return Profiles.timeAt(theirs, station) - Profiles.timeAt(mine, station);
    }

    private static String sentence(double braking, double turning, double exit, double total, double later) {
        // Braking later is a reason to be ahead at turn-in, and braking earlier one to be behind.
        boolean reason = braking >= 0 == later >= 0;
        String brakes = format(
                "%s braking %.1f m %s",
                reason ? "from" : "before turn-in, though", Math.abs(later), later >= 0 ? "later" : "earlier");
        List<String> gains = new ArrayList<>();
        List<String> losses = new ArrayList<>();
        boolean ahead = total >= 0;
        sort(braking, brakes, gains, losses, ahead);
        sort(turning, "between turn-in and apex", gains, losses, ahead);
        sort(exit, "on the exit", gains, losses, ahead);
        String start = format("%.3f s %s", Math.abs(total), ahead ? "quicker" : "slower");
        String because = gains.isEmpty() ? "" : ", of which " + String.join(", ", gains);
        String but = losses.isEmpty() ? "" : (ahead ? "; it loses " : "; it gains ") + String.join(", ", losses);
        return start + because + but + ".";
    }

    private static void sort(double part, String where, List<String> gains, List<String> losses, boolean ahead) {
        if (Math.abs(part) >= WORTH_A_WORD) {
            (part > 0 == ahead ? gains : losses).add(format("%.3f s %s", Math.abs(part), where));
        }
    }

    /** What the brake gives the front axle and takes from it, all the way from turn-in to the apex. */
    private static String grip(Trace grip, double apex, double releaseEnd) {
        if (releaseEnd <= 0) {
            return " The brake is off before turn-in, so it gives the front axle nothing in the corner.";
        }
        var station = grip.column("s_m");
        var net = grip.column("net_n");
        double most = 0;
        double least = 0;
        double sum = 0;
        double turns = Double.NaN;
        double way = 0;
        for (int i = 1; i < grip.rows() && station.at(i) <= Math.min(apex, releaseEnd); i++) {
            if (station.at(i - 1) < 0) {
                continue;
            }
            double step = station.at(i) - station.at(i - 1);
            sum += step * (net.at(i) + net.at(i - 1)) / 2;
            way += step;
            most = Math.max(most, net.at(i));
            least = Math.min(least, net.at(i));
            turns = net.at(i) > 0 && net.at(i - 1) <= 0 ? station.at(i) : turns;
        }
        if (!(way > 0)) {
            return "";
        }
        String mean = format(
                " From turn-in to brake off, braking %s the front axle %.0f N of lateral grip on average",
                sum >= 0 ? "gives" : "costs", Math.abs(sum / way));
        if (most <= 0) {
            return mean + format(": it costs grip all the way, at most %.0f N.", -least);
        }
        if (least >= 0) {
            return mean + format(", at most %.0f N.", most);
        }
        return mean
                + format(
                        ": it takes up to %.0f N%s, and adds up to %.0f N%s.",
                        -least,
                        Double.isNaN(turns) ? "" : format(" until %.0f m after turn-in", turns),
                        most,
                        Double.isNaN(turns) ? " elsewhere" : " from there on");
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
