package org.foreload.entry;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;

/** One entry that makes the corner, with its numbers: a rigid road car, a brake that comes down at once. */
final class SampleRun {

    static final Car CAR = SampleEntries.withoutLags(SampleEntries.ROAD);
    static final Corner CORNER = SampleEntries.medium(45);
    static final SpeedPlan EXIT = new SpeedPlan(new double[] {80, 285}, new double[] {22.5, 32});

    static final double MASS = 1380;
    static final double WEIGHT = MASS * 9.81;
    static final double TO_FRONT = 1.08;
    static final double TO_REAR = 1.54;
    static final double WHEELBASE = 2.62;
    static final double HEIGHT = 0.52;

    static final double BRAKE_POINT = -130;
    static final double PEAK = 6;

    static final BrakePlan PLAN =
            Braking.of(PEAK, 0, new Release(ReleaseShapes.LINEAR, -10, 25)).from(BRAKE_POINT);

    private SampleRun() {}

    /** A practised driver in a car, in the corner or in another one. */
    static EntrySimulator simulator(Car car, Corner corner) {
        return new EntrySimulator(car, corner, DriverSettings.practised(), EXIT, SimulationSettings.STANDARD);
    }

    static EntrySimulator simulator(Car car) {
        return simulator(car, CORNER);
    }

    /** Friction of a tyre of the car whose friction at 3600 N is given, under a load, N. */
    static double friction(double peak, double load) {
        return peak * (1 - 0.08 * (load - 3600) / 3600);
    }
}
