package org.foreload.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the laps say of a driver's scatter. */
class DriverScatterTest {

    /** A corner whose places are known exactly. */
    private static RecordedCorner corner(double brakeOn) {
        return corner(brakeOn, 0);
    }

    /** A corner whose brake point is measured with that standard deviation. */
    private static RecordedCorner corner(double brakeOn, double error) {
        Map<Measure, Estimate> measures = new EnumMap<>(Measure.class);
        for (Measure measure : Measure.values()) {
            measures.put(measure, Estimate.around(0, 0));
        }
        measures.put(Measure.BRAKE_ON, Estimate.around(brakeOn, 1.645 * error));
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
        return DriverScatter.of(laps.get(0), laps).scatter().brakePoint();
    }

    /** Over many drivers of 2 m the mean is 2 m, however few laps each has driven. */
    @ParameterizedTest
    @ValueSource(ints = {3, 5, 10, 20})
    void theScatterIsRightAtTheMean(int laps) {
        SplittableRandom random = new SplittableRandom(5);
        int drivers = 5000;
        double sum = 0;
        for (int driver = 0; driver < drivers; driver++) {
            double[] places = new double[laps];
            for (int lap = 0; lap < laps; lap++) {
                places[lap] = -100 + 2 * random.nextGaussian();
            }
            sum += scatter(places);
        }
        assertEquals(2, sum / drivers, 0.04);
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

    /**
     * Of many drivers of 2 m, measured to 1 m, the interval holds 2 m nine times in ten or a little more often, however
     * few laps; and of three laps it is as much wider as the chi-squared law has it: NIST/SEMATECH 1.3.5.8, from
     * memory.
     */
    @ParameterizedTest
    @ValueSource(ints = {3, 5, 10, 30})
    void theIntervalHoldsTheDriversOwnScatter(int laps) {
        SplittableRandom random = new SplittableRandom(6);
        int drivers = 4000;
        int held = 0;
        for (int driver = 0; driver < drivers; driver++) {
            List<RecordedCorner> corners = new ArrayList<>();
            for (int lap = 0; lap < laps; lap++) {
                corners.add(corner(-100 + 2 * random.nextGaussian() + random.nextGaussian(), 1));
            }
            DriverScatter scatter = DriverScatter.of(corners.get(0), corners);
            assertTrue(scatter.brakePoint().holds(scatter.scatter().brakePoint()));
            held += scatter.brakePoint().holds(2) ? 1 : 0;
        }
        assertEquals(0.9, (double) held / drivers, 0.02);
    }

    /** √(2/0.103) and √(2/5.991) times the deviation of three laps, √(29/17.708) times that of thirty. */
    @Test
    void fewLapsLookLessSureThanMany() {
        List<RecordedCorner> few = List.of(corner(-102), corner(-100), corner(-98));
        assertEquals(2 * 4.41, DriverScatter.of(few.get(0), few).brakePoint().high(), 0.05);
        assertEquals(2 * 0.578, DriverScatter.of(few.get(0), few).brakePoint().low(), 0.01);
        List<RecordedCorner> many = new ArrayList<>();
        for (int lap = 0; lap < 30; lap++) {
            many.add(corner(lap % 2 == 0 ? -102 : -98));
        }
        double deviation = 2 * Math.sqrt(30 / 29.0);
        assertEquals(
                deviation * Math.sqrt(29 / 17.708),
                DriverScatter.of(many.get(0), many).brakePoint().high(),
                0.01);
        assertEquals(DriverScatter.PRACTISED, DriverScatter.of(few.get(0), few.subList(0, 2)));
    }
}
