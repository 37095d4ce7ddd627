package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.path.Path;
import org.foreload.recording.Channel;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;

/**
 * A run whose truth is known: simulated entries into one corner after another, joined by straights on which speed
 * changes steadily from the end of one to the start of the next.
 *
 * @param truth the run without any noise; columns named as the channels are
 * @param corners what was done in each corner
 */
public record MadeRun(Trace truth, List<Corner> corners) {

    /** Length of the straight between two corners, m, the same for every driver. */
    private static final double JOINT = 300;

    /** Throttle, as brake, is the acceleration asked for, m/s². */
    private static final Channel[] CHANNELS = {
        Channel.TIME,
        Channel.DISTANCE,
        Channel.SPEED,
        Channel.BRAKE,
        Channel.THROTTLE,
        Channel.STEERING,
        Channel.LONGITUDINAL,
        Channel.LATERAL,
        Channel.YAW_RATE,
        Channel.X,
        Channel.Y
    };

    /** Copies the corners. */
    public MadeRun {
        corners = List.copyOf(corners);
    }

    /**
     * One corner and how it is braked for.
     *
     * @param study car, corner and driver
     * @param plan how the driver brakes
     */
    public record Stage(CornerStudy study, BrakePlan plan) {}

    /**
     * What was done in a corner; stations in metres from the start of the run.
     *
     * @param brakeOn where the foot came down
     * @param releaseEnd where it was off
     * @param turnIn where the line starts to bend
     * @param apex middle of the tightest part of the line
     * @param slowest where speed was lowest
     * @param turnInSpeed m/s
     * @param minimumSpeed m/s
     * @param trailShare speed shed after turn-in over all speed shed
     * @param shape name of the release shape
     */
    public record Corner(
            double brakeOn,
            double releaseEnd,
            double turnIn,
            double apex,
            double slowest,
            double turnInSpeed,
            double minimumSpeed,
            double trailShare,
            String shape) {}

    /**
     * Drives through all corners.
     *
     * @throws IllegalArgumentException if an entry does not make its corner; its message says which
     */
    public static MadeRun drive(List<Stage> stages) {
        Joining joining = new Joining();
        for (Stage stage : stages) {
            EntryResult entry = stage.study().simulator().run(stage.plan());
            if (!entry.made()) {
                throw new IllegalArgumentException(
                        stage.study().simulator().corner().name() + ": " + entry.cause());
            }
            joining.add(stage, entry);
        }
        return new MadeRun(joining.rows.build(), joining.corners);
    }

    /** Time at a station of the run, s, without noise. */
    public double timeAt(double station) {
        return at("time_s", station);
    }

    /** Another column at a station. */
    public double at(String column, double station) {
        double[] s = truth.column(Channel.DISTANCE.field()).values();
        int i = java.util.Arrays.binarySearch(s, station);
        int low = Math.max(0, Math.min(s.length - 2, i >= 0 ? i : -i - 2));
        double share = (station - s[low]) / (s[low + 1] - s[low]);
        Trace.Column values = truth.column(column);
        return values.at(low) * (1 - share) + values.at(low + 1) * share;
    }

    /** Length of the run, m. */
    public double length() {
        Trace.Column s = truth.column(Channel.DISTANCE.field());
        return s.at(s.size() - 1);
    }

    /** Puts one entry behind the other. */
    private static final class Joining {

        private final Trace.Builder rows = new Trace.Builder();
        private final List<Corner> corners = new ArrayList<>();
        private double time;
        private double station;
        private double speed = Double.NaN;
        private double x;
        private double y;
        private double heading;

        Joining() {
            for (Channel channel : CHANNELS) {
                rows.column(channel.field(), channel.unit());
            }
        }

        void add(Stage stage, EntryResult entry) {
            Trace profile = entry.profile().orElseThrow();
            Path path = stage.study().simulator().corner().path();
            double[] s = profile.column("s_m").values();
            if (!Double.isNaN(speed)) {
                straight(profile.column("speed_mps").at(0));
            }
            double origin = station - s[0];
            double lag = stage.study().simulator().driver().leftFoot().lag();
            for (int i = 0; i < s.length; i++) {
                boolean joint = i == 0 && !corners.isEmpty();
                if (!joint) {
                    row(profile, path, i, origin, lag);
                }
            }
            corners.add(corner(entry, origin, stage.study().simulator().apex()));
            int last = s.length - 1;
            time += profile.column("time_s").at(last);
            station = origin + s[last];
            speed = profile.column("speed_mps").at(last);
            Path.Point end = path.position(s[last]);
            x += Math.cos(heading) * end.x() - Math.sin(heading) * end.y();
            y += Math.sin(heading) * end.x() + Math.cos(heading) * end.y();
            heading += path.heading(s[last]);
        }

        private void row(Trace profile, Path path, int i, double origin, double lag) {
            double s = profile.column("s_m").at(i);
            double v = profile.column("speed_mps").at(i);
            double offset = profile.column("offset_m").at(i);
            Path.Point point = path.position(s);
            double px = point.x() - offset * Math.sin(path.heading(s));
            double py = point.y() + offset * Math.cos(path.heading(s));
            rows.row(
                    time + profile.column("time_s").at(i),
                    origin + s,
                    v,
                    pedal(profile, i, lag),
                    profile.column("drive_mps2").at(i),
                    Math.toRadians(profile.column("steer_deg").at(i)),
                    -profile.column("deceleration_mps2").at(i),
                    profile.column("lateral_acceleration_mps2").at(i),
                    profile.column("yaw_rate_rad_per_s").at(i),
                    x + Math.cos(heading) * px - Math.sin(heading) * py,
                    y + Math.sin(heading) * px + Math.cos(heading) * py);
        }

        /**
         * What the foot asked for: the brake follows it with a lag, so it is the brake and the lag times its change.
         */
        private static double pedal(Trace profile, int i, double lag) {
            Trace.Column brake = profile.column("brake_mps2");
            Trace.Column clock = profile.column("time_s");
            int before = Math.max(0, i - 1);
            int after = Math.min(profile.rows() - 1, i + 1);
            double rate = (brake.at(after) - brake.at(before)) / (clock.at(after) - clock.at(before));
            return Math.max(0, brake.at(i) + lag * rate);
        }

        private void straight(double next) {
            double start = speed;
            double acceleration = (next * next - start * start) / (2 * JOINT);
            for (double run = 1; run < JOINT; run++) {
                double v = Math.sqrt(start * start + 2 * acceleration * run);
                rows.row(
                        time + 2 * run / (v + start),
                        station + run,
                        v,
                        0,
                        Math.max(0, acceleration),
                        0,
                        acceleration,
                        0,
                        0,
                        x + Math.cos(heading) * run,
                        y + Math.sin(heading) * run);
            }
            time += 2 * JOINT / (next + start);
            station += JOINT;
            x += Math.cos(heading) * JOINT;
            y += Math.sin(heading) * JOINT;
        }

        private static Corner corner(EntryResult entry, double origin, double apex) {
            double on = entry.event(EntryEvent.Kind.BRAKE_ON)
                    .map(EntryEvent::station)
                    .orElse(Double.NaN);
            double off = entry.event(EntryEvent.Kind.RELEASE_END)
                    .map(EntryEvent::station)
                    .orElse(Double.NaN);
            return new Corner(
                    origin + on,
                    origin + off,
                    origin,
                    origin + apex,
                    origin + entry.minimumSpeedAt(),
                    entry.turnInSpeed(),
                    entry.minimumSpeed(),
                    entry.trailShare(),
                    entry.plan().release().shape().name());
        }
    }
}
