package org.foreload.file;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.Turn;

/**
 * A corner as a JSON file; {@code docs/corner.schema.json} describes every field.
 *
 * <p>Its line is either drawn from {@code segments} (from turn-in on; the straights before and after are
 * {@code approach_length_m} and {@code exit_length_m}), or measured and kept in a CSV file beside it,
 * {@code centre_line_csv}; see {@link CentreLineFile}.
 */
public final class CornerFile {

    /** Rise over run of a drawn line in per cent; the name of a measured line's column, too. */
    static final String GRADE = "grade_percent";

    /** Slope across a drawn line in degrees; the name of a measured line's column, too. */
    static final String BANKING = "banking_deg";

    /** Names of the fields, in the order in which they are written. */
    static final List<String> NAMES = List.of(
            "name",
            "approach_speed_mps",
            "approach_length_m",
            "exit_length_m",
            "half_width_m",
            "segments",
            GRADE,
            BANKING,
            "centre_line_csv",
            "smoothing_m");

    /** Names of a segment's fields. */
    static final List<String> SEGMENT_NAMES =
            List.of("type", "length_m", "angle_deg", "radius_m", "start_radius_m", "end_radius_m", "turn");

    /** Longest piece of a line, m: longer ones are slips, and would only cost time and memory. */
    private static final double LONGEST = 20_000;

    /** Curvature, 1/m, up to which a measured line is straight: a kilometre of it turns by half a degree. */
    private static final double STRAIGHT = 1e-5;

    /** Smallest radius, m; no car turns so tightly. */
    private static final double TIGHTEST = 1;

    /** Steepest slopes that a paved road has, in per cent or degrees: a hill climb, an oval's bank. */
    private static final double STEEPEST = 35;

    /** Steepest slope that is read, in the same units. */
    private static final double STEEPEST_OF_ALL = 60;

    /** Widest angle of one segment, °: two whole turns are no corner. */
    private static final double WIDEST = 720;

    private static final String LENGTH = "length_m";

    private static final String ANGLE = "angle_deg";

    private static final List<String> RADII = List.of("radius_m", "start_radius_m", "end_radius_m");

    private enum Type {
        STRAIGHT,
        ARC,
        SPIRAL
    }

    private static final Map<String, Type> TYPES = new LinkedHashMap<>();
    private static final Map<String, Turn> TURNS = new LinkedHashMap<>();

    static {
        TYPES.put("straight", Type.STRAIGHT);
        TYPES.put("arc", Type.ARC);
        TYPES.put("spiral", Type.SPIRAL);
        TURNS.put("left", Turn.LEFT);
        TURNS.put("right", Turn.RIGHT);
    }

    private CornerFile() {}

    /** Whether a corner file has a field of that name at its outermost level. */
    public static boolean hasField(String name) {
        return NAMES.contains(name);
    }

    /**
     * Reads a corner.
     *
     * @param path the file; a centre line is looked for beside it
     * @throws InputException if the file, its centre line, or a value in them cannot be used
     */
    public static Loaded<Corner> read(Path path) {
        String file = path.toString();
        return parse(TextFile.read(path, file), file, path.toAbsolutePath().getParent());
    }

    /**
     * Reads a corner from JSON text.
     *
     * @param text the JSON
     * @param file the name that errors and warnings give
     * @param directory where a centre line is looked for
     * @throws InputException if a value cannot be used
     */
    public static Loaded<Corner> parse(String text, String file, Path directory) {
        List<Warning> warnings = new ArrayList<>();
        JsonFields fields = JsonFields.of(file, JsonText.read(text, file), NAMES, warnings);
        if (fields.has("centre_line_csv")) {
            Corner measured = MeasuredCorner.read(fields, file, directory);
            double tightest = UnusualCorner.tightest(measured.path());
            turning(fields, "centre_line_csv", tightest > STRAIGHT);
            UnusualCorner.width(1 / tightest, fields);
            return new Loaded<>(measured, warnings);
        }
        DrawnCorner drawn = drawn(fields);
        Corner corner = fields.build(drawn::corner);
        double tightest = drawn.tightest();
        turning(fields, "segments", tightest > 0);
        UnusualCorner.width(1 / tightest, fields);
        List<JsonFields> segments = fields.objects("segments", SEGMENT_NAMES);
        UnusualCorner.warn(drawn, fields, segments);
        return new Loaded<>(corner, warnings, notes(drawn, segments, file));
    }

    /** A straight has no turn-in and no apex, and so no answer: it is refused here, in words of its own file. */
    private static void turning(JsonFields fields, String field, boolean turns) {
        if (!turns) {
            throw fields.refuse(field, "must turn somewhere: a straight is no corner");
        }
    }

    /** Who draws by angles wants to know where they lead. */
    private static List<String> notes(DrawnCorner drawn, List<JsonFields> segments, String file) {
        if (segments.stream().noneMatch(segment -> segment.has(ANGLE))) {
            return List.of();
        }
        String turns = drawn.bends().stream()
                .map(bend -> String.format(
                        Locale.ROOT, "%.1f° to the %s", Math.toDegrees(Math.abs(bend)), bend < 0 ? "right" : "left"))
                .collect(Collectors.joining(", then "));
        return List.of(
                String.format(Locale.ROOT, "%s: turns %s, over %.1f m", OneLine.of(file), turns, drawn.length()));
    }

    /**
     * Reads a corner that is drawn from segments, as it is written.
     *
     * @param text the JSON
     * @param file the name that errors give
     * @throws InputException if a value cannot be used
     */
    public static DrawnCorner parseDrawn(String text, String file) {
        JsonFields fields = JsonFields.of(file, JsonText.read(text, file), NAMES, new ArrayList<>());
        DrawnCorner drawn = drawn(fields);
        fields.build(drawn::corner);
        return drawn;
    }

    private static DrawnCorner drawn(JsonFields fields) {
        if (!fields.has("segments")) {
            throw fields.refuse("segments", "must be given: a list of segments (or centre_line_csv)");
        }
        if (fields.has("smoothing_m")) {
            throw fields.refuse("smoothing_m", "belongs to a centre_line_csv; segments need none");
        }
        String name = fields.text("name");
        double approachSpeed = approachSpeed(fields);
        double approachLength = length(fields, "approach_length_m");
        double exitLength = length(fields, "exit_length_m");
        double halfWidth = fields.number("half_width_m");
        List<Segment> segments = new ArrayList<>();
        for (JsonFields segment : fields.objects("segments", SEGMENT_NAMES)) {
            segments.add(segment(segment));
        }
        return new DrawnCorner(
                name,
                approachSpeed,
                approachLength,
                exitLength,
                halfWidth,
                segments,
                slope(fields, GRADE, "%"),
                slope(fields, BANKING, "°"));
    }

    /** Reads a slope of the whole road, level if left out; says so if no road is that steep. */
    private static double slope(JsonFields fields, String name, String unit) {
        double slope = fields.number(name, 0);
        if (!(Math.abs(slope) <= STEEPEST_OF_ALL)) {
            throw fields.refuse(name, "must be between -60 and 60");
        }
        if (!(Math.abs(slope) <= STEEPEST)) {
            fields.warn(name, "unusual; roads have up to " + (int) STEEPEST + unit);
        }
        return slope;
    }

    /** Reads the approach speed; says so if no car comes that fast. */
    static double approachSpeed(JsonFields fields) {
        double speed = fields.number("approach_speed_mps");
        if (!(speed <= 110)) {
            fields.warn("approach_speed_mps", "unusual; cars come with up to 110 m/s");
        }
        return speed;
    }

    private static Segment segment(JsonFields fields) {
        Type type = fields.choice("type", TYPES);
        return switch (type) {
            case STRAIGHT -> {
                if (fields.has(ANGLE)) {
                    throw fields.refuse(ANGLE, "a straight does not turn");
                }
                double length = length(fields, LENGTH);
                only(fields, List.of(), "a straight has no radius");
                if (fields.has("turn")) {
                    fields.choice("turn", TURNS);
                    fields.warn("turn", "has no effect; a straight does not turn");
                }
                yield fields.build(() -> Segment.straight(length));
            }
            case ARC -> {
                only(
                        fields,
                        List.of("radius_m"),
                        "an arc has one radius, radius_m; if it changes, the segment is a spiral");
                double radius = radius(fields, "radius_m");
                double length = length(fields, 1 / radius);
                Turn turn = fields.choice("turn", TURNS);
                yield fields.build(() -> Segment.arc(length, radius, turn));
            }
            case SPIRAL -> {
                only(
                        fields,
                        List.of("start_radius_m", "end_radius_m"),
                        "a spiral has start_radius_m and end_radius_m; one that is left out is a straight end");
                double start =
                        fields.has("start_radius_m") ? radius(fields, "start_radius_m") : Double.POSITIVE_INFINITY;
                double end = fields.has("end_radius_m") ? radius(fields, "end_radius_m") : Double.POSITIVE_INFINITY;
                if (Double.isInfinite(start) && Double.isInfinite(end)) {
                    throw fields.refuse(
                            "end_radius_m", "must be given, or start_radius_m: a spiral turns at one end at least");
                }
                double length = length(fields, 0.5 * (1 / start + 1 / end));
                Turn turn = fields.choice("turn", TURNS);
                yield fields.build(() -> new Segment.Spiral(length, start, end, turn));
            }
        };
    }

    private static void only(JsonFields fields, List<String> allowed, String why) {
        for (String radius : RADII) {
            if (fields.has(radius) && !allowed.contains(radius)) {
                throw fields.refuse(radius, why);
            }
        }
    }

    /** Reads the length of a piece of a line. */
    static double length(JsonFields fields, String name) {
        double length = fields.number(name);
        if (!(length <= LONGEST)) {
            throw fields.refuse(name, "must be at most 20000");
        }
        return length;
    }

    /** Reads the length of a segment that turns, or the angle through which it does with this mean curvature in 1/m. */
    private static double length(JsonFields fields, double curvature) {
        if (!fields.has(ANGLE)) {
            if (!fields.has(LENGTH)) {
                throw fields.refuse(LENGTH, "must be given, or " + ANGLE + ": a number");
            }
            return length(fields, LENGTH);
        }
        if (fields.has(LENGTH)) {
            throw fields.refuse(ANGLE, "must not be given together with " + LENGTH);
        }
        double angle = fields.number(ANGLE);
        if (!(angle > 0 && angle <= WIDEST)) {
            throw fields.refuse(ANGLE, "must be above 0 and at most 720");
        }
        double length = Math.toRadians(angle) / curvature;
        if (!(length <= LONGEST)) {
            throw fields.refuse(ANGLE, "must make a segment of at most 20000 m with this radius");
        }
        return length;
    }

    private static double radius(JsonFields fields, String name) {
        double radius = fields.number(name);
        if (!(radius >= TIGHTEST)) {
            throw fields.refuse(name, "must be a number of 1 or more");
        }
        if (!(radius >= 3 && radius <= 20_000)) {
            fields.warn(name, "unusual; corners have 3 to 20000 m");
        }
        return radius;
    }

    /** The corner as JSON text, which {@link #parseDrawn} reads back to an equal corner. */
    public static String write(DrawnCorner corner) {
        ObjectNode out = JsonNodeFactory.instance.objectNode();
        out.put("name", corner.name());
        out.put("approach_speed_mps", corner.approachSpeed());
        out.put("approach_length_m", corner.approachLength());
        out.put("exit_length_m", corner.exitLength());
        out.put("half_width_m", corner.halfWidth());
        var segments = out.putArray("segments");
        corner.segments().forEach(segment -> write(segment, segments.addObject()));
        if (corner.gradePercent() != 0) {
            out.put(GRADE, corner.gradePercent());
        }
        if (corner.bankingDegrees() != 0) {
            out.put(BANKING, corner.bankingDegrees());
        }
        return JsonWriter.write(out);
    }

    private static void write(Segment segment, ObjectNode out) {
        if (segment instanceof Segment.Straight straight) {
            out.put("type", "straight").put("length_m", straight.length());
        } else if (segment instanceof Segment.Arc arc) {
            out.put("type", "arc").put("length_m", arc.length()).put("radius_m", arc.radius());
            out.put("turn", word(arc.turn()));
        } else if (segment instanceof Segment.Spiral spiral) {
            out.put("type", "spiral").put("length_m", spiral.length());
            if (Double.isFinite(spiral.startRadius())) {
                out.put("start_radius_m", spiral.startRadius());
            }
            if (Double.isFinite(spiral.endRadius())) {
                out.put("end_radius_m", spiral.endRadius());
            }
            out.put("turn", word(spiral.turn()));
        }
    }

    private static String word(Turn turn) {
        return turn == Turn.LEFT ? "left" : "right";
    }
}
