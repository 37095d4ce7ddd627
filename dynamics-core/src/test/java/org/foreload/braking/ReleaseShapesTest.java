package org.foreload.braking;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ready shapes: names, values, and what they do to a car in a straight line. */
class ReleaseShapesTest {

    /** 64 Gauss nodes leave about 1e-6 at the infinitely steep end of a square root. */
    private static final double QUADRATURE = 2e-6;

    /** Largest error of √(1 − u) read straight between 2000 rows crowded towards 1, spread over both integrals. */
    private static final double TABLE = 1e-6;

    /**
     * Straight line, a(t) = a₀·f(t/T): Δv = a₀·T·I₁ and Δs = v₀·T − a₀·T²·I₂. Closed forms derived (exact): I₁ and I₂
     * of each shape; those of (1 − u²) follow the same way: 2/3 and 1/2 − 1/12 = 5/12.
     */
    @ParameterizedTest
    @CsvSource({
        "abrupt, 1, 0.5",
        "linear, 0.5, 0.33333333333333333",
        "smooth, 0.5, 0.35132118364233778",
        "progressive, 0.33333333333333333, 0.25",
        "held, 0.66666666666666667, 0.41666666666666667",
        "circle, 0.78539816339744831, 0.45206483006411498"
    })
    void straightLineIntegralsHaveTheirClosedForms(String name, double first, double second) {
        straightLine(ReleaseShapes.named(name)::remaining, first, second, QUADRATURE);
    }

    /** The shape √(1 − u), through a table: I₁ = 2/3, I₂ = 2/5 (derived, exact). */
    @Test
    void straightLineIntegralsOfATabulatedRoot() {
        int rows = 2001;
        double[] u = new double[rows];
        double[] remaining = new double[rows];
        for (int i = 0; i < rows; i++) {
            remaining[i] = 1 - i / (rows - 1.0);
            u[i] = 1 - remaining[i] * remaining[i];
        }
        straightLine(new TabulatedRelease(u, remaining)::remaining, 2.0 / 3, 2.0 / 5, QUADRATURE + TABLE);
    }

    /** Speed shed = a₀·T·∫f du; distance = v₀·T − a₀·T²·∫∫f, and the double integral is ∫(1 − u)·f du by parts. */
    private static void straightLine(DoubleUnaryOperator shape, double first, double second, double tolerance) {
        assertEquals(first, Quadrature.integral(shape, 0, 1), tolerance);
        assertEquals(second, Quadrature.integral(u -> (1 - u) * shape.applyAsDouble(u), 0, 1), tolerance);
    }

    @ParameterizedTest
    @CsvSource({
        "linear, 0.25, 0.75",
        "progressive, 0.5, 0.25",
        "held, 0.5, 0.75",
        "circle, 0.6, 0.8",
        "smooth, 0.33333333333333333, 0.75",
        "two-stage, 0.1, 0.725",
        "two-stage, 0.5, 0.45",
        "two-stage, 0.9, 0.225",
        "abrupt, 0.999999, 1"
    })
    void valuesOnTheWay(String name, double u, double remaining) {
        assertEquals(remaining, ReleaseShapes.named(name).remaining(u), 1e-15);
    }

    @Test
    void twoStagePublishesItsCorners() {
        assertArrayEquals(new double[] {0.2, 0.8}, ReleaseShapes.TWO_STAGE.kinks());
    }

    @Test
    void namesLeadBackToTheShapes() {
        for (ReleaseShape shape : ReleaseShapes.all()) {
            assertSame(shape, ReleaseShapes.named(shape.name()));
        }
    }

    @Test
    void anUnknownNameIsAnsweredWithTheNames() {
        InvalidValueException error = assertThrows(InvalidValueException.class, () -> ReleaseShapes.named("gentle"));
        assertEquals("release_shape", error.field());
        assertEquals("gentle", error.value());
        for (ReleaseShape shape : ReleaseShapes.all()) {
            assertTrue(error.allowed().contains(shape.name()), error.getMessage());
        }
    }

    /** The refusal names the column and the row, counted from 1. */
    @ParameterizedTest
    @CsvSource({
        "0, 1, release_shape",
        "0 1, 1, release_shape",
        "0 0.5 0.5 1, 1 1 0 0, 'release_shape, released, row 3'",
        "0 0.5 1.2 1, 1 1 0 0, 'release_shape, released, row 3'",
        "0.1 1, 1 0, 'release_shape, released, row 1'",
        "0 0.9, 1 0, 'release_shape, released, row 2'",
        "0 1, 0.9 0, 'release_shape, remaining, row 1'",
        "0 1, 1 0.1, 'release_shape, remaining, row 2'",
        "0 0.5 1, 1 1.2 0, 'release_shape, remaining, row 2'",
        "0 0.4 0.6 1, 1 0.3 0.4 0, 'release_shape, remaining, row 3'",
        "0 NaN 1, 1 0.5 0, 'release_shape, released, row 2'",
        "0 0.5 1, 1 NaN 0, 'release_shape, remaining, row 2'",
        "0 0.5 1, 1 -0.1 0, 'release_shape, remaining, row 2'",
        "NaN 1, 1 0, 'release_shape, released, row 1'",
        "0 1, NaN 0, 'release_shape, remaining, row 1'"
    })
    void badTablesAreRefused(String u, String remaining, String field) {
        InvalidValueException error =
                assertThrows(InvalidValueException.class, () -> new TabulatedRelease(numbers(u), numbers(remaining)));
        assertEquals(field, error.field());
    }

    /** A level stretch, and the shortest table, are allowed. */
    @Test
    void tablesAtTheEdgeOfWhatIsAllowedAreTaken() {
        TabulatedRelease level = new TabulatedRelease(numbers("0 0.3 0.6 1"), numbers("1 1 0 0"));
        assertEquals(1, level.remaining(0.2));
        assertEquals(0.5, level.remaining(0.45), 1e-15);
        assertEquals(0, level.remaining(0.8));
        assertEquals(0.75, new TabulatedRelease(numbers("0 1"), numbers("1 0")).remaining(0.25));
    }

    private static double[] numbers(String words) {
        String[] each = words.split(" ");
        double[] values = new double[each.length];
        for (int i = 0; i < each.length; i++) {
            values[i] = Double.parseDouble(each[i]);
        }
        return values;
    }

    @Test
    void aTableKeepsNoHandOnItsArrays() {
        double[] u = {0, 0.5, 1};
        double[] remaining = {1, 0.5, 0};
        TabulatedRelease table = new TabulatedRelease(u, remaining);
        u[1] = 0.9;
        remaining[1] = 0.1;
        table.kinks()[0] = 0.7;
        assertEquals(new TabulatedRelease(new double[] {0, 0.5, 1}, new double[] {1, 0.5, 0}), table);
        assertArrayEquals(new double[] {0.5}, table.kinks());
    }
}
