package org.foreload.examples.command;

import java.nio.file.Path;
import org.foreload.examples.demo.Demos;
import org.foreload.file.CarFile;
import org.foreload.file.InputException;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which car. */
final class CarOptions {

    @Option(names = "--car", paramLabel = "<file>", description = "The car as a JSON file (docs/car.schema.json).")
    private Path file;

    @Option(
            names = "--demo-car",
            completionCandidates = Candidates.Cars.class,
            paramLabel = "<name>",
            description = "An embedded car instead: road, light or downforce. Default: " + Demos.DEFAULT_CAR + ".")
    private String demo;

    @Mixin
    private RoadFriction road;

    /** Reads the car, prints its warnings, and puts it on its road. */
    Car car(Console console) {
        road.check();
        return road.under(described(console));
    }

    private Car described(Console console) {
        if (file != null && demo != null) {
            throw new InputException(null, "--demo-car", demo, "must not be given together with --car");
        }
        if (file != null) {
            return console.warned(CarFile.read(file));
        }
        return console.warned(Demos.car("--demo-car", demoName()));
    }

    /** The name that errors give. */
    String source() {
        return file != null ? file.toString() : Demos.carSource(demoName());
    }

    private String demoName() {
        return demo == null ? Demos.DEFAULT_CAR : demo;
    }
}
