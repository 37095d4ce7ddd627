package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.foreload.validation.subject.Inputs;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks fail when they must. */
class CheckResultTest {

    private static Check check(String relation, String subject) {
        Inputs none = new Inputs(Map.of());
        return new Check(
                "0.0", "name", "source", Status.EXACT, subject, none, Relation.of(relation), 10, "", 0.5, "reason");
    }

    @ParameterizedTest
    @CsvSource({
        "=, 10.5, true",
        "=, 10.6, false",
        "=, 9.5, true",
        "=, 9.4, false",
        "=, NaN, false",
        "≥, 9.5, true",
        "≥, 9.4, false",
        "≥, 99, true",
        "≥, NaN, false",
        "≤, 10.5, true",
        "≤, 10.6, false",
        "≤, -99, true",
        "≤, NaN, false"
    })
    void holdsWithinItsBudget(String relation, double computed, boolean holds) {
        assertEquals(holds, CheckResult.of(check(relation, "x"), computed).passed());
    }

    @ParameterizedTest
    @CsvSource({"no such subject", "skid-speed"})
    void whatCannotBeComputedHasFailed(String subject) {
        CheckResult result = Validation.run(check("=", subject));
        assertFalse(result.passed());
        assertTrue(result.failure().contains("no "), result.failure());
    }
}
