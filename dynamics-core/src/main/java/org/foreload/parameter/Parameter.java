package org.foreload.parameter;

import java.lang.invoke.MethodHandles;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.Function;
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
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(reader, "reader");
        Objects.requireNonNull(replacer, "replacer");
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

    /**
     * A number that is a component of a record; the copy is made by the record's own constructor, which checks it.
     *
     * @param <T> the record
     * @param type the record
     * @param component name of the component, a {@code double}
     * @param name name with the unit, as in the files
     * @param unit unit; empty for a plain number
     * @throws IllegalArgumentException if the record has no such number, or is hidden from this library: it must be
     *     public, in a package that its module, if it is in one, exports
     */
    public static <T extends Record> Parameter<T> component(Class<T> type, String component, String name, String unit) {
        Objects.requireNonNull(type, "type");
        Objects.requireNonNull(component, "component");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(unit, "unit");
        RecordComponent[] components = type.getRecordComponents();
        int place =
                Arrays.stream(components).map(RecordComponent::getName).toList().indexOf(component);
        if (place < 0 || components[place].getType() != double.class) {
            throw new IllegalArgumentException(type.getSimpleName() + " has no number " + component);
        }
        Constructor<T> canonical = reached(type, components);
        return new Parameter<>(name, unit, model -> (double) read(components[place], model), (model, value) -> {
            Object[] values = new Object[components.length];
            for (int i = 0; i < values.length; i++) {
                values[i] = i == place ? (Object) value : read(components[i], model);
            }
            return copy(canonical, values);
        });
    }

    /** The canonical constructor of a record whose numbers can be read. */
    private static <T extends Record> Constructor<T> reached(Class<T> type, RecordComponent[] components) {
        try {
            Constructor<T> canonical = type.getDeclaredConstructor(
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
            MethodHandles.publicLookup().unreflectConstructor(canonical);
            for (RecordComponent component : components) {
                MethodHandles.publicLookup().unreflect(component.getAccessor());
            }
            return canonical;
        } catch (ReflectiveOperationException hidden) {
            throw new IllegalArgumentException(
                    type.getName() + " is hidden: a record with parameters must be public, in an exported package",
                    hidden);
        }
    }

    private static Object read(RecordComponent component, Record model) {
        try {
            return component.getAccessor().invoke(model);
        } catch (ReflectiveOperationException hidden) {
            throw new IllegalStateException(hidden);
        }
    }

    private static <T extends Record> T copy(Constructor<T> canonical, Object[] values) {
        try {
            return canonical.newInstance(values);
        } catch (InvocationTargetException refused) {
            if (refused.getCause() instanceof RuntimeException own) {
                throw own;
            }
            throw new IllegalStateException(refused);
        } catch (ReflectiveOperationException hidden) {
            throw new IllegalStateException(hidden);
        }
    }

    /**
     * The same number in a model that this one is a part of.
     *
     * @param <M> the whole
     * @param part reads the part
     * @param with makes a copy of the whole with another part
     */
    public <M> Parameter<M> within(
            Function<? super M, ? extends T> part, BiFunction<? super M, ? super T, ? extends M> with) {
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(with, "with");
        return new Parameter<>(
                name,
                unit,
                whole -> reader.applyAsDouble(part.apply(whole)),
                (whole, value) -> with.apply(whole, replacer.with(part.apply(whole), value)));
    }

    /** Reads the number. */
    public double of(T model) {
        Objects.requireNonNull(model, "model");
        return reader.applyAsDouble(model);
    }

    /** Returns a copy of {@code model} in which the number is {@code value}. */
    public T with(T model, double value) {
        Objects.requireNonNull(model, "model");
        return replacer.with(model, value);
    }
}
