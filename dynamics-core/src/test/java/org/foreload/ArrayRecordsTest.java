package org.foreload;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.lang.reflect.Array;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Public records are values, those that hold arrays too: two with the same numbers are equal, and nobody changes one
 * through an array that went in or came out (the contract of {@link Record}; J. Bloch, Effective Java, 3rd edition
 * 2018, items 10, 11 and 50).
 */
class ArrayRecordsTest {

    private static final SampleValues VALUES = new SampleValues();

    static Stream<Class<?>> records() {
        return PublicTypes.all().stream()
                .filter(type -> type.isRecord())
                .filter(type -> Arrays.stream(type.getRecordComponents())
                        .anyMatch(part -> part.getType().isArray()));
    }

    /** What a record is made of: values that its constructor takes, one and the same for whatever is no array. */
    private static Object[] parts(Class<?> type) {
        Object sample = VALUES.of(type, 1).orElseThrow();
        return Arrays.stream(type.getRecordComponents())
                .map(part -> read(part, sample))
                .toArray();
    }

    private static Object read(RecordComponent part, Object from) {
        try {
            return part.getAccessor().invoke(from);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(part.toString(), e);
        }
    }

    private static Object make(Class<?> type, Object[] parts) {
        Class<?>[] types = Arrays.stream(type.getRecordComponents())
                .map(RecordComponent::getType)
                .toArray(Class<?>[]::new);
        try {
            return type.getConstructor(types).newInstance(parts);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(type.toString(), e);
        }
    }

    private static double[] copy(Object array) {
        assertEquals(double[].class, array.getClass(), "this test knows numbers only");
        double[] copy = ((double[]) array).clone();
        assertNotEquals(0, copy.length, "no number to change");
        return copy;
    }

    @ParameterizedTest
    @MethodSource("records")
    void areEqualByTheirNumbers(Class<?> type) {
        Object[] parts = parts(type);
        Object[] copies = Arrays.stream(parts)
                .map(part -> part.getClass().isArray() ? copy(part) : part)
                .toArray();
        Object one = make(type, parts);
        assertEquals(one, make(type, copies));
        assertEquals(one.hashCode(), make(type, copies).hashCode());
        for (int i = 0; i < parts.length; i++) {
            if (parts[i].getClass().isArray()) {
                Object[] others = parts.clone();
                double[] other = copy(parts[i]);
                other[other.length - 1] = Math.nextUp(other[other.length - 1]);
                others[i] = other;
                assertNotEquals(one, make(type, others));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("records")
    void cannotBeChangedThroughAnArray(Class<?> type) {
        Object[] parts = parts(type);
        Object record = make(type, parts);
        for (RecordComponent part : type.getRecordComponents()) {
            if (part.getType().isArray()) {
                double[] before = copy(read(part, record));
                Arrays.stream(parts)
                        .filter(given -> given.getClass().isArray())
                        .forEach(given -> Array.setDouble(given, 0, -1e9));
                assertArrayEquals(before, (double[]) read(part, record), "what went in was not copied");
                Array.setDouble(read(part, record), 0, -1e9);
                assertArrayEquals(before, (double[]) read(part, record), "what came out was not copied");
            }
        }
    }
}
