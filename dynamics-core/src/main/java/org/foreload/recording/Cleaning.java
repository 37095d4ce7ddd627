package org.foreload.recording;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.foreload.conventions.Checks;

/**
 * How a recording is cleaned, and how its uncertainties are found.
 *
 * <p>All filters are straight lines fitted to the samples within half a width before and behind: their delay is zero,
 * since they look as far ahead as back. At the ends of a run they look to one side.
 *
 * @param halfWidth half the width of the filters, s; at least one sample to either side is used
 * @param speedScaleError standard deviation of a speed sensor's scale, a plain number: how much distance made from
 *     speed can be off where no position corrects it
 * @param coverage share of all intervals that shall hold the true value, 0.5 to 0.999
 * @param resamples how often the run is measured again with its own noise added
 * @param seed of that noise
 */
public record Cleaning(double halfWidth, double speedScaleError, double coverage, int resamples, long seed) {

    /**
     * Filters of a tenth of a second to either side (common practice, no source: a foot moves slower); wheel speeds to
     * half a per cent (a tyre's radius grows and wears by about that; common practice, no source), intervals that hold
     * nine times in ten, from 40 resamples.
     */
    public static final Cleaning STANDARD = new Cleaning(0.1, 0.005, 0.9, 40, 1);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Cleaning {
        Checks.within("half_width_s", halfWidth, 0, 10);
        Checks.within("speed_scale_error", speedScaleError, 0, 0.5);
        Checks.within("coverage", coverage, 0.5, 0.999);
        Checks.within("resamples", resamples, 0, 10_000);
    }

    /** The same without intervals: for the laps of which only the scatter counts. */
    public Cleaning withoutResamples() {
        return new Cleaning(halfWidth, speedScaleError, coverage, 0, seed);
    }

    /** The same with another seed. */
    public Cleaning withSeed(long other) {
        return new Cleaning(halfWidth, speedScaleError, coverage, resamples, other);
    }

    /** Changes of a channel from which a rate can be read, and the share of them, or of steps, that is all but all. */
    private static final int FEWEST_CHANGES = 20;

    private static final double ALL_BUT_ALL = 0.9;

    /**
     * Rows that only repeat the number before, because the channel is slower than the table: its changes are two rows
     * apart or more, and equally far but for one row. What stands still for longer is kept as often as it is measured.
     * None where most changes are by the finest step: then the steps are too coarse for the course, not the rate.
     */
    static int[] repeats(double[] values) {
        int[] changes = IntStream.range(1, values.length)
                .filter(i -> Math.abs(values[i] - values[i - 1]) > 0)
                .toArray();
        if (changes.length < FEWEST_CHANGES) {
            return new int[0];
        }
        double[] apart = new double[changes.length - 1];
        Arrays.setAll(apart, i -> changes[i + 1] - changes[i]);
        double least = Series.quantile(apart, 1 - ALL_BUT_ALL);
        double[] usual = Series.kept(apart, rows -> rows <= 2 * least);
        double middle = Series.median(usual);
        double[] sizes = IntStream.of(changes)
                .mapToDouble(i -> Math.abs(values[i] - values[i - 1]))
                .toArray();
        double finest = Arrays.stream(sizes).min().orElseThrow();
        boolean regular = Series.kept(usual, rows -> Math.abs(rows - middle) <= 1).length >= ALL_BUT_ALL * usual.length;
        boolean coarse = Series.kept(sizes, size -> size < 1.5 * finest).length >= ALL_BUT_ALL * sizes.length;
        if (!(least >= 2 && regular) || coarse) {
            return new int[0];
        }
        double every = Series.quantile(usual, ALL_BUT_ALL);
        int[] last = {0};
        return IntStream.range(1, values.length)
                .filter(i -> {
                    boolean measured = values[i] != values[i - 1] || i - last[0] >= every;
                    last[0] = measured ? i : last[0];
                    return !measured && values[i] == values[i - 1];
                })
                .toArray();
    }
}
