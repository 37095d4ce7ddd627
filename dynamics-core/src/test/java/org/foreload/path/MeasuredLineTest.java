package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.conventions.InvalidValueException;
import org.junit.jupiter.api.Test;

/** What is known of the track at measured points, and what is refused. */
class MeasuredLineTest {

    private static final double TOLERANCE = 0.05;

    @Test
    void trackIsReadStraightBetweenThePoints() {
        SamplePoints points = SamplePoints.of(SamplePoints.TRUTH, 5, 0, 0);
        int count = points.x().length;
        double[] left = new double[count];
        double[] right = new double[count];
        double[] banking = new double[count];
        double[] grade = new double[count];
        for (int i = 0; i < count; i++) {
            left[i] = 3 + 0.1 * i;
            right[i] = 9 - 0.1 * i;
            banking[i] = 0.01 * i;
            grade[i] = i < 10 ? 0.1 : -0.05;
        }
        MeasuredPath fit = MeasuredPath.fit(
                points.line().withWidths(left, right).withBankingAngles(banking).withGradeFractions(grade),
                TOLERANCE,
                20,
                20);
        double first = fit.start() + 20;
        double steps = 12.3;
        double s = first + steps * 5;
        double metre = 1e-3; // the feet of clean points lie within a millimetre of their true stations
        assertEquals(3 + 0.1 * steps, fit.widthLeft(s), metre);
        assertEquals(9 - 0.1 * steps, fit.widthRight(s), metre);
        assertEquals(0.01 * steps, fit.banking(s), metre);
        assertEquals(Math.atan(-0.05), fit.grade(s), 1e-12);
        assertEquals(Math.atan(0.1), fit.grade(first + 40), 1e-12);
        assertEquals(0.5 * (Math.atan(0.1) + Math.atan(-0.05)), fit.grade(first + 9.5 * 5), metre);
        assertEquals(3, fit.widthLeft(fit.start()));
        assertEquals(right[count - 1], fit.widthRight(fit.end()));
    }

    @Test
    void impossibleNumbersAreRefused() {
        double nan = Double.NaN;
        double[] x = {0, 5, 10, 15, 20, 25};
        double[] y = {0, 0, 1, 2, 4, 6};
        MeasuredLine line = MeasuredLine.of(x, y, 5);
        refused("tolerance_m", () -> MeasuredPath.fit(line, nan));
        refused("tolerance_m", () -> MeasuredPath.fit(line, 0));
        refused("approach_length_m", () -> MeasuredPath.fit(line, TOLERANCE, nan, 0));
        refused("exit_length_m", () -> MeasuredPath.fit(line, TOLERANCE, 0, -1));
        refused("half_width_m", () -> MeasuredLine.of(x, y, nan));
        refused("x_m", () -> MeasuredLine.of(new double[4], new double[4], 5));
        refused("y_m", () -> MeasuredLine.of(x, new double[4], 5));
        refused("x_m, row 3", () -> MeasuredLine.of(new double[] {0, 5, nan, 15, 20, 25}, y, 5));
        refused("y_m, row 2", () -> MeasuredLine.of(x, new double[] {0, Double.NEGATIVE_INFINITY, 1, 2, 4, 6}, 5));
        refused("x_m, row 4", () -> MeasuredLine.of(new double[] {0, 5, 10, 10, 20, 25}, new double[6], 5));
        refused("x_m, row 6", () -> MeasuredLine.of(new double[] {0, 5, 10, 15, 20, 90}, new double[6], 5));
        refused("x_m, row 5", () -> MeasuredLine.of(new double[] {0, 5, 10, 15, 12, 25}, new double[6], 5));
        refused("width_left_m, row 2", () -> line.withWidths(new double[] {1, -1, 1, 1, 1, 1}, x));
        refused("width_right_m", () -> line.withWidths(x, new double[3]));
        refused("banking, row 1", () -> line.withBankingAngles(new double[] {2, 0, 0, 0, 0, 0}));
        refused("grade, row 6", () -> line.withGradeFractions(new double[] {0, 0, 0, 0, 0, nan}));
    }

    private static void refused(String field, Runnable making) {
        assertEquals(
                field, assertThrows(InvalidValueException.class, making::run).field());
    }

    @Test
    void aLineKeepsNoHandOnItsArrays() {
        SamplePoints points = SamplePoints.of(SamplePoints.TRUTH, 3, 0, 0);
        MeasuredLine line = points.line();
        double expected = MeasuredPath.fit(line, TOLERANCE).curvature(60);
        points.x()[20] += 3;
        assertEquals(expected, MeasuredPath.fit(line, TOLERANCE).curvature(60));
    }

    /** Five points are enough; a step of ten median steps is just allowed; the widths are those given. */
    @Test
    void theEdgeOfWhatIsAllowed() {
        double[] x = {0, 1, 2, 12, 13, 14};
        MeasuredLine line = MeasuredLine.of(x, new double[6], 5);
        MeasuredPath path = MeasuredPath.fit(line, TOLERANCE);
        assertEquals(5, path.widthLeft(path.start()));
        assertEquals(5, path.widthRight(path.end()));
        assertEquals(4, lengthOf(new double[] {0, 1, 2, 3, 4}), 1e-9);
    }

    private static double lengthOf(double[] x) {
        MeasuredPath path = MeasuredPath.fit(MeasuredLine.of(x, new double[x.length], 5), TOLERANCE);
        return path.end() - path.start();
    }

    /** The refusal tells the coordinate that is at fault: one repeated, one behind a gap, one at a right angle. */
    @Test
    void theRefusalTellsThePoint() {
        told("x_m, row 4", 2.0, new double[] {0, 1, 2, 2, 3, 4}, new double[6]);
        told("x_m, row 4", 22.0, new double[] {0, 1, 2, 22, 23, 24}, new double[6]);
        told("x_m, row 3", 1.0, new double[] {0, 1, 1, 1, 1}, new double[] {0, 0, 1, 2, 3});
    }

    private static void told(String field, double value, double[] x, double[] y) {
        InvalidValueException error = assertThrows(InvalidValueException.class, () -> MeasuredLine.of(x, y, 5));
        assertEquals(field, error.field());
        assertEquals(value, Double.parseDouble(error.value()));
    }
}
