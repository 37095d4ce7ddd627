package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.function.Supplier;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.PictureFile;
import picocli.CommandLine.Option;

/** Whether and where the answer is drawn. */
final class PictureOptions {

    /** The option for the picture's file. */
    static final String NAME = "--picture";

    @Option(
            names = NAME,
            order = CommonOptions.LAST,
            paramLabel = "<file>",
            description = "Also draw the answer into this file, which ends with .svg or .png.")
    private Path file;

    /**
     * Refuses a place that cannot be drawn to, before anything is computed.
     *
     * @throws org.foreload.file.InputException if it cannot
     */
    void check() {
        if (file != null) {
            PictureFile.at(NAME, file);
        }
    }

    /** Whether a picture was asked for. */
    boolean wanted() {
        return file != null;
    }

    /** Where to, as the user wrote it. */
    String file() {
        return String.valueOf(file);
    }

    /** Draws, if that was asked for. */
    void draw(Supplier<Picture> picture) {
        if (file != null) {
            PictureFile.at(NAME, file).write(picture.get());
        }
    }
}
