package org.foreload.examples.learn;

import org.foreload.grip.AxleUse;
import org.foreload.grip.GripUse;
import org.foreload.load.WheelLoads;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * What the table holds for one setting, all of it smooth in the four sliders so that it can be interpolated well: wheel
 * loads, N; what is left of each wheel's lateral grip, squared; and where each axle is in its friction circle.
 *
 * <p>A wheel's lateral grip beside a longitudinal force F is peakY·√(1 − (F/peakX)²), whose square is a polynomial of
 * deceleration, brake share, height and friction. The square is kept, in kN², with its sign: below zero the wheel is
 * locked.
 *
 * @param values in the order of {@link #NAMES}
 */
record GripQuantities(double[] values) {

    /** Names of the quantities, as the page's script knows them. */
    static final String[] NAMES = {
        "loadFl", "loadFr", "loadRl", "loadRr",
        "leftFl", "leftFr", "leftRl", "leftRr",
        "frontAlong", "frontAcross", "rearAlong", "rearAcross"
    };

    private static final double KILO_SQUARED = 1e6;

    /** Computed by the library. */
    static GripQuantities of(GripSetting setting, Car car) {
        Car applied = setting.applied(car);
        GripUse use = setting.of(car);
        WheelLoads loads = use.loads();
        double[] values = new double[NAMES.length];
        values[0] = loads.frontLeft();
        values[1] = loads.frontRight();
        values[2] = loads.rearLeft();
        values[3] = loads.rearRight();
        Tyre front = applied.frontTyre();
        Tyre rear = applied.rearTyre();
        values[4] = left(front, loads.frontLeft(), use.front());
        values[5] = left(front, loads.frontRight(), use.front());
        values[6] = left(rear, loads.rearLeft(), use.rear());
        values[7] = left(rear, loads.rearRight(), use.rear());
        circle(values, 8, front, loads.frontLeft(), loads.frontRight(), use.front());
        circle(values, 10, rear, loads.rearLeft(), loads.rearRight(), use.rear());
        return new GripQuantities(values);
    }

    /** Square of what one wheel has left, kN². */
    private static double left(Tyre tyre, double load, AxleUse use) {
        double across = tyre.peakForceY(load);
        double along = tyre.peakForceX(load);
        double taken = along > 0 ? use.longitudinalForce() / 2 * across / along : 0;
        return (across * across - taken * taken) / KILO_SQUARED;
    }

    /**
     * Where an axle is in its friction circle: as far from the middle as it uses its grip, in the direction of what is
     * asked over what the axle has.
     */
    private static void circle(double[] values, int at, Tyre tyre, double left, double right, AxleUse use) {
        double along = use.longitudinalForce() / (tyre.peakForceX(left) + tyre.peakForceX(right));
        double across = use.lateralDemand() / (tyre.peakForceY(left) + tyre.peakForceY(right));
        double length = Math.hypot(along, across);
        values[at] = use.utilisation() * along / length;
        values[at + 1] = use.utilisation() * across / length;
    }

    /** What the front axle can give sideways, N. */
    double frontCapacity() {
        return capacity(values[4]) + capacity(values[5]);
    }

    /** What the rear axle can give sideways, N. */
    double rearCapacity() {
        return capacity(values[6]) + capacity(values[7]);
    }

    /** Grip that the front axle uses: 1 at its limit. */
    double frontUse() {
        return Math.hypot(values[8], values[9]);
    }

    /** Grip that the rear axle uses: 1 at its limit. */
    double rearUse() {
        return Math.hypot(values[10], values[11]);
    }

    /** Whether a wheel of either axle is locked. */
    boolean locked() {
        return Math.min(Math.min(values[4], values[5]), Math.min(values[6], values[7])) < 0;
    }

    private static double capacity(double squared) {
        return Math.sqrt(KILO_SQUARED * Math.max(0, squared));
    }
}
