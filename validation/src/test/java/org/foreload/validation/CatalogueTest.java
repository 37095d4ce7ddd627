package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.validation.subject.Subjects;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every check of the catalogue, one test each. */
class CatalogueTest {

    @TestFactory
    Stream<DynamicTest> everyCheckHolds() {
        return Results.ALL.stream()
                .map(result -> DynamicTest.dynamicTest(
                        result.check().id() + " " + result.check().name(),
                        () -> assertTrue(result.passed(), () -> words(result))));
    }

    private static String words(CheckResult result) {
        Check check = result.check();
        return check.id() + ": expected " + check.relation().sign() + " " + check.expected() + " " + check.unit()
                + ", computed " + result.computed() + ", error " + result.error() + ", budget " + check.budget() + " ("
                + check.source() + ") " + result.failure();
    }

    /** Here, and no class of its own: the catalogue takes half a minute, and is run once for both. */
    @Nested
    class TheCommittedReport extends CommittedReport {}

    @Test
    void theCatalogueIsLargeAndMostOfItIsReadOrExact() {
        long strong = Results.ALL.stream()
                .map(result -> result.check().status())
                .filter(status -> status == Status.READ || status == Status.EXACT)
                .count();
        assertTrue(Results.ALL.size() >= 60, () -> Results.ALL.size() + " checks");
        assertTrue(strong >= 40, () -> strong + " checks read or exact");
    }

    @Test
    void noCodeUnderTestLiesIdle() {
        Set<String> used =
                Results.ALL.stream().map(result -> result.check().subject()).collect(Collectors.toSet());
        Set<String> idle = new TreeSet<>(Subjects.names());
        idle.removeAll(used);
        assertEquals(Set.of(), idle);
    }

    /**
     * A check that cannot fail proves nothing: none is so wide that nought, or twice the value, would pass as equal.
     */
    @Test
    void noBudgetIsAsWideAsTheValue() {
        Results.ALL.stream()
                .map(CheckResult::check)
                .filter(check -> check.relation() == Relation.EQUAL && check.expected() != 0)
                .forEach(check -> assertTrue(check.budget() < 0.1 * Math.abs(check.expected()), check.id()));
    }
}
