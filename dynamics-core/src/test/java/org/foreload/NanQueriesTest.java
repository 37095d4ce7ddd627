package org.foreload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Whoever asks at a station, a speed, a slip or a load that is not a number gets no number, or a refusal: what the
 * floating-point standard asks of an operation on NaN (IEEE 754-2019, section 6.2). Never one that looks like an
 * answer, never an endless loop, never an index that is out of bounds.
 */
class NanQueriesTest {

    /** Packages whose methods run in every step of a simulation or a solution. */
    private static final Set<String> IN_A_STEP = Set.of("bicycle", "driver", "integrate", "collocation");

    /**
     * Answers that do not hang on the argument, for the other numbers of this test or for any; and an index, beside
     * which the number that is none goes on into what is computed from its cell.
     */
    private static final Set<String> NOT_ASKED_FOR = Set.of(
            "conventions.Rising.cell(double[],double) at",
            "braking.Pedal$ForceSensing.deceleration(double,double) slip",
            "grip.BrakingGrip.bestDecelerationClosedForm(double,double,double,double,double) cgToFrontAxle",
            "tyre.FrictionTyre.lateralSlipBeside(double,double,double) load",
            "tyre.FrictionTyre.lateralSlipFor(double,double) load",
            "tyre.Tyre.lateralSlipBeside(double,double,double) load",
            "tyre.Tyre.lateralSlipFor(double,double) load");

    /** Numbers that are tried for all other arguments, until none is refused. */
    private static final double[] NUMBERS = {0.5, 1, 10, 30, 0};

    private final SampleValues values = new SampleValues();

    @Test
    void whatIsNotANumberMakesNone() {
        assertTimeoutPreemptively(Duration.ofMinutes(2), () -> assertEquals(Set.of(), numbersFromNan()));
    }

    private Set<String> numbersFromNan() {
        Set<String> found = new TreeSet<>();
        for (Class<?> type : PublicTypes.all()) {
            for (Executable member : PublicTypes.members(type)) {
                if (!(member instanceof Method method) || IN_A_STEP.contains(PublicTypes.room(type))) {
                    continue;
                }
                Parameter[] parameters = member.getParameters();
                for (int i = 0; i < parameters.length; i++) {
                    String what = PublicTypes.name(member) + " " + parameters[i].getName();
                    if (parameters[i].getType() == double.class && !NOT_ASKED_FOR.contains(what)) {
                        answer(method, i).ifPresent(answer -> found.add(what + ": " + answer));
                    }
                }
            }
        }
        return found;
    }

    /** What a method says where it should not; empty where it gives or holds NaN, refuses, or cannot be tried. */
    private Optional<String> answer(Method method, int argument) {
        Optional<String> wrong = Optional.empty();
        for (double number : NUMBERS) {
            Optional<Object[]> arguments = arguments(method, argument, number);
            Optional<Object> self = Modifier.isStatic(method.getModifiers())
                    ? Optional.of("none")
                    : values.of(method.getDeclaringClass(), number);
            if (arguments.isEmpty() || self.isEmpty()) {
                continue;
            }
            try {
                return spoken(method.invoke(self.get(), arguments.get()));
            } catch (InvocationTargetException refused) {
                Throwable cause = refused.getCause();
                boolean about = cause instanceof IllegalArgumentException
                        && cause.getMessage().contains("NaN");
                if (about) {
                    return Optional.empty();
                }
                // Another argument may have been refused first: the next numbers may be taken.
                wrong = cause instanceof IllegalArgumentException ? wrong : Optional.of(cause.toString());
            } catch (IllegalAccessException e) {
                throw new IllegalStateException(e);
            }
        }
        return wrong;
    }

    private Optional<Object[]> arguments(Method method, int argument, double number) {
        Parameter[] parameters = method.getParameters();
        Object[] arguments = new Object[parameters.length];
        for (int i = 0; i < arguments.length; i++) {
            Optional<Object> value =
                    values.of(parameters[i].getParameterizedType(), i == argument ? Double.NaN : number);
            if (value.isEmpty()) {
                return Optional.empty();
            }
            arguments[i] = value.get();
        }
        return Optional.of(arguments);
    }

    /**
     * A number, or something that may hold one; whether something is so may be denied, and a void method says nothing.
     */
    private static Optional<String> spoken(Object answer) {
        return answer == null || answer.equals(false) || String.valueOf(answer).contains("NaN")
                ? Optional.empty()
                : Optional.of(answer.toString());
    }
}
