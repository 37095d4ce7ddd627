package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.foreload.tyre.SlipCurve;
import org.foreload.validation.subject.BrakeAndTurn;
import org.junit.jupiter.api.Test;

/**
 * The equations of motion and their integrator against a program in another language: Boost.odeint (dopri5, tolerance
 * 1e-11) and Boost.Math, the Magic Formula as it stands. The file is what {@code validation/src/yardstick/run} writes.
 */
class YardstickTest {

    /** About as large as the states get; see {@link BrakeAndTurn}. */
    private static final double[] SIZES = {10, 1, 0.5, 780, 7800, 10, 100, 0.1, 0.1};

    /** Part of them by which the two may differ: both step far finer, but the library reads its curve off a table. */
    private static final double PART = 1e-6;

    /** What a run at an everyday tolerance may be off. */
    private static final double EVERYDAY = 2e-4;

    @Test
    void theLibraryDrivesAsTheYardstickDoes() throws IOException {
        int rows = 0;
        try (Reader file = new InputStreamReader(
                YardstickTest.class.getResourceAsStream("/yardstick.csv"), StandardCharsets.UTF_8)) {
            for (CSVRecord row : CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(file)) {
                SlipCurve curve =
                        row.get("tyre").equals("brush") ? new SlipCurve.Brush() : new SlipCurve.MagicFormula(1.4, -0.4);
                double time = Double.parseDouble(row.get("time_s"));
                double[] fine = new BrakeAndTurn(curve, 1e-10).run(time);
                double[] coarse = new BrakeAndTurn(curve, 1e-5).run(time);
                for (int i = 0; i < SIZES.length; i++) {
                    double expected = Double.parseDouble(row.get(i + 2));
                    String what = row.get("tyre") + ", " + time + " s, entry " + i;
                    assertEquals(expected, fine[i], PART * SIZES[i], what);
                    assertEquals(expected, coarse[i], EVERYDAY * SIZES[i], what);
                }
                rows++;
            }
        }
        assertEquals(12, rows);
    }
}
