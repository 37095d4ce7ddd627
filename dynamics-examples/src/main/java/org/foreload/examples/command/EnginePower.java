package org.foreload.examples.command;

import org.foreload.examples.output.Numbers;
import org.foreload.vehicle.Car;

/** Warns of a steady motion that tyres would carry and the engine cannot keep up. */
final class EnginePower {

    private static final double KILO = 1e-3;

    private EnginePower() {}

    /**
     * Prints one line if a motion takes more power than the engine has.
     *
     * @param asked drive power, W
     */
    static void check(Console console, Car car, double asked) {
        double most = car.driveline().power();
        if (asked > most) {
            console.line("warning: this motion takes " + kilowatts(asked)
                    + " at the driven wheels, and the engine gives " + kilowatts(most) + ": the car cannot keep it up");
        }
    }

    private static String kilowatts(double watts) {
        return Numbers.rounded(KILO * watts, 1) + " kW";
    }
}
