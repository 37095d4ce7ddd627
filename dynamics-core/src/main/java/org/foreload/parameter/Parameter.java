package org.foreload.parameter;

import java.util.Objects;
import java.util.function.ToDoubleFunction;

/**
 * One named, unit-bearing number inside an immutable model: how it is read, and how a copy of the model with another
 * value is made.
 *
 * @param <T> the immutable model
 * @param name name with the unit, as in the files: {@code mass_kg}
 * @param unit unit in words or symbols: {@code kg}; empty for a plain number
 * @param reader reads the number
 * @param replacer makes the copy
 */
public record Parameter<T>(String name, String unit, ToDoubleFunction<T> reader, Replacer<T> replacer) {

    /** Checks that nothing is missing. */
    public Parameter {
        Objects.requireNonNull(name);
        Objects.requireNonNull(unit);
        Objects.requireNonNull(reader);
        Objects.requireNonNull(replacer);
    }

    /**
     * Makes a copy of a model with one number replaced.
     *
     * @param <T> the immutable model
     */
    @FunctionalInterface
    public interface Replacer<T> {
        /** Returns the copy of {@code model} whose number is {@code value}. */
        T with(T model, double value);
    }

    /** Reads the number. */
    public double of(T model) {
        return reader.applyAsDouble(model);
    }

    /** Returns a copy of {@code model} in which the number is {@code value}. */
    public T with(T model, double value) {
        return replacer.with(model, value);
    }
}
