package org.foreload.examples.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A corner of 200 m in all, for what would take long in one of the demo corners and is the same in any. */
final class ShortCorner {

    /** As a file. */
    static final String JSON = """
            {"name": "short", "approach_speed_mps": 28, "approach_length_m": 110, "exit_length_m": 25, "half_width_m": 5,
             "segments": [{"type": "spiral", "length_m": 15, "end_radius_m": 35, "turn": "left"},
                          {"type": "arc", "length_m": 25, "radius_m": 35, "turn": "left"},
                          {"type": "spiral", "length_m": 15, "start_radius_m": 35, "turn": "left"}]}
            """;

    private static Path shared;

    private ShortCorner() {}

    /** One file of it for all tests that ask the same of it. */
    static synchronized String file() throws IOException {
        if (shared == null) {
            Path folder = Files.createTempDirectory("short-corner");
            shared = in(folder);
            // What is named last goes first: the file, and then its folder.
            folder.toFile().deleteOnExit();
            shared.toFile().deleteOnExit();
        }
        return shared.toString();
    }

    /** Writes it into a folder. */
    static Path in(Path folder) throws IOException {
        return Files.writeString(folder.resolve("short.json"), JSON);
    }
}
