package org.foreload.validation.subject;

import java.util.function.Function;

/** Code under test: named inputs in, one number out, by way of the library. */
@FunctionalInterface
public interface Subject {

    /** Name of the input that says which of several numbers of the same work a check wants. */
    String GIVE = "give";

    /** Computes the number, in the unit of the check. */
    double compute(Inputs in);

    /**
     * Does the work that checks have in common whose inputs differ in {@link #GIVE} alone, and returns what reads their
     * numbers off it. Here there is none.
     */
    default Subject prepared(Inputs in) {
        return this;
    }

    /**
     * A subject of which several numbers can be asked for the same work.
     *
     * @param work what takes the time; returns what reads a number off it
     */
    static Subject once(Function<Inputs, Subject> work) {
        return new Subject() {
            @Override
            public double compute(Inputs in) {
                return work.apply(in).compute(in);
            }

            @Override
            public Subject prepared(Inputs in) {
                return work.apply(in);
            }
        };
    }
}
