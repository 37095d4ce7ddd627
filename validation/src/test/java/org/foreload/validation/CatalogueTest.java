package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every check of the catalogue, one test each. */
class CatalogueTest {

    private static final List<Check> CHECKS = Catalogue.read();

    @TestFactory
    Stream<DynamicTest> everyCheckHolds() {
        return CHECKS.stream().map(check -> DynamicTest.dynamicTest(check.id() + " " + check.name(), () -> {
            CheckResult result = Validation.run(check);
            assertTrue(
                    result.passed(),
                    () -> check.id() + ": expected " + check.relation().sign() + " " + check.expected() + " "
                            + check.unit() + ", computed " + result.computed() + ", error " + result.error()
                            + ", budget " + check.budget() + " (" + check.source() + ") " + result.failure());
        }));
    }

    @Test
    void theCatalogueIsLargeAndMostOfItIsReadOrExact() {
        long strong = CHECKS.stream()
                .filter(check -> check.status() == Status.READ || check.status() == Status.EXACT)
                .count();
        assertTrue(CHECKS.size() >= 60, () -> CHECKS.size() + " checks");
        assertTrue(strong >= 40, () -> strong + " checks read or exact");
    }
}
