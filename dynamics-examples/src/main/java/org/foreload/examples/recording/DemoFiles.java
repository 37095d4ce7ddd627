package org.foreload.examples.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Writes the demo pair as files: {@code java -cp foreload.jar org.foreload.examples.recording.DemoFiles FOLDER}. The
 * runs are simulated afresh, so they are those of the simulator as it is.
 */
public final class DemoFiles {

    /** Where on the globe the invented road lies: in open sea. */
    private static final RecordedFile.GlobePoint SEA = new RecordedFile.GlobePoint(48.5, -20.25);

    private DemoFiles() {}

    /**
     * Writes {@code trailing.csv}, {@code straight.csv} and the same as {@code .gpx}.
     *
     * @param args the folder
     * @throws IOException if it cannot be written to
     */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args.length > 0 ? args[0] : ".");
        Files.createDirectories(folder);
        DemoRuns demo = new DemoRuns();
        for (DemoRuns.Driver driver : DemoRuns.Driver.values()) {
            RecordedFile file = demo.file(driver);
            String name = driver.name().toLowerCase(Locale.ROOT);
            Files.writeString(folder.resolve(name + ".csv"), RunTable.csv(file.laps()));
            Files.writeString(folder.resolve(name + ".gpx"), RunTable.gpx(file.laps(), SEA));
        }
    }
}
