package org.foreload.validation;

import java.util.List;
import java.util.function.Consumer;
import org.foreload.validation.subject.Subjects;

/** Runs checks. */
public final class Validation {

    private Validation() {}

    /** Runs the whole catalogue, in its order. */
    public static List<CheckResult> run() {
        return run(Catalogue.read(), done -> {});
    }

    /**
     * Runs checks.
     *
     * @param checks which
     * @param done told of each result as it comes
     */
    public static List<CheckResult> run(List<Check> checks, Consumer<CheckResult> done) {
        return checks.stream().map(Validation::run).peek(done).toList();
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
