package org.foreload.envelope;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Channel;
import org.foreload.recording.Cleaning;
import org.foreload.recording.Estimate;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A point mass on a known ellipse, recorded with noise: the ellipse comes back. That it must within 3 % from ten laps
 * at 50 Hz was agreed on before anything was measured.
 */
class FrictionEnvelopeTest {

    private static final double ALLOWED = 0.03;

    private static final double RATE = 50;

    /** What is true: limits at rest, and how much each gains with the square of speed. */
    private record Truth(double lateral, double lateralGain, double braking, double brakingGain) {

        double lateral(double speed) {
            return lateral + lateralGain * speed * speed;
        }

        double braking(double speed) {
            return braking + brakingGain * speed * speed;
        }
    }

    /**
     * A lap of twelve corners: braking from one speed to another, then the brake off as the corner takes over, held for
     * a while, and away. The driver uses all there is but for a few per cent that come and go.
     */
    private static Run lap(Truth truth, double side, double noise, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<double[]> rows = new ArrayList<>();
        double time = 0;
        for (int corner = 0; corner < 12; corner++) {
            double speed = 40 + 25 * random.nextDouble();
            double slow = 14 + 20 * random.nextDouble();
            double turning = 0;
            double held = 0;
            double shy = 0;
            while (held < 1.5) {
                shy += 0.1 * (0.02 * Math.abs(random.nextGaussian()) - shy);
                turning = speed < slow + 4 ? Math.min(Math.PI / 2, turning + 1.2 / RATE) : 0;
                held += turning == Math.PI / 2 ? 1 / RATE : 0;
                double along = -(1 - shy) * truth.braking(speed) * Math.cos(turning);
                double across = (1 - shy) * truth.lateral(speed) * Math.sin(turning) * (corner % 2 == 0 ? side : -side);
                rows.add(new double[] {time, speed, along, across});
                speed += along / RATE;
                time += 1 / RATE;
            }
            while (speed < 45) {
                rows.add(new double[] {time, speed, 4, 0});
                speed += 4 / RATE;
                time += 1 / RATE;
            }
        }
        double[][] columns = new double[4][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            double[] row = rows.get(i);
            columns[0][i] = row[0];
            columns[1][i] = row[1] + 0.2 * noise * random.nextGaussian();
            columns[2][i] = row[2] + noise * random.nextGaussian();
            columns[3][i] = row[3] + noise * side * random.nextGaussian();
        }
        Map<Channel, double[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.TIME, columns[0]);
        channels.put(Channel.SPEED, columns[1]);
        channels.put(Channel.LONGITUDINAL, columns[2]);
        channels.put(Channel.LATERAL, columns[3]);
        return Run.of(Recording.of(channels), Cleaning.STANDARD);
    }

    private static List<Run> laps(Truth truth, double side, int count, long seed) {
        List<Run> laps = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            laps.add(lap(truth, side, 0.4, seed + i));
        }
        return laps;
    }

    @ParameterizedTest
    @CsvSource({"10, 0, 10, 0", "9, 0.001, 10, 0.0006", "14, 0.004, 13, 0.005", "8, 0, 11, 0.0005"})
    void theLimitsOfAPointMassComeBack(double lateral, double lateralGain, double braking, double brakingGain) {
        Truth truth = new Truth(lateral, lateralGain, braking, brakingGain);
        FrictionEnvelope found = FrictionEnvelope.of(laps(truth, 1, 10, 7), EnvelopeSettings.STANDARD);
        for (double speed = 18; speed <= 34; speed += 4) {
            assertEquals(1, found.lateral(speed).value() / truth.lateral(speed), ALLOWED, "lateral at " + speed);
        }
        for (double speed = 25; speed <= 55; speed += 5) {
            assertEquals(1, found.braking(speed).value() / truth.braking(speed), ALLOWED, "braking at " + speed);
        }
        assertEquals(1, found.use(30, truth.braking(30), 0), ALLOWED);
        assertEquals(1, found.use(30, 0, -truth.lateral(30)), ALLOWED);
    }

    /** Of 40 bands that hold nine times in ten, fewer than 31 do so once in a hundred by chance. */
    @Test
    void theBandsHoldTheTruth() {
        Truth truth = new Truth(10, 0.001, 10.5, 0.0005);
        int held = 0;
        for (int k = 0; k < 10; k++) {
            FrictionEnvelope found =
                    FrictionEnvelope.of(laps(truth, 1, 6, 1000 + 10 * k), EnvelopeSettings.STANDARD.withSeed(k));
            held += holds(found.lateral(20), truth.lateral(20)) + holds(found.lateral(30), truth.lateral(30));
            held += holds(found.braking(30), truth.braking(30)) + holds(found.braking(50), truth.braking(50));
        }
        assertTrue(held >= 31, held + " of 40");
    }

    private static int holds(Estimate band, double truth) {
        return band.holds(truth) ? 1 : 0;
    }

    /** Left is as good as right, and a second fit is the first. */
    @Test
    void turningTheRoadOverChangesNothing() {
        Truth truth = new Truth(9, 0.001, 10, 0.0005);
        FrictionEnvelope left = FrictionEnvelope.of(laps(truth, 1, 3, 3), EnvelopeSettings.STANDARD);
        FrictionEnvelope right = FrictionEnvelope.of(laps(truth, -1, 3, 3), EnvelopeSettings.STANDARD);
        assertEquals(left.lateral(25).value(), right.lateral(25).value(), 1e-2);
        assertEquals(left.lateral(25).high(), right.lateral(25).high(), 2e-2);
        FrictionEnvelope again = FrictionEnvelope.of(laps(truth, 1, 3, 3), EnvelopeSettings.STANDARD);
        assertEquals(left.braking(25), again.braking(25));
    }

    /** A wild row now and then, as a kerb or a loose plug makes it, moves nothing. */
    @Test
    void wildRowsMoveNothing() {
        Truth truth = new Truth(10, 0, 10, 0);
        List<Run> wild = new ArrayList<>();
        for (Run lap : laps(truth, 1, 5, 11)) {
            Map<Channel, double[]> columns = new EnumMap<>(Channel.class);
            for (Channel channel : List.of(Channel.TIME, Channel.SPEED, Channel.LONGITUDINAL, Channel.LATERAL)) {
                columns.put(channel, lap.recording().column(channel));
            }
            double[] across = columns.get(Channel.LATERAL);
            for (int i = 0; i < across.length; i += 1500) {
                across[i] = 60;
            }
            wild.add(Run.of(Recording.of(columns), Cleaning.STANDARD));
        }
        FrictionEnvelope found = FrictionEnvelope.of(wild, EnvelopeSettings.STANDARD);
        assertEquals(10, found.lateral(25).value(), 10 * ALLOWED);
    }

    @Test
    void aRunThatIsHardlyWorkedIsRefused() {
        Truth truth = new Truth(1, 0, 1, 0);
        List<Run> slow = laps(truth, 1, 1, 5);
        assertThrows(InvalidValueException.class, () -> FrictionEnvelope.of(slow, EnvelopeSettings.STANDARD));
    }

    /** Limits that grow with the square of speed lie on the law everywhere; the ellipse is x² + y² = 1. Arithmetic. */
    @Test
    void knownLimitsAreThoseOfTheCar() {
        Truth car = new Truth(11, 0.002, 12, -0.001);
        FrictionEnvelope known = FrictionEnvelope.known(20, 50, car::lateral, car::braking);
        for (double speed : new double[] {10, 20, 33, 50, 60}) {
            Estimate across = known.lateral(speed);
            assertEquals(car.lateral(speed), across.value(), 1e-9);
            assertEquals(0, across.high() - across.low(), 1e-12);
            assertEquals(car.braking(speed), known.braking(speed).value(), 1e-9);
            assertEquals(1, known.use(speed, 0.6 * car.braking(speed), 0.8 * car.lateral(speed)), 1e-9);
        }
        assertEquals(20, known.lowestSpeed());
        assertEquals(50, known.highestSpeed());
        assertEquals(1, known.mixedUse());
        assertThrows(InvalidValueException.class, () -> FrictionEnvelope.known(20, 20, car::lateral, car::braking));
        assertThrows(InvalidValueException.class, () -> FrictionEnvelope.known(20, 30, v -> 0, car::braking));
    }
}
