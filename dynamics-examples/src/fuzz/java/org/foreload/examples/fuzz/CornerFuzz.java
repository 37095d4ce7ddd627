package org.foreload.examples.fuzz;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.foreload.file.CornerFile;
import org.foreload.file.InputException;
import org.foreload.path.Corner;

/** Any bytes make a corner or a refusal; its line can be read everywhere. */
public final class CornerFuzz {

    private CornerFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            read(CornerFile.parse(new String(data, StandardCharsets.UTF_8), "fuzz.json", Path.of("."))
                    .value());
        } catch (InputException refused) {
            OneLineCheck.of(refused);
        }
    }

    /** Reads a line at a few stations. */
    static void read(Corner corner) {
        var path = corner.path();
        for (int i = 0; i <= 8; i++) {
            double s = path.start() + i * (path.end() - path.start()) / 8;
            if (Double.isNaN(path.curvature(s)) || Double.isNaN(path.heading(s)) || Double.isNaN(path.widthLeft(s))) {
                throw new IllegalStateException("no number at " + s);
            }
        }
    }
}
