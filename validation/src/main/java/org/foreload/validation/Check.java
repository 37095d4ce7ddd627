package org.foreload.validation;

import java.util.Objects;
import org.foreload.validation.subject.Inputs;

/**
 * One check: an outside value, and what of the library has to give it.
 *
 * @param id short and lasting: {@code 1.4-rear}
 * @param name what is checked, for people
 * @param source author, work, section or page; for exact values, what they follow from
 * @param status where the value comes from
 * @param subject name of the code under test, in {@link org.foreload.validation.subject.Subjects}
 * @param inputs what it is computed from
 * @param relation how the computed value must stand to the expected one
 * @param expected value from outside
 * @param unit of expected value and budget; empty for a plain number
 * @param budget error that is allowed, above zero, chosen before the result was seen
 * @param reason why the budget is as wide as it is
 */
public record Check(
        String id,
        String name,
        String source,
        Status status,
        String subject,
        Inputs inputs,
        Relation relation,
        double expected,
        String unit,
        double budget,
        String reason) {

    /** Checks that nothing is missing. */
    public Check {
        Objects.requireNonNull(status);
        Objects.requireNonNull(inputs);
        Objects.requireNonNull(relation);
        Objects.requireNonNull(unit);
        if (id.isBlank() || name.isBlank() || source.isBlank() || subject.isBlank() || reason.isBlank()) {
            throw new IllegalArgumentException("check " + id + " lacks a name, source, subject or reason");
        }
        if (!Double.isFinite(expected) || !(budget > 0) || !Double.isFinite(budget)) {
            throw new IllegalArgumentException("check " + id + " needs a finite value and a budget above 0");
        }
    }
}
