package org.foreload.examples.command;

/** What every help says at its end. */
final class Cautions {

    static final String FIRST =
            "A model of cars on a closed course or in a simulator: it explores and explains, it does not";

    static final String SECOND = "instruct. Local rules, the car's maker and a qualified instructor come first.";

    private Cautions() {}
}
