package org.foreload;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every public constructor, factory and method of the core refuses null where it is handed over, by a
 * {@link NullPointerException} that names the argument: common practice, no source. What an argument holds is not
 * looked at.
 */
class NullsTest {

    /**
     * Packages whose methods run in every step of a simulation or a solution, where the virtual machine refuses null by
     * itself, without a name; their constructors and factories name it.
     */
    private static final Set<String> IN_A_STEP = Set.of("bicycle", "driver", "integrate", "collocation", "tyre");

    /** What takes null as it stands: messages of guards, and values that are looked up or printed. */
    private static final Set<String> TAKES_NULL = Set.of(
            "conventions.Checks.finite(String,double) field",
            "conventions.Checks.number(String,double) field",
            "conventions.Checks.positive(String,double) field",
            "conventions.Checks.notNegative(String,double) field",
            "conventions.Checks.within(String,double,double,double) field",
            "conventions.InvalidValueException.new(String,Object,String) value");

    /** Arguments for whose companions there is no simple value. A shorter list is better, a longer one fails. */
    private static final Set<String> UNTRIED = Set.of("optimum.Neighbourhood.in(CornerStudy,double) there");

    /** Numbers that are tried for all arguments that are numbers, until none is refused. */
    private static final double[] NUMBERS = {0.5, 1, 10, 30, 300, 0};

    private final SampleValues values = new SampleValues();

    /** What came of null for one argument. */
    private enum Answer {
        NAMED,
        NOT_NAMED,
        UNTRIED
    }

    @Test
    void nullIsRefusedByName() {
        Set<String> broken = new TreeSet<>();
        Set<String> untried = new TreeSet<>();
        for (Class<?> type : PublicTypes.all()) {
            for (Executable member : PublicTypes.members(type)) {
                Parameter[] parameters = member.getParameters();
                for (int i = 0; i < parameters.length; i++) {
                    String what = PublicTypes.name(member) + " " + parameters[i].getName();
                    if (parameters[i].getType().isPrimitive() || isInAStep(member) || TAKES_NULL.contains(what)) {
                        continue;
                    }
                    switch (answer(member, i)) {
                        case NOT_NAMED -> broken.add(what);
                        case UNTRIED -> untried.add(what);
                        default -> {}
                    }
                }
            }
        }
        assertEquals(Set.of(), broken, "take null, or refuse it without a name");
        assertEquals(new TreeSet<>(UNTRIED), untried, "not tried");
    }

    private static boolean isStatic(Executable member) {
        return member instanceof Constructor || Modifier.isStatic(member.getModifiers());
    }

    private static boolean isInAStep(Executable member) {
        Class<?> type = member.getDeclaringClass();
        return !isStatic(member)
                && (IN_A_STEP.contains(PublicTypes.room(type))
                        || PublicTypes.name(member).endsWith(".at(double,Place)"));
    }

    private Answer answer(Executable member, int argument) {
        Answer answer = Answer.UNTRIED;
        for (int i = 0; i < NUMBERS.length && answer == Answer.UNTRIED; i++) {
            answer = answer(member, argument, NUMBERS[i]);
        }
        return answer;
    }

    private Answer answer(Executable member, int argument, double number) {
        Parameter[] parameters = member.getParameters();
        Object[] arguments = new Object[parameters.length];
        for (int i = 0; i < parameters.length; i++) {
            Optional<Object> value = values.of(parameters[i].getParameterizedType(), number);
            if (value.isEmpty() && i != argument) {
                return Answer.UNTRIED;
            }
            arguments[i] = i == argument ? null : value.get();
        }
        Optional<Object> self = isStatic(member) ? Optional.of("none") : values.of(member.getDeclaringClass(), number);
        if (self.isEmpty()) {
            return Answer.UNTRIED;
        }
        try {
            if (member instanceof Constructor<?> constructor) {
                constructor.newInstance(arguments);
            } else {
                ((Method) member).invoke(self.get(), arguments);
            }
            return Answer.NOT_NAMED;
        } catch (InvocationTargetException refused) {
            if (refused.getCause() instanceof NullPointerException missing) {
                return names(member, parameters[argument]).anyMatch(name -> name.equals(missing.getMessage()))
                        ? Answer.NAMED
                        : Answer.NOT_NAMED;
            }
            return Answer.UNTRIED;
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Name of the argument, or, where a record is copied with another part, the name of that part. */
    private static Stream<String> names(Executable member, Parameter argument) {
        RecordComponent[] parts = member.getDeclaringClass().getRecordComponents();
        Stream<String> own = Stream.of(argument.getName());
        return parts == null || isStatic(member)
                ? own
                : Stream.concat(
                        own,
                        Arrays.stream(parts)
                                .filter(part -> part.getType() == argument.getType())
                                .map(RecordComponent::getName));
    }
}
