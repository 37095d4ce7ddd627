package org.foreload.advice;

import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.risk.Scatter;
import org.foreload.study.Deviation;

/**
 * How a driver scatters from lap to lap in one corner: standard deviations of what was measured, less what the
 * measuring adds, and right at the mean however few laps there are. How few they are shows in the intervals of 90 %.
 * Places are counted from turn-in.
 *
 * @param scatter the driver's
 * @param brakePoint standard deviation of the brake point, m; {@link Estimate#NONE} where it was not measured
 * @param peak the same of the peak deceleration, as a share of it
 * @param releaseTiming the same of brake off, m
 */
public record DriverScatter(Scatter scatter, Estimate brakePoint, Estimate peak, Estimate releaseTiming) {

    /** Fewest laps from which a scatter is measured. */
    public static final int FEWEST_LAPS = 3;

    /** Stands for a driver of whom there are too few laps. */
    public static final DriverScatter PRACTISED =
            new DriverScatter(Scatter.PRACTISED, Estimate.NONE, Estimate.NONE, Estimate.NONE);

    /** Share of a measured variance that is the driver's at least: measuring errors are estimates too. */
    private static final double LEAST_SHARE = 0.5;

    /** Scatter of the grip from day to day and lap to lap, a share; invented for want of a source. */
    private static final double GRIP = 0.01;

    /** Unsteadiest foot that is believed: more is a sensor's noise. */
    private static final double MOST_RIPPLE = 0.1;

    /** Refuses null by the component's name. */
    public DriverScatter {
        Objects.requireNonNull(scatter, "scatter");
        Objects.requireNonNull(brakePoint, "brakePoint");
        Objects.requireNonNull(peak, "peak");
        Objects.requireNonNull(releaseTiming, "releaseTiming");
    }

    /**
     * The scatter over laps.
     *
     * @param corner the corner with its intervals, of any lap
     * @param laps the same corner in each lap
     * @return {@link #PRACTISED} where there are fewer than {@value #FEWEST_LAPS} laps with a brake
     */
    public static DriverScatter of(RecordedCorner corner, List<RecordedCorner> laps) {
        Objects.requireNonNull(corner, "corner");
        Objects.requireNonNull(laps, "laps");
        List<RecordedCorner> braked =
                laps.stream().filter(RecordedCorner::braked).toList();
        if (braked.size() < FEWEST_LAPS || !corner.braked()) {
            return PRACTISED;
        }
        double peak = corner.get(Measure.PEAK_DECELERATION).value();
        Estimate brakePoint = deviation(
                braked,
                one -> from(one, Measure.BRAKE_ON),
                corner.fromTurnIn(Measure.BRAKE_ON).deviation(),
                1);
        Estimate hardness = deviation(
                braked,
                one -> value(one, Measure.PEAK_DECELERATION),
                corner.get(Measure.PEAK_DECELERATION).deviation(),
                peak);
        Estimate release = deviation(
                braked,
                one -> from(one, Measure.RELEASE_END),
                corner.fromTurnIn(Measure.RELEASE_END).deviation(),
                1);
        Scatter scatter = new Scatter(
                "measured over " + braked.size() + " laps",
                known(brakePoint),
                Math.min(1, known(hardness)),
                known(release),
                Math.min(MOST_RIPPLE, Math.max(0, value(corner, Measure.RIPPLE))),
                GRIP);
        return new DriverScatter(scatter, brakePoint, hardness, release);
    }

    private static double known(Estimate deviation) {
        return deviation.known() ? deviation.value() : 0;
    }

    private static double value(RecordedCorner corner, Measure measure) {
        return corner.get(measure).value();
    }

    private static double from(RecordedCorner corner, Measure measure) {
        return value(corner, measure) - value(corner, Measure.TURN_IN);
    }

    /** Of what was measured in those laps in which it was, in a unit; none where that is fewer than two. */
    private static Estimate deviation(
            List<RecordedCorner> laps, ToDoubleFunction<RecordedCorner> measured, double error, double unit) {
        double[] values =
                laps.stream().mapToDouble(measured).filter(Double::isFinite).toArray();
        if (values.length < 2) {
            return Estimate.NONE;
        }
        Deviation deviation = Deviation.of(values);
        double share = deviation.sample() > 0 ? deviation.unbiased() / deviation.sample() : 1;
        return new Estimate(
                share * rid(deviation.sample(), LEAST_SHARE, error) / unit,
                rid(deviation.low(), 0, error) / unit,
                rid(deviation.high(), LEAST_SHARE, error) / unit);
    }

    /** A deviation less what the measuring adds; a share of the variance stays at least. */
    private static double rid(double deviation, double least, double error) {
        double square = deviation * deviation;
        return Math.sqrt(Math.max(least * square, square - error * error));
    }
}
