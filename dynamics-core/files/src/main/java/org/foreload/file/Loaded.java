package org.foreload.file;

import java.util.List;
import java.util.Objects;

/**
 * What was read from a file, what was unusual about it, and what came of it that the file does not say.
 *
 * @param <T> the model
 * @param value the model
 * @param warnings one for each unusual value; empty for most files
 * @param notes lines for whoever wrote the file, such as the angle through which a corner turns; empty for most files
 */
public record Loaded<T>(T value, List<Warning> warnings, List<String> notes) {

    /** Takes copies of the lists. */
    public Loaded {
        Objects.requireNonNull(value);
        warnings = List.copyOf(warnings);
        notes = List.copyOf(notes);
    }

    /** What was read, without a note. */
    public Loaded(T value, List<Warning> warnings) {
        this(value, warnings, List.of());
    }
}
