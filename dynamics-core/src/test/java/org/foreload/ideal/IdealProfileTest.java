package org.foreload.ideal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.grip.Axle;
import org.foreload.grip.GripLimits;
import org.foreload.load.SampleCars;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/**
 * What is read out of a profile, from profiles whose acceleration is constant over long pieces: speeds, times and
 * places then follow from v² = v₀² + 2·a·s.
 */
class IdealProfileTest {

    private static final Car CAR = SampleCars.pointMass(1.2);

    /** Hardly bent: a metre's step, turn-in at zero, from −200 to 100 m. */
    private static final Path PATH = SegmentPath.of(200, List.of(Segment.arc(100, 2000, Turn.LEFT)), 0, 5);

    /** A run that starts with a speed; pieces of it are {end station, acceleration}, the last one up to the end. */
    private record Run(double speed, double[]... pieces) {

        double speedSquared(double s) {
            double w = speed * speed;
            double from = PATH.start();
            for (double[] piece : pieces) {
                double to = Math.min(s, piece[0]);
                w += 2 * piece[1] * Math.max(0, to - from);
                from = Math.max(from, to);
            }
            return w;
        }

        IdealProfile profile() {
            Grid grid = Grid.of(PATH, GripLimits.of(CAR), 1);
            double[] w = new double[grid.steps() + 1];
            double[] accelerations = new double[grid.steps()];
            for (int i = 0; i < w.length; i++) {
                w[i] = speedSquared(grid.station(i));
                if (i > 0) {
                    accelerations[i - 1] = (w[i] - w[i - 1]) / (2 * grid.length(i - 1));
                }
            }
            return IdealProfile.of(CAR, grid, w, accelerations);
        }
    }

    private static double[] until(double station, double acceleration) {
        return new double[] {station, acceleration};
    }

    private static final Run TRAILED = new Run(40, until(-81.3, 0), until(20, -7), until(60, 0), until(100, 2));

    @Test
    void speedsTimesAndPlacesOfOneBraking() {
        IdealProfile profile = TRAILED.profile();
        double lowest = Math.sqrt(1600 - 2 * 7 * 101.3);
        assertEquals(301, profile.size());
        assertEquals(40, profile.topSpeed());
        assertEquals(lowest, profile.minimumSpeed(), 1e-9);
        assertEquals(20, profile.minimumSpeedAt());
        double turnIn = Math.sqrt(1600 - 2 * 7 * 81.3);
        assertEquals(turnIn, profile.turnInSpeed(), 1e-12);
        assertEquals(-81.3, profile.brakePoint().orElseThrow(), 1e-9);
        assertEquals(20, profile.releaseEnd().orElseThrow());
        // The speed at the brake point is that of its step, braked with its mean: a part in a thousand.
        assertEquals((turnIn - lowest) / (40 - lowest), profile.trailShare(), 1e-3);
        double end = Math.sqrt(lowest * lowest + 2 * 2 * 40);
        // The step that holds the brake point is driven with its mean deceleration: a millisecond at most.
        double time = (200 - 81.3) / 40 + (40 - lowest) / 7 + 40 / lowest + (end - lowest) / 2;
        assertEquals(time, profile.time(), 1e-3);
    }

    @Test
    void readingsBetweenTheStations() {
        IdealProfile profile = TRAILED.profile();
        for (double s : new double[] {-200, -150.25, -60.5, -60, -0.3, 0, 19.9, 20, 33.3, 77.7, 99.99, 100}) {
            assertEquals(Math.sqrt(TRAILED.speedSquared(s)), profile.speedAt(s), 1e-9);
        }
        // From −60 to −20.5 under 7 m/s²: t = (v₀ − v₁)/a.
        double elapsed = (profile.speedAt(-60) - profile.speedAt(-20.5)) / 7;
        assertEquals(elapsed, profile.timeAt(-20.5) - profile.timeAt(-60), 1e-9);
        assertEquals(0.25 / 40, profile.timeAt(-199.75), 1e-12);
        assertEquals(7, profile.decelerationAt(-60.5), 1e-9);
        assertEquals(0, profile.decelerationAt(40), 1e-9);
        assertEquals(-2, profile.decelerationAt(60), 1e-9);
        for (int i = 0; i < profile.size(); i++) {
            assertEquals(profile.time(i), profile.timeAt(profile.station(i)), 1e-12);
            assertEquals(profile.speed(i), profile.speedAt(profile.station(i)), 1e-12);
            assertEquals(profile.deceleration(i), profile.decelerationAt(profile.station(i)));
        }
    }

    @Test
    void beyondTheEndsTheEndIsRead() {
        IdealProfile profile = TRAILED.profile();
        int last = profile.size() - 1;
        assertEquals(40, profile.speedAt(-300));
        assertEquals(0, profile.timeAt(-300));
        assertEquals(0, profile.decelerationAt(-300), 1e-9);
        assertEquals(profile.speed(last), profile.speedAt(1000), 1e-12);
        assertEquals(profile.time(), profile.timeAt(1000), 1e-12);
        assertEquals(-2, profile.decelerationAt(1000), 1e-9);
        assertEquals(profile.deceleration(last - 1), profile.deceleration(last));
    }

    /** Point mass without drag: brake force is mass times deceleration, none when driving; both axles used alike. */
    @Test
    void forcesAndUtilisationsOfAPointMass() {
        IdealProfile profile = TRAILED.profile();
        for (int i = 0; i < profile.size(); i++) {
            double s = profile.station(i);
            assertEquals(1200 * Math.max(0, profile.deceleration(i)), profile.brakeForce(i), 1e-6);
            if (s >= -80 && s < 20) {
                assertEquals(1200 * 7, profile.brakeForce(i), 1e-6);
            }
            double w = TRAILED.speedSquared(Math.min(s, 99) + 0.5);
            double lateral = s >= 0 ? w / 2000 : 0;
            double used = Math.hypot(profile.deceleration(i), lateral) / (1.2 * 9.81);
            assertEquals(used, profile.frontUtilisation(i), 1e-6);
            assertEquals(used, profile.rearUtilisation(i), 1e-6);
            boolean front = profile.frontUtilisation(i) >= profile.rearUtilisation(i);
            assertEquals(Optional.of(front ? Axle.FRONT : Axle.REAR), profile.limitingAxle(i));
        }
    }

    /** The curves before and after the brake point are drawn on to where they meet, wherever in its step that is. */
    @Test
    void theBrakePointIsWhereTheCurvesMeet() {
        for (double at : new double[] {-197.5, -120, -119.9, -119.5, -119.1, -119.0001}) {
            for (double before : new double[] {0, 1.5, -0.005}) {
                Run run = new Run(40, until(at, before), until(-70, -5), until(100, 0));
                assertEquals(at, run.profile().brakePoint().orElseThrow(), 1e-6, "after " + before);
            }
        }
    }

    /** At either end of the line there is no curve to draw on: the station is told. */
    @Test
    void aBrakePointAtTheEndOfTheLineIsAStation() {
        assertEquals(
                -200,
                new Run(40, until(0, -3), until(100, 0)).profile().brakePoint().orElseThrow());
        assertEquals(
                -199,
                new Run(40, until(-199, 0), until(0, -3), until(100, 0))
                        .profile()
                        .brakePoint()
                        .orElseThrow());
        assertEquals(
                99,
                new Run(40, until(99, 0), until(100, -3)).profile().brakePoint().orElseThrow());
        assertEquals(
                100,
                new Run(40, until(99, 0), until(100, -3)).profile().releaseEnd().orElseThrow());
    }

    /** Braked in the first step of all, and in no other. */
    @Test
    void brakingThatIsOverAfterAStepIsBraking() {
        IdealProfile profile = new Run(40, until(-199, -5), until(100, 0)).profile();
        assertEquals(-200, profile.brakePoint().orElseThrow());
        assertEquals(-199, profile.releaseEnd().orElseThrow());
        Run twice = new Run(40, until(-180, -5), until(-100, 0), until(10, -4), until(100, 0));
        assertEquals(-200, twice.profile().brakePoint().orElseThrow());
    }

    /** Two brakings with a drive between: from the first after the top speed to the end of the last. */
    @Test
    void brakingInTwoParts() {
        Run run = new Run(30, until(-150, 2), until(-110, -3), until(-60, 0.5), until(15, -4), until(100, 1));
        IdealProfile profile = run.profile();
        assertEquals(-150, profile.brakePoint().orElseThrow(), 1e-6);
        assertEquals(15, profile.releaseEnd().orElseThrow());
        assertEquals(Math.sqrt(900 + 2 * 2 * 50), profile.topSpeed(), 1e-9);
    }

    /** Braking before the top speed is none of the entry's. */
    @Test
    void brakingBeforeTheTopSpeedIsLeftOut() {
        Run run = new Run(30, until(-180, -5), until(-100, 4), until(-90, 0), until(10, -4), until(100, 1));
        IdealProfile profile = run.profile();
        assertEquals(-90, profile.brakePoint().orElseThrow(), 1e-6);
        assertEquals(Math.sqrt(900 - 200 + 640), profile.topSpeed(), 1e-9);
    }

    /** A dip that sheds less than a hundredth of all is a step of the grid; lifting is no braking either. */
    @Test
    void aDipOfAStepIsNoBraking() {
        double lift = 0.5 * 1e-3 * 9.81;
        Run run = new Run(
                40,
                until(-150, -lift),
                until(-149, -4),
                until(-70, 0),
                until(10, -6),
                until(20, 0),
                until(21, -0.2),
                until(100, 1));
        IdealProfile profile = run.profile();
        assertEquals(-70, profile.brakePoint().orElseThrow(), 1e-6);
        assertEquals(10, profile.releaseEnd().orElseThrow());
        assertEquals(21, profile.minimumSpeedAt());
    }

    /** The lowest speed is sought from turn-in on, and its first place told though rounding makes a later one lower. */
    @Test
    void theMinimumIsTheFirstFromTurnInOn() {
        Run slowBefore = new Run(40, until(-150, -14), until(-50, 4), until(30, -3), until(100, 2));
        IdealProfile profile = slowBefore.profile();
        assertEquals(30, profile.minimumSpeedAt());
        assertEquals(Math.sqrt(200 + 800 - 480), profile.minimumSpeed(), 1e-9);
        Run level = new Run(40, until(-100, 0), until(10, -5), until(80, -1e-9), until(100, 0));
        assertEquals(10, level.profile().minimumSpeedAt());
        assertEquals(0, new Run(20, until(100, 1)).profile().minimumSpeedAt());
    }

    @Test
    void trailSharesAtTheirEnds() {
        assertEquals(
                0,
                new Run(40, until(-100, 0), until(0, -5), until(100, 1))
                        .profile()
                        .trailShare(),
                1e-9);
        assertEquals(
                1,
                new Run(40, until(30, 0), until(60, -5), until(100, 1))
                        .profile()
                        .trailShare());
        IdealProfile none = new Run(20, until(100, 1)).profile();
        assertEquals(
                Math.sqrt(400 + 2 * 200), none.topSpeed(), 1e-9); // driven on to turn-in, where it is slowest after
        assertEquals(0, none.trailShare());
        assertTrue(none.brakePoint().isEmpty() && none.releaseEnd().isEmpty());
    }
}
