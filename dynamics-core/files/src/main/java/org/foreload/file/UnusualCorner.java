package org.foreload.file;

import java.util.List;
import java.util.Locale;
import org.foreload.conventions.Gravity;
import org.foreload.path.Path;
import org.foreload.path.Segment;

/** What a drawn corner can have but hardly any corner has: most are slips of a unit, a length or a sign. */
final class UnusualCorner {

    /** Turning further is no corner but a coil, °: a turn and a half. */
    private static final double FURTHEST = 540;

    /**
     * Lateral acceleration that sets in at once, m/s²: a tenth of what a road car has. Gentle bends are often drawn
     * without a spiral and jump by less.
     */
    private static final double JUMP = 1;

    /**
     * A spiral that moves the line by less than this, m, is shorter than any car can follow: with a change of curvature
     * Δκ over a length l it moves it by Δκ l²/24, as surveyors know (the shift of a clothoid, from memory).
     */
    private static final double SHIFT = 0.01;

    /** Distance from the line to an edge, m: a lane has more than the least, an airfield less than the most. */
    private static final double NARROWEST = 1;

    private static final double WIDEST = 25;

    /** Distance, m, between places at which a line's curvature is read. */
    private static final double APART = 1;

    private UnusualCorner() {}

    /** Largest curvature of a measured line to either side, 1/m, read at places a metre apart. */
    static double tightest(Path line) {
        double tightest = 0;
        int steps = (int) Math.ceil((line.end() - line.start()) / APART);
        for (int i = 0; i <= steps; i++) {
            double s = line.start() + (line.end() - line.start()) * i / steps;
            tightest = Math.max(tightest, Math.abs(line.curvature(s)));
        }
        return tightest;
    }

    /**
     * Warns of a width that no track has, or whose inner edge would lie beyond the centre of the tightest bend, whose
     * radius is given in m.
     */
    static void width(double radius, JsonFields fields) {
        if (!fields.has("half_width_m")) {
            return;
        }
        double width = fields.number("half_width_m");
        if (!(width >= NARROWEST && width <= WIDEST)) {
            fields.warn(
                    "half_width_m",
                    "unusual; from line to edge, tracks have " + DecimalText.of(NARROWEST) + " to "
                            + DecimalText.of(WIDEST) + " m");
        }
        if (!(width < radius)) {
            fields.warn(
                    "half_width_m",
                    String.format(
                            Locale.ROOT,
                            "unusual; the line turns with a radius of %.0f m, so its inner edge lies beyond the centre",
                            radius));
        }
    }

    /** Warns of the corner; {@code places} are the segments' own fields. */
    static void warn(DrawnCorner corner, JsonFields fields, List<JsonFields> places) {
        double degrees = Math.toDegrees(Math.abs(corner.angle()));
        if (!(degrees <= FURTHEST)) {
            fields.warn(
                    "segments",
                    String.format(Locale.ROOT, "%.0f° in all", degrees),
                    "unusual; that is more than a turn and a half");
        }
        double before = 0;
        for (int i = 0; i < places.size(); i++) {
            Segment segment = corner.segments().get(i);
            jump(before, segment.startCurvature(), corner, places.get(i), "begins");
            before = segment.endCurvature();
            spiral(segment, corner, places.get(i));
        }
        jump(before, 0, corner, places.get(places.size() - 1), "ends");
    }

    private static void spiral(Segment segment, DrawnCorner corner, JsonFields place) {
        double change = Math.abs(segment.endCurvature() - segment.startCurvature());
        if (segment.length() * segment.length() * change / 24 < SHIFT
                && jumps(segment.startCurvature(), segment.endCurvature(), corner)) {
            place.warn(
                    "length_m",
                    String.format(
                            Locale.ROOT,
                            "unusual; so short a spiral moves the line by less than a centimetre, and no car turns in as quickly:"
                                    + " the ideal bound and the plan for the exit slow down for it more than a car must; one of %.0f m is followed",
                            Math.ceil(Math.sqrt(24 * SHIFT / change))));
        }
    }

    /** Whether the lateral acceleration that sets in is worth a word. */
    private static boolean jumps(double before, double after, DrawnCorner corner) {
        double tightest = Math.max(Math.abs(before), Math.abs(after));
        double speedSquared = Math.min(corner.approachSpeed() * corner.approachSpeed(), Gravity.G / tightest);
        return speedSquared * Math.abs(after - before) > JUMP;
    }

    private static void jump(double before, double after, DrawnCorner corner, JsonFields place, String where) {
        if (jumps(before, after, corner)) {
            place.warn(
                    "type",
                    radius(before) + " to " + radius(after),
                    "unusual; where this segment " + where
                            + " the curvature jumps, which no car can follow; a spiral leads from one to the other");
        }
    }

    private static String radius(double curvature) {
        return curvature == 0
                ? "straight"
                : String.format(Locale.ROOT, "%.0f m", 1 / Math.abs(curvature)) + (curvature > 0 ? " left" : " right");
    }
}
