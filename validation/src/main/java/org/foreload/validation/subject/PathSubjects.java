package org.foreload.validation.subject;

import java.util.List;
import java.util.Map;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;

/** Lines made of segments. */
final class PathSubjects {

    private PathSubjects() {}

    static Map<String, Subject> all() {
        return Map.of(
                "spiral", PathSubjects::spiral,
                "spiral-length", PathSubjects::length,
                "fresnel", PathSubjects::fresnel);
    }

    private static Path line(double length, double radius) {
        return SegmentPath.of(0, List.of(Segment.spiralIn(length, radius, Turn.LEFT)), 0, 5);
    }

    /** What land surveyors read off a spiral: angle, end point, abscissa k and offset p of the shifted circle. */
    private static double spiral(Inputs in) {
        double radius = in.number("radius");
        Path line = line(in.number("length"), radius);
        double angle = line.heading(line.end());
        Path.Point end = line.position(line.end());
        return switch (in.word("give")) {
            case "angle" -> angle;
            case "degrees" -> Math.toDegrees(angle);
            case "x" -> end.x();
            case "y" -> end.y();
            case "k" -> end.x() - radius * Math.sin(angle);
            case "p" -> end.y() - radius * (1 - Math.cos(angle));
            default -> throw new IllegalArgumentException("give what?");
        };
    }

    /** Length at which a spiral of parameter A has come to a radius: where its curvature is one over it. */
    private static double length(Inputs in) {
        double a = in.number("parameter");
        Path line = line(a * a, 1);
        return Bench.lastTrue(s -> line.curvature(s) < 1 / in.number("radius"), 0, line.end());
    }

    /** Fresnel integral of cos or sin(πt²/2): the end point of a spiral whose heading is πs²/2. */
    private static double fresnel(Inputs in) {
        double to = in.number("to");
        Path.Point end = line(to, 1 / (Math.PI * to)).position(to);
        double scale = in.number("scale", 1);
        return scale * (in.word("give").equals("cosine") ? end.x() : end.y());
    }
}
