package org.foreload.recording;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.foreload.braking.ReleaseShape;

/** Measures one corner of one run once, without intervals. */
final class CornerMeter {

    /** Quantile of the combined acceleration that counts as the hardest the driver works the car. */
    static final double HARDEST = 0.98;

    /** Share of a corner's brake peak below which the foot may be off. */
    private static final double OFF = 0.05;

    /** Share of the run's hardest braking below which there was none for this corner. */
    static final double NO_BRAKE = 0.08;

    /** Pauses of the brake shorter than this, s, belong to one braking. */
    private static final double PAUSE = 0.4;

    /** Share of the peak that counts as reached when the foot has come down. */
    private static final double REACHED = 0.95;

    /** Share of the peak by which a brake must rise again to count as pressed again. */
    private static final double AGAIN = 0.06;

    /** Combined acceleration, m/s², below which the car is not being worked. */
    private static final double WORKED = 2;

    /** Half the width, s, over which the slowest point is looked for: a minimum is flat, noise is not. */
    private static final double SLOWEST_HALF_WIDTH = 0.25;

    private final Run run;
    private final double[] along;
    private final Bend bend;
    private final int from;
    private final int first;
    private double fitted;
    private final int to;
    private final double[] s;
    private final double[] brake;
    private final double brakeNoise;
    private final double hardest;

    /**
     * @param run the run
     * @param along acceleration along the car in which the peak is looked for, m/s², at each row
     * @param bend the corner
     * @param from first station of its course, m: where the bend before ends
     * @param to last one, m: where the next begins
     * @param pedals first and last station of what the feet do for it, m
     * @param brakeNoise standard deviation of the brake's noise
     * @param hardest combined acceleration that counts as the hardest the driver works the car, m/s²
     */
    CornerMeter(
            Run run,
            double[] along,
            Bend bend,
            double from,
            double to,
            double[] pedals,
            double brakeNoise,
            double hardest) {
        this.along = along;
        this.brakeNoise = brakeNoise;
        this.hardest = hardest;
        this.run = run;
        this.bend = bend;
        this.s = run.station();
        this.brake = run.brake();
        this.from = Series.index(s, from);
        this.to = Series.index(s, Math.min(to, pedals[1]));
        this.first = Series.index(s, pedals[0]);
    }

    /**
     * What was found.
     *
     * @param numbers by measure
     * @param fits of each shape to the release; none if the brake was not used
     * @param fitted time over which they were fitted, s
     */
    record Reading(Map<Measure, Double> numbers, List<ReleaseFit> fits, double fitted) {

        double get(Measure measure) {
            return numbers.getOrDefault(measure, Double.NaN);
        }

        /** The nearest of the fits. */
        Optional<ReleaseFit> release() {
            return ReleaseFit.nearest(fits);
        }
    }

    /**
     * Measures.
     *
     * @param shapes the release shapes to fit, of which the nearest counts; none stands for all
     */
    Reading read(List<ReleaseShape> shapes) {
        Map<Measure, Double> numbers = new EnumMap<>(Measure.class);
        double turnIn = Bend.turnIn(run, bend, s[from]);
        double apex = Bend.apex(run, bend);
        numbers.put(Measure.TURN_IN, turnIn);
        numbers.put(Measure.APEX, Math.max(turnIn, apex));
        numbers.put(Measure.TURN_IN_SPEED, run.speedAt(turnIn));
        numbers.put(Measure.COMBINED_USE, combinedUse(turnIn, apex));
        List<ReleaseFit> fits = braking(numbers, turnIn, shapes);
        if (!numbers.containsKey(Measure.SLOWEST)) {
            slowest(numbers, turnIn);
        }
        return new Reading(numbers, fits, fitted);
    }

    private List<ReleaseFit> braking(Map<Measure, Double> numbers, double turnIn, List<ReleaseShape> shapes) {
        int end = Math.min(to, Series.index(s, bend.end()));
        int peak = Series.highest(brake, first, Math.max(first, end));
        double level = brake[peak];
        double most = brake[Series.highest(brake, 0, brake.length - 1)];
        if (!(level > NO_BRAKE * most) || !(level > 0)) {
            return List.of();
        }
        int rest = edge(peak, -1, first, level);
        int off = edge(peak, 1, to, level);
        if (off - rest < 4) {
            return List.of();
        }
        int pressed = rest;
        while (pressed < peak && brake[pressed] < REACHED * level) {
            pressed++;
        }
        // A foot that is down where the run begins came down before, one that is where it ends comes off behind.
        boolean begun = rest == 0 && brake[0] > OFF * level;
        boolean ended = off == s.length - 1 && brake[off] > OFF * level;
        double[] time = run.time();
        double onset = begun ? time[0] : Foot.onset(time, run.brakeRaw(), rest, pressed, level, brakeNoise);
        double on = Math.max(s[first], Series.at(time, s, onset));
        slowest(numbers, on);
        if (!begun) {
            numbers.put(Measure.BRAKE_ON, on);
            numbers.put(Measure.PEAK_DECELERATION, peakDeceleration(rest, off));
            double least = numbers.getOrDefault(Measure.MINIMUM_SPEED, Double.NaN);
            double shed = run.speedAt(on) - least;
            double after = run.speedAt(turnIn) - least;
            numbers.put(Measure.TRAIL_SHARE, shed > 0 ? Math.max(0, Math.min(1, after / shed)) : Double.NaN);
        }
        if (ended) {
            return List.of();
        }
        List<ReleaseFit> fits = release(pressed, off, level, shapes);
        ReleaseFit release = ReleaseFit.nearest(fits).orElseThrow();
        double eased = Math.max(on, release.start());
        double released = Math.max(eased, release.end());
        numbers.put(Measure.FIRST_EASE, eased);
        numbers.put(Measure.RELEASE_END, released);
        numbers.put(Measure.SHAPE_ERROR, release.error());
        numbers.put(Measure.REAPPLICATIONS, reapplications(pressed, off, level));
        numbers.put(Measure.RIPPLE, ripple(release, eased, released));
        numbers.put(Measure.TRAIL_LENGTH, Math.max(0, released - turnIn));
        numbers.put(Measure.TRAIL_TIME, Math.max(0, run.timeAt(released) - run.timeAt(turnIn)));
        pickUp(numbers, pressed, Series.index(s, released));
        return fits;
    }

    /** Last row, going from the peak, before the brake stays off for longer than a pause. */
    private int edge(int peak, int way, int limit, double level) {
        int last = peak;
        int i = peak;
        while (i != limit && Math.abs(run.time()[i] - run.time()[last]) <= PAUSE) {
            if (brake[i] > OFF * level) {
                last = i;
            }
            i += way;
        }
        return last == limit ? last : last + way;
    }

    /**
     * The filter takes something off a peak that does not last. What it takes off what it has left already is as much,
     * to first order, and is put back (twicing; J. W. Tukey, Exploratory Data Analysis, 1977, from memory). Next to a
     * hole the filter sees one side alone, and twice the noise: the peak is looked for beside it, where that is left.
     */
    private double peakDeceleration(int first, int last) {
        double[] slowing = new double[last - first + 1];
        Arrays.setAll(slowing, i -> -along[first + i]);
        double[] time = Arrays.copyOfRange(run.time(), first, last + 1);
        double[] again = Series.smooth(time, slowing, run.alongHalfWidth());
        Channel shown = run.recording().has(Channel.LONGITUDINAL) ? Channel.LONGITUDINAL : Channel.SPEED;
        double[] values = run.recording().columns().getOrDefault(shown, along);
        boolean[] beside = Beside.gaps(time, Arrays.copyOfRange(values, first, last + 1), run.alongHalfWidth());
        double most = highest(slowing, beside);
        double left = highest(again, beside);
        return Math.max(0, 2 * most - left);
    }

    /** The highest of those that count; of all where none does. */
    private static double highest(double[] values, boolean[] counts) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < values.length; i++) {
            highest = counts[i] ? Math.max(highest, values[i]) : highest;
        }
        return highest > Double.NEGATIVE_INFINITY ? highest : values[Series.highest(values, 0, values.length - 1)];
    }

    private List<ReleaseFit> release(int pressed, int off, double level, List<ReleaseShape> shapes) {
        // The end of a course that fades is only seen against the rest behind it: as much again, at most half a second.
        int last = off;
        double until = Math.min(s[off] + (s[off] - s[pressed]), run.stationAt(run.time()[off] + PAUSE));
        while (last < to && s[last] < until && brake[last] < 2 * OFF * level) {
            last++;
        }
        double[][] thinned = ReleaseFit.thinned(s, run.brakeRaw(), pressed, last);
        double high = crossing(pressed, off, 0.85 * level);
        double low = crossing(pressed, off, 0.15 * level);
        double span = Math.max(1, (low - high) / 0.7);
        double start = high - 0.15 * span;
        double end = start + span;
        fitted = run.time()[last] - run.time()[pressed];
        return (shapes.isEmpty() ? ReleaseFit.shapes() : shapes)
                .stream()
                        .map(shape -> ReleaseFit.of(shape, thinned[0], thinned[1], start, end))
                        .toList();
    }

    /** Last station before the brake is off at which it falls through a level, m. */
    private double crossing(int first, int off, double level) {
        int i = off;
        while (i > first && brake[i] < level) {
            i--;
        }
        return s[i];
    }

    private double reapplications(int pressed, int off, double level) {
        double valley = brake[pressed];
        double crest = valley;
        int count = 0;
        boolean falling = true;
        for (int i = pressed; i <= off; i++) {
            double value = brake[i];
            if (falling) {
                valley = Math.min(valley, value);
                if (value > valley + AGAIN * level) {
                    count++;
                    falling = false;
                    crest = value;
                }
            } else {
                crest = Math.max(crest, value);
                if (value < crest - AGAIN * level) {
                    falling = true;
                    valley = value;
                }
            }
        }
        return count;
    }

    private double ripple(ReleaseFit release, double eased, double released) {
        double sum = 0;
        int count = 0;
        for (int i = Series.index(s, eased); i <= Series.index(s, released); i++) {
            double left = brake[i] - release.at(s[i]);
            sum += left * left;
            count++;
        }
        return Math.sqrt(Math.max(0, sum / Math.max(1, count) - brakeNoise * brakeNoise)) / release.level();
    }

    private void slowest(Map<Measure, Double> numbers, double after) {
        double[] smooth = run.speed();
        int begin = Series.index(s, Math.max(after, s[from]));
        int bent = Series.index(s, bend.end());
        // A bend that is driven under braking for the next is slowest at its end.
        int end = to > begin ? Math.min(to, bent) : bent;
        int least = Series.lowest(smooth, begin, end);
        if (least == s.length - 1) {
            // Still slowing where the run ends.
            return;
        }
        double clock = run.time()[least];
        int low = least;
        int high = least;
        while (low > from && run.time()[low] > clock - SLOWEST_HALF_WIDTH) {
            low--;
        }
        while (high < Math.max(to, end) && run.time()[high] < clock + SLOWEST_HALF_WIDTH) {
            high++;
        }
        numbers.put(Measure.SLOWEST, lowest(s, smooth, low, high, s[least]));
        numbers.put(Measure.MINIMUM_SPEED, smooth[least]);
    }

    /** The rise that asks for the throttle once the brake is off, though it may begin before; from the peak on. */
    private void pickUp(Map<Measure, Double> numbers, int pressed, int released) {
        double[] throttle = run.throttle();
        double asked = run.throttleAsked();
        if (Double.isNaN(asked)) {
            return;
        }
        int i = released;
        while (i < to && !(throttle[i] > asked && throttle[i + 1] > asked)) {
            i++;
        }
        if (throttle[i] > asked) {
            while (i > pressed && throttle[i - 1] > asked) {
                i--;
            }
            double asks = i > pressed ? Foot.pickUp(run.time(), throttle, i) : run.time()[released];
            numbers.put(Measure.PICK_UP, Series.at(run.time(), s, asks));
        }
    }

    /**
     * Quantiles of the throttle at which it is shut and open, and the share between them from which it is asked for.
     */
    private static final double SHUT = 0.02;

    private static final double OPEN = 0.98;
    private static final double ASKED = 0.05;

    /** Throttle from which it is asked for; NaN where it was not recorded, or never moves. */
    static double asked(double[] throttle) {
        if (throttle == null) {
            return Double.NaN;
        }
        double least = Series.quantile(throttle, SHUT);
        double most = Series.quantile(throttle, OPEN);
        return most > least ? least + ASKED * (most - least) : Double.NaN;
    }

    /** Combined acceleration that counts as the hardest a car is worked in a run, m/s². */
    static double hardest(Run run) {
        double[] worked = new double[run.along().length];
        int count = 0;
        for (int i = 0; i < worked.length; i++) {
            double combined = Math.hypot(run.along()[i], run.across()[i]);
            if (combined > WORKED) {
                worked[count++] = combined;
            }
        }
        return Series.quantile(Arrays.copyOf(worked, count), HARDEST);
    }

    private double combinedUse(double turnIn, double apex) {
        double sum = 0;
        double span = 0;
        for (int i = Series.index(s, turnIn); i < Series.index(s, apex); i++) {
            double step = run.time()[i + 1] - run.time()[i];
            sum += step * Math.hypot(run.along()[i], run.across()[i]);
            span += step;
        }
        return span > 0 ? sum / span / hardest : Double.NaN;
    }

    /**
     * Lowest place of the parabola that fits the rows from {@code low} to {@code high} best; {@code guess} where these
     * are too few, bend downwards, or have their lowest place outside.
     */
    private static double lowest(double[] axis, double[] values, int low, int high, double guess) {
        double half = (axis[high] - axis[low]) / 2;
        if (high - low < 4 || !(half > 0)) {
            return guess;
        }
        // Sums for the normal equations in x from -1 to 1 about the guess.
        double[] powers = new double[5];
        double[] right = new double[3];
        for (int i = low; i <= high; i++) {
            double x = (axis[i] - guess) / half;
            double p = 1;
            for (int k = 0; k < powers.length; k++) {
                powers[k] += p;
                if (k < right.length) {
                    right[k] += p * values[i];
                }
                p *= x;
            }
        }
        double n = powers[0];
        double a = powers[2] - powers[1] * powers[1] / n;
        double b = powers[3] - powers[1] * powers[2] / n;
        double c = powers[4] - powers[2] * powers[2] / n;
        double d = right[1] - powers[1] * right[0] / n;
        double e = right[2] - powers[2] * right[0] / n;
        double determinant = a * c - b * b;
        double bent = (a * e - b * d) / determinant;
        double rise = (c * d - b * e) / determinant;
        double place = guess - half * rise / (2 * bent);
        return bent > 0 && place >= axis[low] && place <= axis[high] ? place : guess;
    }
}
