package org.foreload.file;

import java.nio.file.Path;
import java.util.List;
import org.foreload.braking.TabulatedRelease;
import org.foreload.conventions.InvalidValueException;

/**
 * A release shape of the user's own as a CSV file of {@link NumberColumns}: {@code released}, the share of the release
 * that has passed, strictly rising from 0 to 1, and {@code remaining}, the share of the peak that is still on, from 1
 * to 0, never rising.
 */
public final class ReleaseFile {

    private static final List<String> COLUMNS = List.of("released", "remaining");

    /** What the core says before the column's name. */
    private static final String PREFIX = "release_shape, ";

    private ReleaseFile() {}

    /**
     * Reads a shape.
     *
     * @param path the file
     * @param name for reports
     * @throws InputException if the file or a value in it cannot be used; the field names column and row
     */
    public static TabulatedRelease read(Path path, String name) {
        String file = path.toString();
        NumberColumns columns = NumberColumns.read(path, file, COLUMNS);
        COLUMNS.forEach(column -> columns.require(column, true));
        try {
            return new TabulatedRelease(name, columns.column("released", 1), columns.column("remaining", 1));
        } catch (InvalidValueException e) {
            String field = e.field().startsWith(PREFIX) ? e.field().substring(PREFIX.length()) : null;
            throw InputException.of(file, field, e);
        }
    }
}
