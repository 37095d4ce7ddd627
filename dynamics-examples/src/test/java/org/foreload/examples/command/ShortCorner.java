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

    private static Path folder;

    private ShortCorner() {}

    /** One file of it for all tests that ask the same of it. */
    static String file() throws IOException {
        return shared("short.json", JSON);
    }

    /** One circuit of it and of its mirror image, which has another name. */
    static String ring() throws IOException {
        String other = JSON.replace("short", "other").replace("left", "right");
        return shared("ring.json", "{\"name\": \"ring\", \"corners\": [" + JSON + ", " + other + "]}");
    }

    private static synchronized String shared(String name, String text) throws IOException {
        if (folder == null) {
            folder = Files.createTempDirectory("short-corner");
            // What is named last goes first: the files, and then their folder.
            folder.toFile().deleteOnExit();
        }
        Path file = folder.resolve(name);
        if (!Files.exists(file)) {
            Files.writeString(file, text).toFile().deleteOnExit();
        }
        return file.toString();
    }

    /** Writes it into a folder. */
    static Path in(Path folder) throws IOException {
        return Files.writeString(folder.resolve("short.json"), JSON);
    }
}
