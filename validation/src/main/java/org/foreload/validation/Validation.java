package org.foreload.validation;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.foreload.validation.subject.Inputs;
import org.foreload.validation.subject.Subject;
import org.foreload.validation.subject.Subjects;

/** Runs checks. */
public final class Validation {

    private Validation() {}

    /**
     * Runs checks on all processors, and what several of them have in common once; results come in the order of the
     * checks.
     */
    public static List<CheckResult> run(List<Check> checks) {
        Collection<List<Check>> groups =
                checks.stream().collect(Collectors.groupingBy(Work::of)).values();
        Map<Check, CheckResult> results = groups.parallelStream()
                .flatMap(group -> together(group).stream())
                .collect(Collectors.toMap(CheckResult::check, Function.identity()));
        return checks.stream().map(results::get).toList();
    }

    /** What checks have in common that ask one subject for several numbers. */
    private record Work(String subject, Inputs inputs) {

        static Work of(Check check) {
            return new Work(check.subject(), check.inputs().without(Subject.GIVE));
        }
    }

    private static List<CheckResult> together(List<Check> group) {
        try {
            Check first = group.get(0);
            Subject prepared = Subjects.named(first.subject()).prepared(first.inputs());
            return group.stream().map(check -> run(check, prepared)).toList();
        } catch (RuntimeException e) {
            return group.stream().map(check -> CheckResult.failed(check, e)).toList();
        }
    }

    /** Runs one check; what it throws becomes a failed result. */
    public static CheckResult run(Check check) {
        return together(List.of(check)).get(0);
    }

    private static CheckResult run(Check check, Subject subject) {
        try {
            return CheckResult.of(check, subject.compute(check.inputs()));
        } catch (RuntimeException e) {
            return CheckResult.failed(check, e);
        }
    }
}
