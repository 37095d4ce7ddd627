package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.foreload.file.InputException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A gigabyte of recording in a Java of its own with 256 MB of heap: as laps, and as each single thing that a reader
 * might keep whole.
 */
@Tag("long")
class GigabyteTest {

    private static final long SIZE = 1L << 30;

    @ParameterizedTest
    @CsvSource({
        "laps, lap 400: 12000 rows",
        "line, refused in one line",
        "quote, refused in one line",
        "gpx laps, lap 400: 12000 rows",
        "gpx one name, refused in one line",
        "gpx one comment, more than 4 MB",
        "gpx one attribute, more than 4 MB",
        "gpx one head, refused in one line",
        "gpx names, more than 10000 different names",
        "gpx depth, more than 100 elements",
        "gpx document type, refused in one line",
        "gpx cut off, lap 400: 12000 rows",
        "gpx one text, is not XML"
    })
    void aGigabyteIsReadInASmallHeap(String kind, String expected) throws IOException, InterruptedException {
        Process java = new ProcessBuilder(
                        System.getProperty("java.home") + "/bin/java",
                        "-Xmx256m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        GigabyteTest.class.getName(),
                        kind,
                        Long.toString(SIZE))
                .redirectErrorStream(true)
                .start();
        String said = new String(java.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, java.waitFor(), said);
        assertTrue(said.contains(expected), said);
    }

    /**
     * Reads, and says what came of it.
     *
     * @param args the kind of file, and its size
     */
    public static void main(String[] args) throws IOException {
        System.out.println(outcome(args[0], Long.parseLong(args[1]), 400));
    }

    /** What comes of a file of which one lap is wanted. */
    static String outcome(String kind, long size, long lap) throws IOException {
        Cut cut = kind.contains("laps") || kind.contains("cut")
                ? new Cut(OptionalDouble.empty(), OptionalDouble.empty(), OptionalLong.of(lap))
                : Cut.NONE;
        try (InputStream in = EndlessFile.of(kind, size)) {
            RecordedFile file = RecordingFile.read(in, "big", ColumnWish.NONE, cut, Need.CORNERS);
            RecordedFile.Lap read = file.laps().get(0);
            return "lap " + read.number() + ": " + read.recording().rows() + " rows; left out " + file.leftOut();
        } catch (InputException refused) {
            return "refused in "
                    + (refused.line().lines().count() == 1 ? "one line: " : "many lines: ")
                    + refused.line();
        }
    }
}
