package org.foreload.recording;

import java.util.ArrayList;
import java.util.List;

/**
 * A corner as curvature shows it; here it is found in a run, turned into, and tightest.
 *
 * @param number counted from 1 in driving order
 * @param start where the course is clearly bent, m: after turn-in, which {@link Measure#TURN_IN} looks for
 * @param end where it is no longer clearly bent, m
 * @param left whether it turns left
 * @param angle through which the course turns in between, rad, zero or more
 */
public record Bend(int number, double start, double end, boolean left, double angle) {

    /** Plus one for left, minus one for right. */
    double sign() {
        return left ? 1 : -1;
    }

    /** Curvature, 1/m, from which a course is clearly bent: a radius of 300 m. Common practice, no source. */
    private static final double BENT = 1.0 / 300;

    /** Share of that at which a bend still goes on once it has begun, so that noise does not cut it in two. */
    private static final double STILL_BENT = 0.6;

    /** Least angle, rad, that makes a corner: 15 degrees. A kink of less is driven flat. Common practice, no source. */
    private static final double LEAST_ANGLE = 0.26;

    /** Stations between which curvature is looked at, m, and half the width over which it is averaged, m. */
    private static final double STEP = 1;

    private static final double HALF_WIDTH = 5;

    /** Two bends of the same turn closer than this, m, are one corner with two apexes. */
    private static final double JOINED = 20;

    /** Shares of the first peak between which a rising curvature is followed back to zero. */
    private static final double RAMP_LOW = 0.15;

    private static final double RAMP_HIGH = 0.6;

    /** Share of the peak curvature above which the line counts as tightest. */
    private static final double TIGHT = 0.9;

    /** Quantile of the curvature in a bend that is taken for its peak: above it lies the noise. */
    private static final double PEAK = 0.9;

    /** The corners in driving order, without those that are {@linkplain #cutBy cut}. */
    static List<Bend> find(Run run) {
        List<Bend> whole = new ArrayList<>();
        for (Bend bend : all(run)) {
            if (!bend.cutBy(run)) {
                whole.add(new Bend(whole.size() + 1, bend.start, bend.end, bend.left, bend.angle));
            }
        }
        return whole;
    }

    /** Share of the peak curvature to which the course must have opened for its tightest stretch to be behind. */
    private static final double PASSED = 0.6;

    /**
     * Whether the run begins inside the corner, before whose turn-in nothing is known, or ends in it before its
     * tightest stretch has clearly passed.
     */
    boolean cutBy(Run run) {
        boolean begun = start - run.first() < HALF_WIDTH || turnIn(run, this, run.first()) <= run.first();
        return begun
                || run.last() - end < HALF_WIDTH && sign() * run.curvatureAt(run.last()) > PASSED * peak(run, this);
    }

    /** All corners in driving order, those that the run begins or ends in among them. */
    static List<Bend> all(Run run) {
        double[] raw = run.station();
        int rows = (int) ((run.last() - run.first()) / STEP) + 1;
        double[] axis = new double[rows];
        for (int i = 0; i < rows; i++) {
            axis[i] = run.first() + i * STEP;
        }
        double[] curvature = Series.places(raw, axis).read(run.curvature());
        double[] smooth = Series.smooth(axis, curvature, HALF_WIDTH);
        List<double[]> stretches = new ArrayList<>();
        int i = 0;
        while (i < rows) {
            if (Math.abs(smooth[i]) < BENT) {
                i++;
                continue;
            }
            double sign = Math.signum(smooth[i]);
            int begin = i;
            while (begin > 0 && sign * smooth[begin - 1] > STILL_BENT * BENT) {
                begin--;
            }
            while (i < rows && sign * smooth[i] > STILL_BENT * BENT) {
                i++;
            }
            add(stretches, axis[begin], axis[i - 1], sign);
        }
        List<Bend> bends = new ArrayList<>();
        for (double[] stretch : stretches) {
            double angle = angle(axis, smooth, stretch[0], stretch[1]);
            if (angle >= LEAST_ANGLE) {
                bends.add(new Bend(bends.size() + 1, stretch[0], stretch[1], stretch[2] > 0, angle));
            }
        }
        return bends;
    }

    private static void add(List<double[]> stretches, double from, double to, double sign) {
        double[] last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
        if (last != null && last[2] == sign && from - last[1] < JOINED) {
            last[1] = to;
        } else {
            stretches.add(new double[] {from, to, sign});
        }
    }

    private static double angle(double[] axis, double[] curvature, double from, double to) {
        double angle = 0;
        for (int i = Series.index(axis, from); i <= Series.index(axis, to); i++) {
            angle += curvature[i] * STEP;
        }
        return Math.abs(angle);
    }

    /**
     * Where the curvature leaves zero, m: its first rise, from {@value #RAMP_LOW} to {@value #RAMP_HIGH} of the peak
     * that it comes to, followed back along its best straight line. On a clothoid that is exact.
     */
    static double turnIn(Run run, Bend bend, double notBefore) {
        double[] s = run.station();
        double[] bent = run.curvature();
        double peak = firstPeak(run, bend);
        int from = Series.index(s, notBefore);
        int high = steep(run, bend, peak);
        int low = high;
        while (low > from && bend.sign() * bent[low] > RAMP_LOW * peak) {
            low--;
        }
        double n = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        double[] raw = run.curvatureRaw();
        for (int i = low; i <= high; i++) {
            double x = s[i] - s[low];
            double y = bend.sign() * raw[i];
            n++;
            sx += x;
            sy += y;
            sxx += x * x;
            sxy += x * y;
        }
        double spread = n * sxx - sx * sx;
        double slope = spread > 0 ? (n * sxy - sx * sy) / spread : 0;
        double level = (sy - slope * sx) / n;
        double crossing = slope > 0 ? Math.max(s[low] - level / slope, earliest(run, bend, low, peak, slope)) : s[low];
        return Math.max(notBefore, Math.min(s[high], crossing));
    }

    /** Station up to which the rise of the curvature is read for the turn-in, m. */
    static double steep(Run run, Bend bend) {
        return run.station()[steep(run, bend, firstPeak(run, bend))];
    }

    /** Time, s, by which a rise is looked back on and ahead: a wheel is turned in for as long. */
    private static final double RISING = 0.6;

    /** Share of what the curvature has gained in that time that it must gain in the next, to be rising still. */
    private static final double STILL_RISING = 0.5;

    /**
     * Curvature that the first rise comes to, 1/m: where it clearly slackens, rests or falls before the course is at
     * its tightest, as in a bend of two radii or of two apexes, that which it slackens at; else the peak.
     */
    private static double firstPeak(Run run, Bend bend) {
        double[] s = run.station();
        double[] time = run.time();
        double[] bent = run.curvature();
        double peak = peak(run, bend);
        int end = Series.index(s, bend.end());
        for (int i = Series.index(s, bend.start()); i < end && bend.sign() * bent[i] < TIGHT * peak; i++) {
            double here = bend.sign() * bent[i];
            double before = bend.sign() * Series.at(time, bent, time[i] - RISING);
            double behind = bend.sign() * Series.at(time, bent, time[i] + RISING);
            double slack = STILL_RISING * (here - before) - (behind - here);
            if (here > RAMP_LOW * peak && slack > SEEN * run.curvatureNoise(s[i])) {
                return Math.min(peak, Math.max(here, behind));
            }
        }
        return peak;
    }

    private static int steep(Run run, Bend bend, double peak) {
        double[] s = run.station();
        int high = Series.index(s, bend.start());
        int end = Series.index(s, bend.end());
        while (high < end && bend.sign() * run.curvature()[high] < RAMP_HIGH * peak) {
            high++;
        }
        return high;
    }

    /** Share of the peak curvature below which the course is as good as straight. */
    private static final double STRAIGHT = 0.02;

    /** Standard deviations of noise above which a curvature is seen, and by which a single place may be wrong. */
    private static final double SEEN = 3;

    private static final double WRONG = 2;

    /**
     * No earlier than this, m: where the course is still as good as straight, less the way that the slope takes from
     * there to zero. A clothoid keeps to it; a yaw rate that leaps at turn-in, as that of a braked car does, has a rise
     * whose line crosses zero long before.
     */
    private static double earliest(Run run, Bend bend, int low, double peak, double slope) {
        // Positions are smoothed over so long that what they waver by passes for a part of the course.
        boolean sensed = run.recording().has(run.recording().turning());
        double noise = sensed ? run.curvatureNoise(run.station()[low]) : 0;
        double seen = Math.max(STRAIGHT * peak, SEEN * noise);
        int i = low;
        while (i > 0 && bend.sign() * run.curvature()[i] > seen) {
            i--;
        }
        return run.station()[i] - (seen + WRONG * noise) / slope;
    }

    /**
     * Integral of the square of 3/2 u, |u| ≤ 1, folded with itself: what two slopes, one after the other, make of white
     * noise. By quadrature.
     */
    private static final double TWO_SLOPES = 1.546;

    /**
     * Standard deviation of the noise of the channel that curvature is made of; where that is the positions, of the
     * acceleration across that they show, m/s².
     *
     * @param every time between two positions, s
     */
    static double courseNoise(Recording recording, double every) {
        Channel channel = recording.turning();
        if (recording.has(channel)) {
            return Series.noise(Series.known(recording.columns().get(channel)));
        }
        if (!recording.hasPosition()) {
            return 0;
        }
        double east = Series.noise(Series.known(recording.columns().get(Channel.X)));
        double north = Series.noise(Series.known(recording.columns().get(Channel.Y)));
        double slopes = TWO_SLOPES * every / Math.pow(Signals.POSITION_HALF_WIDTH, 5);
        return Math.hypot(east, north) / Math.sqrt(2) * Math.sqrt(slopes);
    }

    /** Middle of the stretch where the course is tightest, m. */
    static double apex(Run run, Bend bend) {
        double[] s = run.station();
        double[] smooth = run.curvature();
        double peak = peak(run, bend);
        double first = Double.NaN;
        double last = bend.start();
        for (int i = Series.index(s, bend.start()); i <= Series.index(s, bend.end()); i++) {
            if (bend.sign() * smooth[i] >= TIGHT * peak) {
                first = Double.isNaN(first) ? s[i] : first;
                last = s[i];
            }
        }
        return Double.isNaN(first) ? (bend.start() + bend.end()) / 2 : (first + last) / 2;
    }

    private static double peak(Run run, Bend bend) {
        int from = Series.index(run.station(), bend.start());
        int to = Series.index(run.station(), bend.end());
        double[] inside = new double[to - from + 1];
        for (int i = 0; i < inside.length; i++) {
            inside[i] = bend.sign() * run.curvature()[from + i];
        }
        return Series.quantile(inside, PEAK);
    }

    /** A foot that has pressed a twentieth came down so much earlier at most, s. */
    private static final double PRESSING = 0.15;

    /**
     * Where the braking for one corner gives way to that for the next, m: the end of the bend, unless the brake is on
     * there. Then the braking is for the corner in which more than half of it is released: the next one's may begin
     * inside the bend, or before it; the bend's own may go on past its end. One that is eased by half within the bend
     * and pressed again is one for each, parted where it is least.
     */
    double border(Run run, Bend next) {
        double[] s = run.station();
        double[] brake = run.brake();
        double[] time = run.time();
        double on = CornerMeter.NO_BRAKE * brake[Series.highest(brake, 0, brake.length - 1)];
        int first = Series.index(s, start);
        int last = Series.index(s, end);
        int pressing = last;
        while (s[pressing] < next.start && time[pressing] < time[last] + PRESSING) {
            pressing++;
        }
        if (!(brake[pressing] > on)) {
            return end;
        }
        int rise = pressing;
        while (rise > 0 && brake[rise - 1] > on) {
            rise--;
        }
        int off = pressing;
        while (s[off] < next.end && brake[off] > on) {
            off++;
        }
        int before = Series.highest(brake, Math.min(rise, last), last);
        if (brake[Series.highest(brake, pressing, off)] < EASED * brake[before]) {
            return s[off];
        }
        int least = Series.lowest(brake, Math.max(before, first), Math.max(before, last));
        boolean both = brake[least] < EASED * brake[before];
        return both ? s[least] : Series.at(time, s, time[rise] - PRESSING);
    }

    /** Share of its peak below which a brake is more released than not. */
    private static final double EASED = 0.5;
}
