package org.foreload.examples.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.foreload.file.InputException;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** The measurement runs, on as many releases as it says. */
class SweepTimeTest {

    private static String measured(String... args) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SweepTime.measure(new PrintStream(out, true, StandardCharsets.UTF_8), args);
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void bothWaysAreMeasuredAndAnswerTheSame() throws IOException {
        String table = measured("20", "1");
        String row = "\\d+ releases, %s +[\\d.]+ s, processor +[\\d.]+ s, +[\\d.]+ releases a second\n";
        String rows = String.format(row, "one process, threads: 1") + String.format(row, "Spark, local\\[1\\]");
        assertTrue(Pattern.matches(rows + "the same answer, byte for byte\n", table), table);
    }

    /** Every end of the grid lies behind every start, so none is left out. */
    @Test
    void theGridIsAsLargeAsItWasAskedFor() {
        assertEquals(new SweepTime.Grid(8, 5, 5), SweepTime.Grid.of(1_000));
        assertEquals(new SweepTime.Grid(20, 10, 10), SweepTime.Grid.of(10_000));
        for (int wanted = 20; wanted <= 200_000; wanted = wanted * 3 / 2) {
            double ratio = SweepTime.Grid.of(wanted).releases() / (double) wanted;
            assertTrue(ratio > 0.75 && ratio < 1.4, wanted + ": " + ratio);
        }
    }

    @Test
    void whatIsWrongIsSaid() {
        for (String[] args : new String[][] {{}, {"many"}, {"1000", "0"}, {"200001"}, {"1000", "1", "1"}}) {
            Assertions.assertThrows(InputException.class, () -> measured(args));
        }
    }
}
