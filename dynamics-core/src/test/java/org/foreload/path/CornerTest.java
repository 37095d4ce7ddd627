package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A corner refuses what is no line, and says why. What a line is stands in {@link Path}. */
class CornerTest {

    private static final Path LINE = SegmentPath.of(200, List.of(Segment.arc(60, 50, Turn.LEFT)), 100, 5);

    private static void assertRefused(String field, Path path) {
        InvalidValueException refused =
                assertThrows(InvalidValueException.class, () -> new Corner("own", 40, path), field);
        assertTrue(refused.field().startsWith("path." + field), refused.getMessage());
    }

    @Test
    void aLineOfOnesOwnIsTaken() {
        assertDoesNotThrow(() -> new Corner("own", 40, SpoiltPath.of(LINE, "none", 0)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"curvature", "curvatureGradient", "heading", "grade", "banking", "widthLeft", "widthRight"})
    void whatIsNoNumberIsRefused(String method) {
        assertRefused(method, SpoiltPath.of(LINE, method, s -> s > 10, Double.NaN));
    }

    @ParameterizedTest
    @ValueSource(strings = {"widthLeft", "widthRight"})
    void aNegativeWidthIsRefused(String method) {
        assertRefused(method, SpoiltPath.of(LINE, method, -1.0));
    }

    @ParameterizedTest
    @CsvSource({"start, 10", "start, NaN", "end, -200", "end, NaN"})
    void endsThatAreNoneAreRefused(String method, double answer) {
        assertRefused(method, SpoiltPath.of(LINE, method, answer));
    }

    @Test
    void kinksThatAreNoneAreRefused() {
        assertRefused("kinks", SpoiltPath.of(LINE, "kinks", new double[] {0, Double.NaN}));
        Path none = SpoiltPath.of(LINE, "kinks", null);
        assertEquals(
                "path.kinks",
                assertThrows(NullPointerException.class, () -> new Corner("own", 40, none))
                        .getMessage());
    }

    @Test
    void nullIsNamed() {
        assertEquals(
                "name",
                assertThrows(NullPointerException.class, () -> new Corner(null, 40, LINE))
                        .getMessage());
        assertEquals(
                "path",
                assertThrows(NullPointerException.class, () -> new Corner("own", 40, null))
                        .getMessage());
    }
}
