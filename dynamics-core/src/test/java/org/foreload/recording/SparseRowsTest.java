package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A foot that comes down between two rows: its place is known from the run, not from the rows. */
class SparseRowsTest {

    /** Times in which feet come down, s. Common practice, no source. */
    private static final double[] FEET = {0.1, 0.13, 0.16, 0.2, 0.25, 0.3};

    private static final int RUNS = 10;

    /** Of sixty intervals that hold nine times in ten, fewer do once in a thousand. */
    private static final int FEWEST = 46;

    /**
     * A period of 0.2 s is 10 m here, and a foot is down within it: a straight line from row to row is 4 m early.
     *
     * @param rate of the rows, Hz
     * @param bias largest mean error, m
     * @param error largest root mean square error, m
     */
    @ParameterizedTest
    @CsvSource({"5, 1, 2.5", "10, 0.5, 0.9", "50, 0.2, 0.25"})
    void theBrakePointIsFoundBetweenRows(double rate, double bias, double error) {
        double sum = 0;
        double square = 0;
        int held = 0;
        int count = FEET.length * RUNS;
        for (double foot : FEET) {
            KnownRun known = new KnownRun(Braking.of(8, foot, new Release(ReleaseShapes.LINEAR, -10, 25))
                    .from(-115));
            for (int run = 0; run < RUNS; run++) {
                double phase = (run + 0.5) / RUNS;
                Recording rows = known.recording(rate, phase, 1, run, false);
                Estimate on = RecordedCorners.of(Run.of(rows, new Cleaning(0.1, 0, 0.9, 20, run)))
                        .get(0)
                        .get(Measure.BRAKE_ON);
                double truth = known.brakeOn() - known.first(rate, phase);
                double off = on.value() - truth;
                sum += off;
                square += off * off;
                held += on.holds(truth) ? 1 : 0;
            }
        }
        double mean = sum / count;
        double root = Math.sqrt(square / count);
        assertTrue(Math.abs(mean) < bias, "mean error " + mean + " m");
        assertTrue(root < error, "root mean square error " + root + " m");
        assertTrue(held >= FEWEST, held + " of " + count);
    }

    /** The same at rates in between. */
    @Tag("long")
    @ParameterizedTest
    @CsvSource({"8, 0.7, 1.3", "20, 0.3, 0.35"})
    void soItIsAtRatesInBetween(double rate, double bias, double error) {
        theBrakePointIsFoundBetweenRows(rate, bias, error);
    }
}
