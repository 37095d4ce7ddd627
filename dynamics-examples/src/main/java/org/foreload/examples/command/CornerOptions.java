package org.foreload.examples.command;

import java.nio.file.Path;
import org.foreload.examples.demo.Demos;
import org.foreload.file.CornerFile;
import org.foreload.file.InputException;
import org.foreload.path.Corner;
import picocli.CommandLine.Option;

/** Which corner. */
final class CornerOptions {

    @Option(
            names = "--corner",
            paramLabel = "<file>",
            description = "The corner as a JSON file (docs/corner.schema.json).")
    private Path file;

    @Option(
            names = "--demo-corner",
            completionCandidates = Candidates.Corners.class,
            paramLabel = "<name>",
            description = "An embedded corner instead: hairpin, medium or fast. Default: " + Demos.DEFAULT_CORNER + ".")
    private String demo;

    /** Reads the corner and prints its warnings. */
    Corner corner(Console console) {
        if (file != null && demo != null) {
            throw new InputException(null, "--demo-corner", demo, "must not be given together with --corner");
        }
        if (file != null) {
            return console.warned(CornerFile.read(file));
        }
        return console.warned(Demos.corner("--demo-corner", demoName()));
    }

    /** The name that errors give. */
    String source() {
        return file != null ? file.toString() : Demos.cornerSource(demoName());
    }

    private String demoName() {
        return demo == null ? Demos.DEFAULT_CORNER : demo;
    }
}
