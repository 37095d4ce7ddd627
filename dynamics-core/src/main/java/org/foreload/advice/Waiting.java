package org.foreload.advice;

import java.util.Arrays;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Channel;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.trace.Trace;

/**
 * A driver who is off the brake and does not yet ask for drive, while the car runs at its limit, waits for the car. Who
 * comes faster runs wide and waits longer: what is gained before is lost there. By how much hangs on the last per cent
 * of friction, and on how far the car is off the line that was meant, which no recording shows.
 */
final class Waiting {

    /** Span of a moment, s, as those from which the limits are read: noise of a sample does not count. */
    private static final double SPAN = 0.3;

    /** Stations at which the run is read, m. */
    private static final double STEP = 1;

    private Waiting() {}

    /**
     * Whether the driver waits for a car at its limit: for one moment at least its use is one within the band of the
     * limit.
     *
     * @param run the lap
     * @param did the corner
     * @param limits of the car
     */
    static boolean atTheLimit(Run run, RecordedCorner did, FrictionEnvelope limits) {
        double off = did.get(Measure.RELEASE_END).value();
        Estimate pickUp = did.get(Measure.PICK_UP);
        // A car is slowest where it is first driven: so without a throttle in the recording.
        double until = (pickUp.known() ? pickUp : did.get(Measure.SLOWEST)).value();
        if (!(until - off > ReplicaFit.AT_ONCE)) {
            return false;
        }
        Trace rows = run.resampled(STEP);
        Trace.Column clock = rows.column(Channel.TIME.field());
        double[] s = rows.column(Channel.DISTANCE.field()).values();
        int first = row(s, off);
        int end = row(s, until);
        for (int from = first; from < end; from++) {
            int to = from;
            while (to < end && clock.at(to) - clock.at(from) < SPAN) {
                to++;
            }
            if (clock.at(to) - clock.at(from) >= SPAN && full(rows, from, to, limits)) {
                return true;
            }
        }
        return false;
    }

    private static int row(double[] stations, double at) {
        int found = Arrays.binarySearch(stations, at);
        return Math.min(stations.length - 1, found >= 0 ? found : -found - 1);
    }

    private static boolean full(Trace rows, int from, int to, FrictionEnvelope limits) {
        double speed = mean(rows.column(Channel.SPEED.field()), from, to);
        double along = -mean(rows.column(Channel.LONGITUDINAL.field()), from, to);
        double across = mean(rows.column(Channel.LATERAL.field()), from, to);
        Estimate limit = limits.lateral(speed);
        return limits.use(speed, Math.max(0, along), across) >= limit.low() / limit.value();
    }

    private static double mean(Trace.Column column, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += column.at(i);
        }
        return sum / (to - from);
    }
}
