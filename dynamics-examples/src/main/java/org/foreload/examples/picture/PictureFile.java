package org.foreload.examples.picture;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import org.foreload.examples.file.InputException;

/** A place for a picture, checked before the work that leads to it. */
public final class PictureFile {

    /** Pixels of a PNG per px of the layout: sharp on paper. */
    private static final int SCALE = 2;

    private final String option;
    private final Path file;
    private final boolean vector;

    private PictureFile(String option, Path file, boolean vector) {
        this.option = option;
        this.file = file;
        this.vector = vector;
    }

    /**
     * A place for a picture.
     *
     * @param option that named it, for errors; may be null
     * @param file ends with {@code .svg} or {@code .png}
     * @throws InputException if it does not, if its folder is not there or cannot be written into, or for a PNG if this
     *     machine has no font
     */
    public static PictureFile at(String option, Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        if (!name.endsWith(".svg") && !name.endsWith(".png")) {
            throw new InputException(null, option, file.toString(), "must end with .svg or .png");
        }
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new InputException(null, option, file.toString(), "must be in a folder that is there");
        }
        if (Files.isDirectory(file)) {
            throw new InputException(null, option, file.toString(), "must be a file, not a folder");
        }
        if (!Files.isWritable(folder) || Files.exists(file) && !Files.isWritable(file)) {
            throw new InputException(null, option, file.toString(), "must be a place that can be written to");
        }
        boolean vector = name.endsWith(".svg");
        if (!vector) {
            Picture.requireFonts();
        }
        return new PictureFile(option, file, vector);
    }

    /**
     * Writes the whole picture or nothing: first beside its place, then into it.
     *
     * @throws InputException if it cannot be written
     */
    public void write(Picture picture) {
        byte[] bytes = vector ? picture.svg().getBytes(StandardCharsets.UTF_8) : picture.png(SCALE);
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        try {
            Files.write(beside, bytes);
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            try {
                Files.deleteIfExists(beside);
            } catch (IOException left) {
                e.addSuppressed(left);
            }
            throw new InputException(null, option, file.toString(), "cannot be written: " + e.getMessage());
        }
    }
}
