package org.foreload.examples.command;

import java.util.function.Supplier;
import org.foreload.conventions.InvalidValueException;
import org.foreload.file.CarFile;
import org.foreload.file.CornerFile;
import org.foreload.file.InputException;

/**
 * Turns what the core refuses during a computation into a refusal of what the user wrote: a field of the car's file, a
 * field of the corner's file, or an option.
 */
final class Blame {

    private final String car;
    private final String corner;

    Blame(CarOptions car, CornerOptions corner) {
        this.car = car.source();
        this.corner = corner.source();
    }

    /** For a computation without a corner. */
    Blame(CarOptions car) {
        this.car = car.source();
        this.corner = null;
    }

    /** Runs a computation. */
    <T> T compute(Supplier<T> computation) {
        try {
            return computation.get();
        } catch (InvalidValueException e) {
            if (CarFile.hasField(e.field())) {
                throw InputException.of(car, e.field(), e);
            }
            if (CornerFile.hasField(e.field())) {
                throw InputException.of(corner, e.field(), e);
            }
            throw InputException.of(null, "--" + e.field().replace('_', '-'), e);
        }
    }
}
