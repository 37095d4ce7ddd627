package org.foreload.validation;

import java.util.List;
import org.foreload.validation.subject.Subjects;

/** Runs checks. */
public final class Validation {

    private Validation() {}

    /** Runs checks on all processors; results come in the order of the checks. */
    public static List<CheckResult> run(List<Check> checks) {
        return checks.parallelStream().map(Validation::run).toList();
    }

    /** Runs one check; what it throws becomes a failed result. */
    public static CheckResult run(Check check) {
        try {
            return CheckResult.of(check, Subjects.named(check.subject()).compute(check.inputs()));
        } catch (RuntimeException e) {
            return CheckResult.failed(check, e);
        }
    }
}
