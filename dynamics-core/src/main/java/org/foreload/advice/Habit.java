package org.foreload.advice;

import java.util.Arrays;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Channel;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.trace.Trace;

/**
 * What a driver does in a corner lap after lap.
 *
 * <p>A driver who is off the brake and does not yet ask for drive, while the car runs at its limit, waits for the car.
 * Who comes faster runs wide and waits longer: what is gained before is lost there. By how much hangs on the last per
 * cent of friction, and on how far the car is off the line that was meant, which no recording shows.
 *
 * @param scatter from lap to lap
 * @param waits how far the car runs at its limit between brake off and pick-up, m, as {@link #waits(Run,
 *     RecordedCorner, FrictionEnvelope)} measures it
 */
public record Habit(DriverScatter scatter, double waits) {

    /** Why a driver who waits for the car gets no advice that lets the car come faster. */
    static final String AT_THE_LIMIT =
            "between brake off and pick-up the car is at its limit already, so that arriving faster only means waiting longer "
                    + "for the throttle";

    /**
     * Checks the number; throws {@link org.foreload.conventions.InvalidValueException} with the field's name, null by
     * it too.
     */
    public Habit {
        Objects.requireNonNull(scatter, "scatter");
        Checks.notNegative("waits_m", waits);
    }

    /**
     * Whether the driver waits for a car at its limit. Any wait counts: it begins with a whole moment, in which the car
     * already goes as far as a pick-up may come late to count as one at once, 6 m at 20 m/s.
     */
    boolean atTheLimit() {
        return waits > 0;
    }

    /**
     * How far the car runs at its limit between brake off and pick-up, m: from there on a moment of 0.3 s uses as much
     * of the friction as a driver ever does, 97 % (common practice, no source). Zero for one who picks up at once.
     *
     * @param run a lap
     * @param did a corner of it
     * @param limits of the car
     */
    public static double waits(Run run, RecordedCorner did, FrictionEnvelope limits) {
        Objects.requireNonNull(run, "run");
        Objects.requireNonNull(did, "did");
        Objects.requireNonNull(limits, "limits");
        if (!did.braked()) {
            return 0;
        }
        Estimate pickUp = did.get(Measure.PICK_UP);
        // A car is slowest where it is first driven: so without a throttle in the recording.
        double until = (pickUp.known() ? pickUp : did.get(Measure.SLOWEST)).value();
        Trace rows = run.resampled(STEP);
        double[] stations = rows.column(Channel.DISTANCE.field()).values();
        int first = row(stations, did.get(Measure.RELEASE_END).value());
        return STEP * new Use(rows, limits).full(first, row(stations, until));
    }

    /** Span of a moment, s, as those from which the limits are read: the noise of a sample does not count. */
    private static final double SPAN = 0.3;

    /** Stations at which the run is read, m. */
    private static final double STEP = 1;

    private static int row(double[] stations, double at) {
        int found = Arrays.binarySearch(stations, at);
        return Math.min(stations.length - 1, found >= 0 ? found : -found - 1);
    }

    /** How much of the limits a run uses. */
    private static final class Use {

        private final Trace.Column time;
        private final Trace.Column speed;
        private final Trace.Column along;
        private final Trace.Column across;
        private final FrictionEnvelope limits;

        Use(Trace rows, FrictionEnvelope limits) {
            this.time = rows.column(Channel.TIME.field());
            this.speed = rows.column(Channel.SPEED.field());
            this.along = rows.column(Channel.LONGITUDINAL.field());
            this.across = rows.column(Channel.LATERAL.field());
            this.limits = limits;
        }

        /** Rows from which on a moment uses as much of the friction as a driver ever does. */
        private int full(int first, int end) {
            int full = 0;
            int to = first;
            for (int from = first; from < end; from++) {
                while (to < end && time.at(to) - time.at(from) < SPAN) {
                    to++;
                }
                boolean whole = time.at(to) - time.at(from) >= SPAN;
                full += whole && use(from, to) >= ReplicaFit.MOST_USE ? 1 : 0;
            }
            return full;
        }

        private double use(int from, int to) {
            return limits.use(
                    mean(speed, from, to), Math.max(0, -mean(along, from, to)), Math.abs(mean(across, from, to)));
        }

        private static double mean(Trace.Column column, int from, int to) {
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += column.at(i);
            }
            return sum / (to - from);
        }
    }
}
