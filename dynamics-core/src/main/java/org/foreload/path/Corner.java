package org.foreload.path;

import java.util.List;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * A corner to be entered: a line and how fast the car comes.
 *
 * @param name for reports
 * @param approachSpeed speed at the start of the line, m/s; the car may still accelerate from there
 * @param path the line, from the start of the approach to the end of the exit
 */
public record Corner(String name, double approachSpeed, Path path) {

    /**
     * Checks the speed, and looks at the line at its kinks and at {@value #LOOKS} steps between its ends: a path of
     * one's own that gives NaN, a negative width or a start above zero is refused here.
     *
     * @throws NullPointerException if an argument, or what the line gives for its kinks, is null; the message names it
     * @throws org.foreload.conventions.InvalidValueException with the field's name, and for the line the station
     */
    public Corner {
        Objects.requireNonNull(name, "name");
        Checks.positive("approach_speed_mps", approachSpeed);
        Objects.requireNonNull(path, "path");
        look(path);
    }

    /** Steps between the places at which a line is looked at. */
    private static final int LOOKS = 200;

    private static void look(Path path) {
        double start = path.start();
        double end = path.end();
        if (!(start <= 0 && Double.isFinite(start))) {
            throw new InvalidValueException("path.start", start, "a finite number of 0 or less");
        }
        Checks.finite("path.end", end);
        if (!(end > start)) {
            throw new InvalidValueException("path.end", end, "a number above its start, " + start);
        }
        for (double kink : Objects.requireNonNull(path.kinks(), "path.kinks")) {
            look(path, Checks.finite("path.kinks", kink));
        }
        for (int i = 0; i <= LOOKS; i++) {
            look(path, start + (end - start) * i / LOOKS);
        }
    }

    private static void look(Path path, double s) {
        finite("curvature", s, path.curvature(s));
        finite("curvatureGradient", s, path.curvatureGradient(s));
        finite("heading", s, path.heading(s));
        finite("grade", s, path.grade(s));
        finite("banking", s, path.banking(s));
        width("widthLeft", s, path.widthLeft(s));
        width("widthRight", s, path.widthRight(s));
    }

    // A name is made only where it is needed: there are more than a thousand looks.

    private static void finite(String method, double s, double value) {
        if (!Double.isFinite(value)) {
            Checks.finite(at(method, s), value);
        }
    }

    private static void width(String method, double s, double value) {
        if (!(value >= 0 && Double.isFinite(value))) {
            Checks.notNegative(at(method, s), value);
        }
    }

    private static String at(String method, double s) {
        return "path." + method + "(" + s + ")";
    }

    /** Places at which a stretch of the line is looked at for its apex. */
    private static final int APEX_SAMPLES = 2000;

    /** Share of the greatest curvature that still counts as tightest: a measured arc is never quite round. */
    private static final double TIGHT_SHARE = 0.98;

    /** Share of it below which a bend is over: what is as tight beyond is another bend. */
    private static final double SAME_BEND = 0.5;

    /**
     * Apex between two stations, m: the middle of the stretch where the line is tightest, in the first of several bends
     * that are equally tight.
     *
     * @param from first station that is looked at, m
     * @param to last one, m
     */
    public double apex(double from, double to) {
        double[] curvatures = new double[APEX_SAMPLES + 1];
        double step = (to - from) / APEX_SAMPLES;
        double tightest = 0;
        for (int i = 0; i < curvatures.length; i++) {
            curvatures[i] = Math.abs(path.curvature(from + i * step));
            tightest = Math.max(tightest, curvatures[i]);
        }
        int first = 0;
        while (curvatures[first] < TIGHT_SHARE * tightest) {
            first++;
        }
        int last = first;
        for (int i = first; i < curvatures.length && curvatures[i] >= SAME_BEND * tightest; i++) {
            last = curvatures[i] >= TIGHT_SHARE * tightest ? i : last;
        }
        return (from + first * step + (from + last * step)) / 2;
    }

    /**
     * Draws a flat corner step by step, each number by its name and unit; a step that is left out or taken out of turn
     * does not compile. With a line that is there already, use the constructor.
     *
     * @param name for reports
     */
    public static ApproachSpeed draw(String name) {
        Objects.requireNonNull(name, "name");
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
