package org.foreload.examples.sheet;

import java.util.Objects;
import org.foreload.examples.answer.Units;
import org.foreload.risk.Scatter;
import org.foreload.strategy.SweepPlan;

/**
 * What a sheet shall be made from.
 *
 * @param releases the sweep in which the plan is looked for
 * @param driver who shall practise it
 * @param samples entries driven to count how often a practice step fails
 * @param seed of their draws
 * @param steps practice steps wanted
 * @param accepted failure probability that each of them may have, 0 to 1
 * @param units in which the page gives speeds beside m/s, and alone where there is room for one
 */
public record SheetRequest(
        SweepPlan releases, Scatter driver, int samples, long seed, int steps, double accepted, Units units) {

    /** Checks that all is there. */
    public SheetRequest {
        Objects.requireNonNull(releases);
        Objects.requireNonNull(driver);
        Objects.requireNonNull(units);
    }
}
