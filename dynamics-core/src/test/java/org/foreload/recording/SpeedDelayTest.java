package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A speed that comes late is moved back, on a point mass whose every place is known. */
class SpeedDelayTest {

    private static final BrakePlan PLAN =
            Braking.of(6.5, 0.2, new Release(ReleaseShapes.LINEAR, -10, 40)).from(-115);

    private static final KnownRun KNOWN = new KnownRun(PLAN);

    /** The known run with the acceleration along it, and a speed that is so late. */
    private static Recording late(double delay, double rate, double noise) {
        Recording whole = KNOWN.recording(rate, 0.5, noise, 3, false);
        SplittableRandom random = new SplittableRandom(5);
        double[] time = whole.column(Channel.TIME);
        double[] exact = KNOWN.recording(rate, 0.5, 0, 3, false).column(Channel.SPEED);
        double[] late = new double[time.length];
        double[] along = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            late[i] = Series.at(time, exact, time[i] - delay) + 0.08 * noise * random.nextGaussian();
            int before = Math.max(0, i - 1);
            int after = Math.min(time.length - 1, i + 1);
            along[i] =
                    (exact[after] - exact[before]) / (time[after] - time[before]) + 0.4 * noise * random.nextGaussian();
        }
        Map<Channel, double[]> columns = new EnumMap<>(whole.columns());
        columns.put(Channel.SPEED, late);
        columns.put(Channel.LONGITUDINAL, along);
        return Recording.of(columns);
    }

    /** Found to a hundredth of a second without noise and to three with it: half a step, and one and a half. */
    @ParameterizedTest
    @CsvSource({"0.1, 50, 0, 0.01", "-0.1, 50, 0, 0.01", "0.25, 50, 1, 0.03", "0.15, 10, 0, 0.02", "0.3, 100, 1, 0.03"})
    void theDelayIsFound(double delay, double rate, double noise, double error) {
        assertEquals(delay, Run.of(late(delay, rate, noise), Cleaning.STANDARD).speedDelay(), error);
    }

    @Test
    void noDelayIsNoDelay() {
        assertEquals(0, Run.of(late(0, 50, 1), Cleaning.STANDARD).speedDelay());
        assertEquals(
                0,
                Run.of(KNOWN.recording(50, 0.5, 1, 3, false), Cleaning.STANDARD).speedDelay());
    }

    /** With a speed 0.2 s late the brake point would be 10 m off; moved, it is where it was. */
    @Test
    void placesAreThoseOfARunWithoutDelay() {
        RecordedCorner right = corner(late(0, 50, 0));
        RecordedCorner moved = corner(late(0.2, 50, 0));
        for (Measure measure : new Measure[] {Measure.BRAKE_ON, Measure.RELEASE_END, Measure.TURN_IN}) {
            assertEquals(right.get(measure).value(), moved.get(measure).value(), 0.5, measure.field());
        }
        assertEquals(KNOWN.brakeOn(), moved.get(Measure.BRAKE_ON).value() + KNOWN.first(50, 0.5), 1);
    }

    /** A point mass slows as the brake says, at once; a brake that is logged late is ahead by less than nothing. */
    @ParameterizedTest
    @CsvSource({"0, 50, 1", "0.3, 50, 1", "-0.2, 100, 1", "0.1, 10, 0"})
    void theLagOfTheDecelerationIsFound(double late, double rate, double noise) {
        Recording whole = late(0, rate, noise);
        double[] time = whole.column(Channel.TIME);
        double[] brake = whole.column(Channel.BRAKE);
        double[] moved = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            moved[i] = Series.at(time, brake, time[i] - late);
        }
        Map<Channel, double[]> columns = new EnumMap<>(whole.columns());
        columns.put(Channel.BRAKE, moved);
        assertEquals(-late, Run.of(Recording.of(columns), Cleaning.STANDARD).brakeLag(), 0.03);
        columns.remove(Channel.BRAKE);
        assertEquals(
                Double.NaN, Run.of(Recording.of(columns), Cleaning.STANDARD).brakeLag());
    }

    /**
     * A car that slows as the brake says, at once, by air besides, which takes as much as 3 m/s² at 50 m/s and less the
     * slower it is: it follows the brake by nothing. Kinematics.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.01", "1, 0.015", "2, 0.03"})
    void whatTheAirSlowsIsNoLag(double noise, double allowed) {
        Recording recording = KNOWN.recording(50, 0.5, 0, 3, false);
        SplittableRandom random = new SplittableRandom(3);
        double[] speed = recording.column(Channel.SPEED);
        double[] brake = recording.column(Channel.BRAKE);
        double[] along = new double[brake.length];
        for (int i = 0; i < along.length; i++) {
            double air = 3 * speed[i] * speed[i] / (KnownRun.SPEED * KnownRun.SPEED);
            along[i] = -air - brake[i] + noise * 0.4 * random.nextGaussian();
            brake[i] += noise * 0.1 * random.nextGaussian();
        }
        Map<Channel, double[]> columns = new EnumMap<>(recording.columns());
        columns.put(Channel.BRAKE, brake);
        columns.put(Channel.LONGITUDINAL, along);
        assertEquals(0, Run.of(Recording.of(columns), Cleaning.STANDARD).brakeLag(), allowed);
    }

    private static RecordedCorner corner(Recording recording) {
        return RecordedCorners.of(Run.of(recording, Cleaning.STANDARD.withoutResamples()))
                .get(0);
    }
}
