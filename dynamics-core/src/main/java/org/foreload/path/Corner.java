package org.foreload.path;

import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * A corner to be entered: a line and how fast the car comes.
 *
 * @param name for reports
 * @param approachSpeed speed at the start of the line, m/s; the car may still accelerate from there
 * @param path the line, from the start of the approach to the end of the exit
 */
public record Corner(String name, double approachSpeed, Path path) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Corner {
        Objects.requireNonNull(name);
        Checks.positive("approach_speed_mps", approachSpeed);
        Objects.requireNonNull(path);
    }
}
