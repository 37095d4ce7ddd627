package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.RightFoot;
import org.foreload.entry.SimulationSettings;
import org.foreload.envelope.EnvelopeSettings;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.examples.demo.Demos;
import org.foreload.grip.GgDiagram;
import org.foreload.recording.Cleaning;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Ten simulated laps of a driver who goes to the limit, through a logger at 50 Hz: the limits that its accelerations
 * show are those of the car's quasi-steady g-g diagram within 3 %, as was agreed on beforehand.
 */
class RecordedLimitsTest {

    private static final double ALLOWED = 0.03;

    private static final int LAPS = 10;

    /** On the way out all but 1.5 % of the friction: a driver who leaves nothing. */
    private static final DriverSettings EAGER = DriverSettings.practised().with(new RightFoot(0.1, 0.99, 0.985));

    @ParameterizedTest
    @ValueSource(strings = {"light", "road"})
    void theLimitsOfTheCarComeBack(String name) {
        Car car = Demos.car("car", name).value();
        List<Run> laps = new ArrayList<>();
        List<MadeRun.Stage> stages = stages(car);
        for (int lap = 0; lap < LAPS; lap++) {
            laps.add(Run.of(
                    Recording.of(Sensors.usual(50).record(DemoRuns.lap(stages, 1, lap), lap)), Cleaning.STANDARD));
        }
        FrictionEnvelope found = FrictionEnvelope.of(laps, EnvelopeSettings.STANDARD);
        // Corners are driven at 13 to 38 m/s, braked for from 63.
        for (double speed = 15; speed <= 35; speed += 5) {
            assertEquals(1, found.lateral(speed).value() / lateral(car, speed), ALLOWED, "across at " + speed);
        }
        for (double speed = 20; speed <= 55; speed += 5) {
            assertEquals(1, found.braking(speed).value() / braking(car, speed), ALLOWED, "along at " + speed);
        }
        assertTrue(found.lateral(25).holds(lateral(car, 25)));
        assertTrue(found.braking(35).holds(braking(car, 35)));
    }

    /** Brakes as hard as the wheels bear, slowly enough for the load to follow, as late as the car makes the corner. */
    private static List<MadeRun.Stage> stages(Car car) {
        List<MadeRun.Stage> stages = new ArrayList<>();
        for (String corner : List.of("medium", "hairpin", "fast")) {
            CornerStudy study = CornerStudy.of(
                    car,
                    Demos.corner("corner", corner).value(),
                    EAGER,
                    SimulationSettings.STANDARD,
                    Allowance.NO_MARGIN);
            Release release = new Release(
                    ReleaseShapes.LINEAR, -15, 0.3 * study.simulator().apex());
            Braking hard = Braking.of(0.975 * study.lockLimit(), 0.6, release);
            stages.add(new MadeRun.Stage(study, study.latest(hard).entry().plan()));
        }
        return stages;
    }

    private static double lateral(Car car, double speed) {
        return GgDiagram.of(car, speed, 201).boundary().stream()
                .filter(point -> Math.abs(point.deceleration()) < 0.2)
                .mapToDouble(GgDiagram.Point::lateral)
                .max()
                .orElseThrow();
    }

    private static double braking(Car car, double speed) {
        List<GgDiagram.Point> boundary = GgDiagram.of(car, speed, 3).boundary();
        return boundary.get(boundary.size() - 1).deceleration();
    }
}
