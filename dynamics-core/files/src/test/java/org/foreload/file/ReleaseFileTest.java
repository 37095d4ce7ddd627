package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.foreload.braking.TabulatedRelease;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Releases as they were logged; the expected shapes are closed forms. */
class ReleaseFileTest {

    @TempDir
    private Path directory;

    private TabulatedRelease read(String text) throws IOException {
        Path file = directory.resolve("release.csv");
        Files.writeString(file, text);
        return ReleaseFile.read(file, "own");
    }

    /** A straight release from 10 m to 50 m at 63 bar, after a build-up and a held peak: half is left half way. */
    @Test
    void aDistanceAndAPressureNeedNoNormalising() throws IOException {
        TabulatedRelease shape = read("s_m,brake\n-20,0\n-15,40\n-5,62.8\n0,63\n10,62.9\n20,47.25\n50,0\n60,0\n");
        assertEquals(1, shape.remaining(0), 1e-12);
        assertEquals(0.75, shape.remaining(0.25), 1e-12);
        assertEquals(0.375, shape.remaining(0.625), 0.02);
        assertEquals(0, shape.remaining(1), 1e-12);
    }

    /**
     * A brake that falls evenly in time while the car slows evenly from 40 to 20 m/s in 2 s: at time t it has come 40 t
     * − 5 t² of its 60 m, and 1 − t/2 of the brake is left.
     */
    @Test
    void aTimeBecomesADistanceByTheSpeed() throws IOException {
        StringBuilder text = new StringBuilder("time_s,speed_mps,brake\n");
        for (int i = 0; i <= 200; i++) {
            double t = i / 100.0;
            text.append(String.format(Locale.ROOT, "%.2f,%.2f,%.3f%n", t, 40 - 10 * t, 80 * (1 - t / 2)));
        }
        TabulatedRelease shape = read(text.toString());
        // The first hundredths lie within the sway of the peak, the last within that of an open brake.
        double from = 0.04;
        double to = 1.96;
        double start = 40 * from - 5 * from * from;
        double length = 40 * to - 5 * to * to - start;
        for (double t = 0.2; t < 1.9; t += 0.2) {
            double released = (40 * t - 5 * t * t - start) / length;
            assertEquals(1 - t / 2, shape.remaining(released), 0.003, "after " + t + " s");
        }
    }

    /** A pedal that comes back does not make a release rise. */
    @Test
    void aPedalThatComesBackIsHeld() throws IOException {
        TabulatedRelease shape = read("s_m,brake\n0,10\n10,6\n20,8\n30,3\n40,0\n");
        assertEquals(0.6, shape.remaining(0.25), 1e-12);
        assertEquals(0.6, shape.remaining(0.5), 1e-12);
        assertEquals(0.3, shape.remaining(0.75), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "brake;5;0                          | column s_m: missing: or time_s and speed_mps must be given",
                "s_m;0;1                            | column brake: missing: must be given",
                "s_m,brake;-1e308,5;1e308,0         | released, row 2",
                "time_s,brake;0,5;1,0               | column speed_mps: missing: must be given",
                "s_m,brake;0,5;0,0                  | s_m, row 2: 0.0: must be above that of the row before, 0.0",
                "s_m,brake;0,0;1,0                  | column brake: must be above 0 in at least one row",
                "s_m,brake;0,5;1,2                  | brake, row 2: 2.0: must come down to 0, or to 2 % of the peak of 5.0",
                "time_s,speed_mps,brake;0,0,5;1,1,0 | speed_mps, row 1: 0.0: must be above 0",
                "s_m,brake                          | column brake: must be above 0 in at least one row"
            })
    void aMistakeIsNamed(String text, String words) {
        InputException refused = assertThrows(InputException.class, () -> read(text.replace(';', '\n') + "\n"));
        assertTrue(refused.line().contains(words), refused.line());
    }
}
