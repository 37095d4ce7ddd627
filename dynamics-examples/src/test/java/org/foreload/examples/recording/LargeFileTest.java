package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** As {@link GigabyteTest}, with files of eight megabytes: enough to be beyond what a reader may keep whole. */
class LargeFileTest {

    private static final long SIZE = 8L << 20;

    @ParameterizedTest
    @CsvSource({
        "laps, lap 3: 12000 rows; left out []",
        "line, refused in one line",
        "quote, refused in one line",
        "gpx laps, lap 3: 12000 rows; left out []",
        "gpx cut off, nothing from here on is read: is not XML",
        "gpx one name, refused in one line",
        "gpx one comment, more than 4 MB",
        "gpx one attribute, more than 4 MB",
        "gpx one head, refused in one line",
        "gpx names, more than 10000 different names",
        "gpx depth, more than 100 elements",
        "gpx document type, refused in one line",
        "gpx one text, is not XML"
    })
    void aLargeFileGivesALapOrOneLine(String kind, String expected) throws IOException {
        String outcome = GigabyteTest.outcome(kind, SIZE, 3);
        assertTrue(outcome.contains(expected), outcome);
    }
}
