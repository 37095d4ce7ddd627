package org.foreload.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.foreload.braking.ReleaseShapes;
import org.foreload.recording.Bend;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the laps say of a driver's scatter. */
class DriverScatterTest {

    /** A corner whose places are known exactly. */
    private static RecordedCorner corner(double brakeOn) {
        Map<Measure, Estimate> measures = new EnumMap<>(Measure.class);
        for (Measure measure : Measure.values()) {
            measures.put(measure, Estimate.around(0, 0));
        }
        measures.put(Measure.BRAKE_ON, Estimate.around(brakeOn, 0));
        measures.put(Measure.PEAK_DECELERATION, Estimate.around(8, 0));
        return new RecordedCorner(
                new Bend(1, 5, 60, true, 1.5),
                Optional.of(ReleaseShapes.LINEAR),
                measures,
                new RecordedCorner.AxisError(0, 0, 0));
    }

    private static double scatter(double... places) {
        List<RecordedCorner> laps = new ArrayList<>();
        for (double place : places) {
            laps.add(corner(place));
        }
        return DriverScatter.of(laps.get(0), laps).brakePoint();
    }

    /** Over many drivers of 2 m the mean is 2 m, however few laps each has driven. */
    @ParameterizedTest
    @ValueSource(ints = {3, 5, 10, 20})
    void theScatterIsRightAtTheMean(int laps) {
        SplittableRandom random = new SplittableRandom(5);
        int drivers = 20_000;
        double sum = 0;
        for (int driver = 0; driver < drivers; driver++) {
            double[] places = new double[laps];
            for (int lap = 0; lap < laps; lap++) {
                places[lap] = -100 + 2 * random.nextGaussian();
            }
            sum += scatter(places);
        }
        assertEquals(2, sum / drivers, 0.02);
    }

    /** The factor c4 of a standard deviation, 0.8862 of three and 0.9400 of five: NIST/SEMATECH 6.3.2, from memory. */
    @ParameterizedTest
    @CsvSource({"3, 0.8862", "5, 0.9400"})
    void theFactorIsThatOfTheTables(int laps, double c4) {
        double[] places = new double[laps];
        for (int lap = 0; lap < laps; lap++) {
            places[lap] = lap;
        }
        // Of the whole numbers from zero on: n (n + 1) / 12.
        double deviation = Math.sqrt(laps * (laps + 1) / 12.0);
        assertEquals(deviation / c4, scatter(places), 1e-3 * deviation);
    }
}
