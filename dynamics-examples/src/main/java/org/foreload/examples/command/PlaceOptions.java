package org.foreload.examples.command;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Mixin;

/** Which car, in which corner. */
final class PlaceOptions {

    @Mixin
    private CarOptions carOptions;

    @Mixin
    private CornerOptions cornerOptions;

    /**
     * Reads car and corner, prints their warnings, and asks; what the core refuses is blamed on what the user wrote.
     *
     * @param question about a car and a corner
     */
    <T> T ask(Console console, BiFunction<Car, Corner, T> question) {
        Car car = carOptions.car(console);
        Corner corner = cornerOptions.corner(console);
        return new Blame(carOptions, cornerOptions).compute(() -> question.apply(car, corner));
    }

    /**
     * The same for a question about a study.
     *
     * @param made the study of a car and a corner
     * @param question about that study
     */
    <T> T ask(Console console, BiFunction<Car, Corner, CornerStudy> made, Function<CornerStudy, T> question) {
        return ask(console, (car, corner) -> question.apply(made.apply(car, corner)));
    }
}
