package org.foreload.examples.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.recording.RunTable;

/** The demo pair as two files of five laps each, written once for all tests. */
final class RecordedPair {

    private static RecordedPair written;

    private final RecordedFile made;
    private final Path trailing;
    private final Path straight;

    private RecordedPair() throws IOException {
        DemoRuns demo = new DemoRuns();
        made = demo.file(DemoRuns.Driver.TRAILING);
        Path folder = Files.createTempDirectory("recorded-pair");
        // What is named last goes first: the files, and then their folder.
        folder.toFile().deleteOnExit();
        trailing = write(folder.resolve("trailing.csv"), made);
        straight = write(folder.resolve("straight.csv"), demo.file(DemoRuns.Driver.STRAIGHT));
    }

    private static Path write(Path file, RecordedFile laps) throws IOException {
        Files.writeString(file, RunTable.csv(laps.laps()));
        file.toFile().deleteOnExit();
        return file;
    }

    private static synchronized RecordedPair pair() {
        if (written == null) {
            try {
                written = new RecordedPair();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return written;
    }

    /** What the first file was written from. */
    static RecordedFile made() {
        return pair().made;
    }

    /** The driver who carries the brake into the corners. */
    static Path trailing() {
        return pair().trailing;
    }

    /** The driver who brakes in a straight line. */
    static Path straight() {
        return pair().straight;
    }
}
