package org.foreload.lap;

import java.util.List;
import java.util.Objects;
import org.foreload.conventions.InvalidValueException;
import org.foreload.path.Corner;

/**
 * Corners in the order in which they are driven. The approach speed of each is that of a lap with straight-line
 * braking; what a better exit adds to it is carried over by {@link Lap}.
 *
 * @param name for reports
 * @param corners one or more; each line begins on the straight before the corner and ends on the one after it
 */
public record Circuit(String name, List<Corner> corners) {

    /**
     * Checks and copies.
     *
     * @throws NullPointerException if an argument is null; its name is the message
     * @throws InvalidValueException if there is no corner
     */
    public Circuit {
        Objects.requireNonNull(name, "name");
        corners = List.copyOf(Objects.requireNonNull(corners, "corners"));
        if (corners.isEmpty()) {
            throw new InvalidValueException("corners", "[]", "a list of one corner or more");
        }
    }
}
