package org.foreload.path;

import java.util.List;
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

    /**
     * Draws a flat corner step by step, each number by its name and unit; a step that is left out or taken out of turn
     * does not compile. With a line that is there already, use the constructor.
     *
     * @param name for reports
     */
    public static ApproachSpeed draw(String name) {
        return speed -> approach -> width ->
                exit -> segments -> new Corner(name, speed, SegmentPath.of(approach, List.of(segments), exit, width));
    }

    /** Asks for the speed. */
    public interface ApproachSpeed {

        /** Speed at the start of the approach, m/s. */
        ApproachLength approachSpeedMps(double speed);
    }

    /** Asks for the straight before the segments. */
    public interface ApproachLength {

        /** Length of the straight before the segments, m; zero or more. */
        HalfWidth approachLengthM(double length);
    }

    /** Asks for the width of the track. */
    public interface HalfWidth {

        /** Distance from the line to either edge of the track, m. */
        ExitLength halfWidthM(double width);
    }

    /** Asks for the straight after the segments. */
    public interface ExitLength {

        /** Length of the straight after the segments, m; zero or more. */
        Segments exitLengthM(double length);
    }

    /** Asks for the segments. */
    public interface Segments {

        /** The segments from turn-in on, in driving order; the last step. */
        Corner segments(Segment... segments);
    }
}
