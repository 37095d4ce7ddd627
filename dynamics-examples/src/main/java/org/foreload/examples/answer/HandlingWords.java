package org.foreload.examples.answer;

import org.foreload.examples.output.Numbers;
import org.foreload.handling.LinearHandling;

/** How a car handles, in a sentence. */
public final class HandlingWords {

    /** Seconds to which a time is said; what is shorter, nobody notices. */
    private static final double SHORTEST = 0.01;

    private HandlingWords() {}

    /**
     * What follows {@code the car}: {@code oversteers (understeer gradient -0.10°/g); with the steering held fixed, a
     * disturbance halves in 0.19 s}.
     */
    public static String of(LinearHandling handling, Units units) {
        String kind = handling.characteristicSpeed().isPresent()
                ? "understeers"
                : handling.criticalSpeed().isPresent() ? "oversteers" : "is neutral";
        double time = Math.log(2) / Math.abs(handling.decayRate());
        return kind + " (understeer gradient " + units.understeerGradient(handling.understeerGradient()) + ")"
                + (handling.stable() ? "; with" : " and is unstable: with")
                + " the steering held fixed, a disturbance "
                + (handling.stable() ? "halves" : "doubles")
                + (time < SHORTEST ? " in less than " + SHORTEST : " in " + Numbers.rounded(time, 2))
                + " s";
    }
}
