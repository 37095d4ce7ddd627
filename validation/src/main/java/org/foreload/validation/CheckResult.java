package org.foreload.validation;

/**
 * What a check found.
 *
 * @param check the check
 * @param computed what the library gives; NaN if it gives nothing
 * @param error distance from where the value must be, zero or above
 * @param failure what was thrown instead of a value; empty if nothing was
 */
public record CheckResult(Check check, double computed, double error, String failure) {

    static CheckResult of(Check check, double computed) {
        return new CheckResult(check, computed, check.relation().error(check.expected(), computed), "");
    }

    static CheckResult failed(Check check, RuntimeException cause) {
        return new CheckResult(check, Double.NaN, Double.NaN, cause.toString());
    }

    /** Whether the error is within the budget. */
    public boolean passed() {
        return error <= check.budget();
    }

    /** Share of the budget that is used: above 1 for a failed check, NaN if nothing was computed. */
    public double budgetUsed() {
        return error / check.budget();
    }
}
