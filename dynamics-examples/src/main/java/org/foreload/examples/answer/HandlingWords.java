package org.foreload.examples.answer;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.foreload.examples.output.Numbers;
import org.foreload.handling.LinearHandling;
import org.foreload.handling.Trim;
import org.foreload.load.Wheel;

/** How a car handles, in a sentence. */
public final class HandlingWords {

    /** Seconds to which a time is said; what is shorter, nobody notices. */
    private static final double SHORTEST = 0.01;

    /** Gradient, rad per m/s², from which on its sign can be seen: 0.005° per g. */
    private static final double SHOWN = 1e-5;

    private static final String UNDERSTEERS = "understeers";
    private static final String OVERSTEERS = "oversteers";

    private HandlingWords() {}

    /** The wheels that anti-lock brakes hold back, and what comes of it; empty where they hold back none. */
    public static Optional<String> heldBack(Trim trim) {
        String wheels = Arrays.stream(Wheel.values())
                .filter(trim.heldBack()::contains)
                .map(wheel -> wheel.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                .collect(Collectors.joining(", "));
        return wheels.isEmpty()
                ? Optional.empty()
                : Optional.of("Anti-lock brakes hold back: " + wheels
                        + ". Such a wheel brakes as hard as its load lets it, not as the pedal asks. So the inner wheels brake "
                        + "less the harder the car corners, the outer ones brake on, and that turns the car out of the bend. "
                        + "The numbers jump where a wheel begins to be held back; real brakes need time to act, so do not "
                        + "rely on what it steadies.");
    }

    /**
     * What follows {@code the car}: {@code oversteers (understeer gradient -0.10°/g); with the steering held fixed, a
     * disturbance halves in 0.19 s}.
     */
    public static String of(LinearHandling handling, Units units) {
        String said = units.understeerGradient(handling.understeerGradient());
        double time = Math.log(2) / Math.abs(handling.decayRate());
        return kind(handling, said)
                + (handling.stable() ? "; with" : " and is unstable: with")
                + " the steering held fixed, a disturbance "
                + (handling.stable() ? "halves" : "doubles")
                + (time < SHORTEST ? " in less than " + SHORTEST : " in " + Numbers.rounded(time, 2))
                + " s";
    }

    /**
     * The gradient holds the deceleration, both speeds hold the pedals: near a neutral car, or where anti-lock brakes
     * hold a wheel back, the two can differ in sign, and each is said by its own name then.
     */
    private static String kind(LinearHandling handling, String gradient) {
        String said = " (understeer gradient " + gradient + ")";
        String held = handling.characteristicSpeed().isPresent()
                ? UNDERSTEERS
                : handling.criticalSpeed().isPresent() ? OVERSTEERS : "is neutral";
        String steady = handling.understeerGradient() > 0 ? UNDERSTEERS : OVERSTEERS;
        boolean contrary = Math.abs(handling.understeerGradient()) > SHOWN
                && (held.equals(UNDERSTEERS) || held.equals(OVERSTEERS))
                && !held.equals(steady);
        return contrary
                ? steady + " at this deceleration" + said + " but " + held + " with the pedals held"
                : held + said;
    }
}
