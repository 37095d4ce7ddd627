package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The greatest deceleration of a noisy course: the greatest of many is too great, and the interval knows by how much.
 */
class PeakUnderNoiseTest {

    private static final int RUNS = 30;

    /** Of thirty intervals that hold nine times in ten, fewer do about once in a hundred. */
    private static final int FEWEST = 23;

    private static final double RATE = 50;

    /**
     * A point mass that holds its peak for 100 m, for 50 m, or lets it go at once; the acceleration along the car has
     * noise that is white, or let through to 5 Hz, first-order, so that five rows are alike.
     *
     * @param eased where the release begins, m from turn-in
     * @param cut frequency to which the noise is let through, Hz; none where it is white
     * @param deviation of the noise, m/s²
     * @param bias largest mean error, as a share of that
     */
    @ParameterizedTest
    @CsvSource({"-10, none, 0.4, 0.3", "-10, 5, 0.4, 0.5", "-60, 5, 0.16, 0.5", "-102, 5, 0.16, 0.5"})
    void intervalsHoldThePeak(double eased, String cut, double deviation, double bias) {
        KnownRun known = new KnownRun(
                Braking.of(8, 0.2, new Release(ReleaseShapes.LINEAR, eased, 25)).from(-115));
        double like = cut.equals("none") ? 0 : Math.exp(-2 * Math.PI * Double.parseDouble(cut) / RATE);
        double off = 0;
        int held = 0;
        for (int run = 0; run < RUNS; run++) {
            double phase = (run + 0.5) / RUNS;
            double[] exact =
                    known.recording(RATE, phase, 0, run, false).columns().get(Channel.BRAKE);
            Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
            columns.putAll(known.recording(RATE, phase, 1, run, false).columns());
            columns.put(Channel.LONGITUDINAL, slowing(exact, deviation, like, 1000 + run));
            Estimate peak = RecordedCorners.of(Run.of(Recording.of(columns), new Cleaning(0.1, 0, 0.9, 20, run)))
                    .get(0)
                    .get(Measure.PEAK_DECELERATION);
            double truth = Arrays.stream(exact).max().orElseThrow();
            off += (peak.value() - truth) / RUNS;
            held += peak.holds(truth) ? 1 : 0;
        }
        assertTrue(held >= FEWEST, held + " of " + RUNS + " hold, mean error " + off + " m/s²");
        assertTrue(Math.abs(off) < bias * deviation, "mean error " + off + " m/s²");
    }

    /** The same with less noise, and where it is white at a peak let go at once. */
    @Tag("long")
    @ParameterizedTest
    @CsvSource({"-10, 5, 0.16, 0.5", "-102, none, 0.16, 0.5"})
    void intervalsHoldThePeakInLessNoise(double eased, String cut, double deviation, double bias) {
        intervalsHoldThePeak(eased, cut, deviation, bias);
    }

    private static double[] slowing(double[] exact, double deviation, double like, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] along = new double[exact.length];
        double noise = random.nextGaussian();
        for (int i = 0; i < along.length; i++) {
            along[i] = -exact[i] + deviation * noise;
            noise = like * noise + Math.sqrt(1 - like * like) * random.nextGaussian();
        }
        return along;
    }
}
