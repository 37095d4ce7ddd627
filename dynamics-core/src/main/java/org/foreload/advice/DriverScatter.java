package org.foreload.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.risk.Scatter;

/**
 * How a driver scatters from lap to lap in one corner: standard deviations of what was measured, less what the
 * measuring adds, and right at the mean however few laps there are. Places are counted from turn-in.
 */
public final class DriverScatter {

    /** Fewest laps from which a scatter is measured. */
    public static final int FEWEST_LAPS = 3;

    /** Share of a measured variance that is the driver's at least: measuring errors are estimates too. */
    private static final double LEAST_SHARE = 0.5;

    /** Standard deviations from the middle to the end of an interval that holds nine times in ten. */
    private static final double NINE_IN_TEN = 1.645;

    /** Scatter of the grip from day to day and lap to lap, a share; invented for want of a source. */
    private static final double GRIP = 0.01;

    /** Unsteadiest foot that is believed: more is a sensor's noise. */
    private static final double MOST_RIPPLE = 0.1;

    private DriverScatter() {}

    /**
     * The scatter over laps.
     *
     * @param corner the corner with its intervals, of any lap
     * @param laps the same corner in each lap
     * @return the practised driver's where there are fewer than {@value #FEWEST_LAPS} laps with a brake
     */
    public static Scatter of(RecordedCorner corner, List<RecordedCorner> laps) {
        List<RecordedCorner> braked =
                laps.stream().filter(RecordedCorner::braked).toList();
        if (braked.size() < FEWEST_LAPS || !corner.braked()) {
            return Scatter.PRACTISED;
        }
        double peak = corner.get(Measure.PEAK_DECELERATION).value();
        return new Scatter(
                "measured over " + braked.size() + " laps",
                deviation(braked, one -> from(one, Measure.BRAKE_ON), error(corner, Measure.BRAKE_ON)),
                Math.min(
                        1,
                        deviation(
                                        braked,
                                        one -> value(one, Measure.PEAK_DECELERATION),
                                        error(corner, Measure.PEAK_DECELERATION))
                                / peak),
                deviation(braked, one -> from(one, Measure.RELEASE_END), error(corner, Measure.RELEASE_END)),
                Math.min(MOST_RIPPLE, Math.max(0, value(corner, Measure.RIPPLE))),
                GRIP);
    }

    private static double value(RecordedCorner corner, Measure measure) {
        return corner.get(measure).value();
    }

    private static double from(RecordedCorner corner, Measure measure) {
        return value(corner, measure) - value(corner, Measure.TURN_IN);
    }

    /** Standard deviation of a measurement; that of a place counted from turn-in. */
    private static double error(RecordedCorner corner, Measure measure) {
        boolean place = measure != Measure.PEAK_DECELERATION;
        Estimate estimate = place ? corner.fromTurnIn(measure) : corner.get(measure);
        return (estimate.high() - estimate.low()) / 2 / NINE_IN_TEN;
    }

    private static double deviation(
            List<RecordedCorner> laps, ToDoubleFunction<RecordedCorner> measured, double error) {
        List<Double> values = new ArrayList<>();
        for (RecordedCorner lap : laps) {
            double value = measured.applyAsDouble(lap);
            if (Double.isFinite(value)) {
                values.add(value);
            }
        }
        int n = values.size();
        double mean = 0;
        for (double value : values) {
            mean += value / n;
        }
        double square = 0;
        for (double value : values) {
            square += (value - mean) * (value - mean) / Math.max(1, n - 1);
        }
        return Math.sqrt(Math.max(LEAST_SHARE * square, square - error * error)) / meanShare(n);
    }

    /**
     * The standard deviation of a sample from a normal law at the mean, as a share of the law's: the square root of its
     * variance, which is right at the mean, is too small. The factor c4 of NIST/SEMATECH, e-Handbook of Statistical
     * Methods, 6.3.2, from √(2/π) of two on: c4(k) c4(k − 1) = √((k − 2)/(k − 1)), since Γ(x + 1) = x Γ(x).
     */
    private static double meanShare(int n) {
        double share = n < 2 ? 1 : Math.sqrt(2 / Math.PI);
        for (int k = 3; k <= n; k++) {
            share = Math.sqrt((k - 2.0) / (k - 1)) / share;
        }
        return share;
    }
}
