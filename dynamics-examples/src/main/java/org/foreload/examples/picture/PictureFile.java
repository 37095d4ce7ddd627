package org.foreload.examples.picture;

import java.nio.file.Path;
import java.util.Locale;
import org.foreload.examples.output.WholeFile;

/** A place for a picture, checked before the work that leads to it. */
public final class PictureFile {

    /** Pixels of a PNG per px of the layout: sharp on paper. */
    private static final int SCALE = 2;

    private static final String VECTOR = ".svg";

    private final WholeFile file;
    private final boolean vector;

    private PictureFile(WholeFile file, boolean vector) {
        this.file = file;
        this.vector = vector;
    }

    /**
     * A place for a picture.
     *
     * @param option that named it, for errors; may be null
     * @param file ends with {@code .svg} or {@code .png}
     * @throws org.foreload.file.InputException if it does not, if its folder is not there or cannot be written into, or
     *     for a PNG if this machine has no font
     */
    public static PictureFile at(String option, Path file) {
        WholeFile whole = WholeFile.at(option, file, VECTOR, ".png");
        boolean vector = file.toString().toLowerCase(Locale.ROOT).endsWith(VECTOR);
        if (!vector) {
            Picture.requireFonts();
        }
        return new PictureFile(whole, vector);
    }

    /**
     * Writes the whole picture or nothing.
     *
     * @throws org.foreload.file.InputException if it cannot be written
     */
    public void write(Picture picture) {
        if (vector) {
            file.write(picture.svg());
        } else {
            file.write(picture.png(SCALE));
        }
    }
}
