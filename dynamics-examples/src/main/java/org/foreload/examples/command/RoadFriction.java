package org.foreload.examples.command;

import org.foreload.examples.output.Numbers;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Option;

/** What the car stands on. */
final class RoadFriction {

    static final String NAME = "--road-friction";

    @Option(
            names = NAME,
            paramLabel = "<share>",
            defaultValue = "1",
            description =
                    "Friction of the road as a share of what the car's tyres are described on: 0.6 or so for a wet one. "
                            + "Peaks change, stiffnesses stay. Default: ${DEFAULT-VALUE}.")
    private double share;

    /** Refuses a share that no road has, before anything is read. */
    void check() {
        Options.within(NAME, share, 0.05, 2, "");
    }

    /** The car on this road; its name says so where the road is another one. */
    Car under(Car car) {
        return share == 1
                ? car
                : car.withRoadFriction(share).withName(car.name() + " (road friction " + Numbers.shortest(share) + ")");
    }
}
