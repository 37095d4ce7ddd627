package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

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
        assertDoesNotThrow(() -> new Corner("own", 40, new OwnPath(LINE)));
    }

    @Test
    void whatIsNoNumberIsRefused() {
        assertRefused("curvature", new OwnPath(LINE) {
            @Override
            public double curvature(double s) {
                return s > 10 ? Double.NaN : super.curvature(s);
            }
        });
        assertRefused("curvatureGradient", new OwnPath(LINE) {
            @Override
            public double curvatureGradient(double s) {
                return s > 10 ? Double.NaN : super.curvatureGradient(s);
            }
        });
        assertRefused("heading", new OwnPath(LINE) {
            @Override
            public double heading(double s) {
                return s > 10 ? Double.NaN : super.heading(s);
            }
        });
        assertRefused("grade", new OwnPath(LINE) {
            @Override
            public double grade(double s) {
                return s > 10 ? Double.NaN : super.grade(s);
            }
        });
        assertRefused("banking", new OwnPath(LINE) {
            @Override
            public double banking(double s) {
                return s > 10 ? Double.NaN : super.banking(s);
            }
        });
        assertRefused("widthLeft", new OwnPath(LINE) {
            @Override
            public double widthLeft(double s) {
                return s > 10 ? Double.NaN : super.widthLeft(s);
            }
        });
        assertRefused("widthRight", new OwnPath(LINE) {
            @Override
            public double widthRight(double s) {
                return s > 10 ? Double.NaN : super.widthRight(s);
            }
        });
    }

    @Test
    void aNegativeWidthIsRefused() {
        assertRefused("widthLeft", new OwnPath(LINE) {
            @Override
            public double widthLeft(double s) {
                return -1;
            }
        });
        assertRefused("widthRight", new OwnPath(LINE) {
            @Override
            public double widthRight(double s) {
                return -1;
            }
        });
    }

    @Test
    void endsThatAreNoneAreRefused() {
        assertRefused("start", new OwnPath(LINE) {
            @Override
            public double start() {
                return 10;
            }
        });
        assertRefused("start", new OwnPath(LINE) {
            @Override
            public double start() {
                return Double.NaN;
            }
        });
        assertRefused("end", new OwnPath(LINE) {
            @Override
            public double end() {
                return -200;
            }
        });
        assertRefused("end", new OwnPath(LINE) {
            @Override
            public double end() {
                return Double.NaN;
            }
        });
    }

    @Test
    void kinksThatAreNoneAreRefused() {
        assertRefused("kinks", new OwnPath(LINE) {
            @Override
            public double[] kinks() {
                return new double[] {0, Double.NaN};
            }
        });
        Path none = new OwnPath(LINE) {
            @Override
            public double[] kinks() {
                return null;
            }
        };
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
