package org.foreload.examples.output;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.stream.Stream;
import org.foreload.file.InputException;

/** A file that is written as a whole or not at all, checked before the work that leads to it. */
public final class WholeFile {

    private final String option;
    private final Path file;

    private WholeFile(String option, Path file) {
        this.option = option;
        this.file = file;
    }

    /**
     * A place for a file.
     *
     * @param option that named it, for errors; may be null
     * @param file where
     * @param endings of which its name must have one, in small or capital letters, each with the dot
     * @throws InputException if the name ends otherwise, or nothing can be written there
     */
    public static WholeFile at(String option, Path file, String... endings) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        Path folder = file.toAbsolutePath().getParent();
        require(
                Stream.of(endings).anyMatch(name::endsWith),
                option,
                file,
                "must end with " + String.join(" or ", endings));
        require(folder != null && Files.isDirectory(folder), option, file, "must be in a folder that is there");
        require(!Files.isDirectory(file), option, file, "must be a file, not a folder");
        require(
                Files.isWritable(folder) && (!Files.exists(file) || Files.isWritable(file)),
                option,
                file,
                "must be a place that can be written to");
        return new WholeFile(option, file);
    }

    private static void require(boolean allowed, String option, Path file, String what) {
        if (!allowed) {
            throw new InputException(null, option, file.toString(), what);
        }
    }

    /**
     * Writes the text in UTF-8.
     *
     * @throws InputException if it cannot be written
     */
    public void write(String text) {
        write(text.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * Writes first beside its place, then into it.
     *
     * @throws InputException if it cannot be written
     */
    public void write(byte[] bytes) {
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
