package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.foreload.file.InputException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A gigabyte of recording in a Java of its own with 256 MB of heap: as laps of a logger, as one line without end, and
 * as a line whose quotation mark is never closed. The bytes are made as they are read, so that no disk is needed.
 */
@Tag("long")
class GigabyteTest {

    private static final long SIZE = 1L << 30;

    private static final String HEADER =
            "lap,time_s,speed_mps,brake,throttle,longitudinal_acceleration_mps2,lateral_acceleration_mps2\n";

    /** Rows in a lap: two minutes at 100 Hz. */
    private static final int LAP = 12_000;

    @ParameterizedTest
    @ValueSource(strings = {"laps", "line", "quote"})
    void aGigabyteIsReadInASmallHeap(String kind) throws IOException, InterruptedException {
        Process java = new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-Xmx256m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        GigabyteTest.class.getName(),
                        kind)
                .redirectErrorStream(true)
                .start();
        String said = new String(java.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, java.waitFor(), said);
        assertTrue(said.contains(kind.equals("laps") ? "lap 700: 12000 rows" : "refused in one line"), said);
    }

    /**
     * Reads, and says what came of it.
     *
     * @param args the kind of file
     */
    public static void main(String[] args) throws IOException {
        Cut cut = args[0].equals("laps")
                ? new Cut(OptionalDouble.empty(), OptionalDouble.empty(), OptionalLong.of(700))
                : Cut.NONE;
        try (InputStream in = new Endless(args[0])) {
            RecordedFile file = RecordingFile.read(in, "big.csv", ColumnWish.NONE, cut, true);
            List<RecordedFile.Lap> laps = file.laps();
            System.out.println("lap " + laps.get(0).number() + ": "
                    + laps.get(0).recording().rows() + " rows");
        } catch (InputException refused) {
            System.out.println("refused in " + (refused.line().lines().count() == 1 ? "one line" : "many lines"));
        }
    }

    /** Makes the bytes. */
    private static final class Endless extends InputStream {

        private final String kind;
        private byte[] part = HEADER.getBytes(StandardCharsets.UTF_8);
        private int at;
        private long made;
        private long row;

        Endless(String kind) {
            this.kind = kind;
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
        }

        @Override
        public int read(byte[] target, int offset, int length) {
            if (at == part.length) {
                if (made >= SIZE) {
                    return -1;
                }
                part = next().getBytes(StandardCharsets.UTF_8);
                at = 0;
            }
            int count = Math.min(length, part.length - at);
            System.arraycopy(part, at, target, offset, count);
            at += count;
            made += count;
            return count;
        }

        private String next() {
            if (!kind.equals("laps")) {
                return (row++ == 0 && kind.equals("quote") ? "\"" : "") + "0123456789,".repeat(1000);
            }
            StringBuilder rows = new StringBuilder();
            for (int k = 0; k < 200; k++) {
                long inLap = row % LAP;
                double time = inLap / 100.0;
                double speed = 40 + 10 * Math.sin(time / 7);
                rows.append(row / LAP + 1)
                        .append(',')
                        .append(time)
                        .append(',')
                        .append(speed)
                        .append(",0.125,55.5,-0.3062,")
                        .append((float) (0.1 * speed))
                        .append('\n');
                row++;
            }
            return rows.toString();
        }
    }
}
