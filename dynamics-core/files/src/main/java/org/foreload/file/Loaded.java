package org.foreload.file;

import java.util.List;
import java.util.Objects;

/**
 * What was read from a file, and what was unusual about it.
 *
 * @param <T> the model
 * @param value the model
 * @param warnings one for each unusual value; empty for most files
 */
public record Loaded<T>(T value, List<Warning> warnings) {

    /** Takes a copy of the warnings. */
    public Loaded {
        Objects.requireNonNull(value);
        warnings = List.copyOf(warnings);
    }
}
