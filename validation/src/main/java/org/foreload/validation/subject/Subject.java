package org.foreload.validation.subject;

/** Code under test: named inputs in, one number out, by way of the library. */
@FunctionalInterface
public interface Subject {

    /** Computes the number, in the unit of the check. */
    double compute(Inputs in);
}
