package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Corner files that are drawn from segments. */
class CornerFileTest {

    private static final String START = """
            {"name": "c", "approach_speed_mps": 50, "approach_length_m": 200, "exit_length_m": 100, "half_width_m": 5,
             "segments": [""";

    private static final String BEND = """
            {"type": "spiral", "length_m": 30, "end_radius_m": 60, "turn": "right"},
            {"type": "arc", "length_m": 50, "radius_m": 60, "turn": "right"},
            {"type": "spiral", "length_m": 20, "start_radius_m": 60, "turn": "right"}
            """;

    @Provide
    Arbitrary<DrawnCorner> corners() {
        return SampleCars.corners();
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void whatIsWrittenIsReadBack(@ForAll("corners") DrawnCorner corner) {
        assertEquals(corner, CornerFile.parseDrawn(CornerFile.write(corner), "corner.json"));
    }

    private static Loaded<Corner> parse(String json) {
        return CornerFile.parse(json, "corner.json", Path.of(""));
    }

    private static String refusal(String json) {
        return assertThrows(InputException.class, () -> parse(json)).line();
    }

    @Test
    void aLeftOutRadiusIsAStraightEnd() {
        DrawnCorner corner = CornerFile.parseDrawn(START + BEND + "]}", "corner.json");
        assertEquals(
                List.of(
                        Segment.spiralIn(30, 60, Turn.RIGHT),
                        Segment.arc(50, 60, Turn.RIGHT),
                        Segment.spiralOut(20, 60, Turn.RIGHT)),
                corner.segments());
    }

    /** s = 0 where curvature first leaves zero; right turns have negative curvature. */
    @Test
    void theLineRunsFromTheApproachToTheEndOfTheExit() {
        Corner corner = parse(START + BEND + "]}").value();
        assertEquals(50, corner.approachSpeed());
        assertEquals(-200, corner.path().start());
        assertEquals(30 + 50 + 20 + 100, corner.path().end());
        assertEquals(0, corner.path().curvature(0), 1e-15);
        assertEquals(-1.0 / 60, corner.path().curvature(40), 1e-15);
        assertEquals(5, corner.path().widthLeft(40));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {"type": "arc", "length_m": 5, "turn": "left"} | segments[0].radius_m: missing: must be given: a number
            {"type": "arc", "length_m": 5, "radius_m": 9} | segments[0].turn: missing: must be given: one of left, right
            {"type": "arc", "length_m": 5, "radius_m": -9, "turn": "left"} | segments[0].radius_m: -9: must be a number of 1 or more
            {"type": "arc", "length_m": 0, "radius_m": 9, "turn": "left"} | segments[0].length_m: 0: must be a number above 0
            {"type": "arc", "length_m": 20001, "radius_m": 9, "turn": "left"} | segments[0].length_m: 20001: must be at most 20000
            {"type": "arc", "length_m": 5, "radius_m": 0.5, "turn": "left"} | segments[0].radius_m: 0.5: must be a number of 1 or more
            {"type": "arc", "length_m": 5, "radius_m": 9, "turn": "up"} | segments[0].turn: up: must be one of left, right
            {"type": "arc", "length_m": 5, "end_radius_m": 9, "turn": "left"} | segments[0].end_radius_m: 9: an arc has one radius, radius_m; if it changes, the segment is a spiral
            {"type": "bend", "length_m": 5} | segments[0].type: bend: must be one of straight, arc, spiral
            {"length_m": 5} | segments[0].type: missing: must be given: one of straight, arc, spiral
            {"type": "straight"} | segments[0].length_m: missing: must be given: a number
            {"type": "straight", "angle_deg": 5} | segments[0].angle_deg: 5: a straight does not turn
            {"type": "arc", "radius_m": 9, "turn": "left"} | segments[0].length_m: missing: must be given, or angle_deg: a number
            {"type": "arc", "length_m": 5, "angle_deg": 9, "radius_m": 9, "turn": "left"} | segments[0].angle_deg: 9: must not be given together with length_m
            {"type": "arc", "angle_deg": 0, "radius_m": 9, "turn": "left"} | segments[0].angle_deg: 0: must be above 0 and at most 720
            {"type": "arc", "angle_deg": 721, "radius_m": 9, "turn": "left"} | segments[0].angle_deg: 721: must be above 0 and at most 720
            {"type": "arc", "angle_deg": 90, "radius_m": 20000, "turn": "left"} | segments[0].angle_deg: 90: must make a segment of at most 20000 m with this radius
            {"type": "straight", "length_m": 5, "radius_m": 3} | segments[0].radius_m: 3: a straight has no radius
            {"type": "spiral", "length_m": 5, "turn": "left"} | segments[0].end_radius_m: missing: must be given, or start_radius_m: a spiral turns at one end at least
            {"type": "spiral", "length_m": 5, "radius_m": 9, "turn": "left"} | segments[0].radius_m: 9: a spiral has start_radius_m and end_radius_m; one that is left out is a straight end
            {"type": "straight", "length": 5} | segments[0].length: 5: unknown field; did you mean length_m?
            5 | segments[0]: 5: must be an object: { … }
            """)
    void aWrongSegmentIsRefusedWithItsPlace(String segment, String line) {
        assertEquals("corner.json: " + line, refusal(START + segment + "]}"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"name", "approach_speed_mps", "approach_length_m", "exit_length_m", "half_width_m"})
    void whatMustBeGivenIsNamed(String field) {
        String json = (START + BEND + "]}").replaceFirst("\"" + field + "\": [^,]*,", "");
        String line = refusal(json);
        assertEquals("corner.json: " + field + ": missing: must be given", line.substring(0, line.lastIndexOf(": a ")));
    }

    @Test
    void wrongNumbersOfTheWholeAreRefused() {
        String corner = START + BEND + "]}";
        assertEquals(
                "corner.json: approach_speed_mps: 0: must be a number above 0",
                refusal(corner.replace("\"approach_speed_mps\": 50", "\"approach_speed_mps\": 0")));
        assertEquals(
                "corner.json: half_width_m: -1: must be a number above 0",
                refusal(corner.replace("\"half_width_m\": 5", "\"half_width_m\": -1")));
        assertEquals(
                "corner.json: segments: []: must be a list of at least one object: [ { … } ]", refusal(START + "]}"));
        assertEquals(
                "corner.json: segments: missing: must be given: a list of segments (or centre_line_csv)",
                refusal("{\"name\": \"c\", \"approach_speed_mps\": 50}"));
    }

    /** A rise of 6 in 100 is an angle of arctan 0.06, as a road's grade is defined. */
    @Test
    void aDrawnRoadHasItsSlopes() {
        Corner corner = parse(START + BEND + "], \"grade_percent\": -6, \"banking_deg\": 3}")
                .value();
        assertEquals(-Math.atan(0.06), corner.path().grade(-100), 1e-15);
        assertEquals(Math.PI / 60, corner.path().banking(40), 1e-15);
    }

    @Test
    void aSlopeThatNoRoadHasIsRefusedOrWarnedOf() {
        assertEquals(
                "corner.json: grade_percent: 61: must be between -60 and 60",
                refusal(START + BEND + "], \"grade_percent\": 61}"));
        assertEquals(
                "corner.json: banking_deg: x: must be a number", refusal(START + BEND + "], \"banking_deg\": \"x\"}"));
        assertEquals(
                List.of("warning: corner.json: banking_deg: -40: unusual; roads have up to 35°"),
                parse(START + BEND + "], \"banking_deg\": -40}").warnings().stream()
                        .map(Warning::line)
                        .toList());
    }

    @Test
    void aMeasuredLineHasItsSlopesInItsOwnFile() {
        assertEquals(
                "corner.json: grade_percent: 5: must be a column of the centre_line_csv",
                refusal("{\"name\": \"c\", \"approach_speed_mps\": 50, \"centre_line_csv\": \"a.csv\", "
                        + "\"grade_percent\": 5}"));
    }

    @Test
    void unusualSpeedsAndRadiiAreTakenWithAWarning() {
        String json = (START + BEND + "]}")
                .replace("\"approach_speed_mps\": 50", "\"approach_speed_mps\": 150")
                .replace("\"radius_m\": 60", "\"radius_m\": 2");
        assertEquals(
                List.of(
                        "warning: corner.json: approach_speed_mps: 150: unusual; cars come with up to 110 m/s",
                        "warning: corner.json: segments[1].radius_m: 2: unusual; corners have 3 to 20000 m"),
                parse(json).warnings().stream().map(Warning::line).limit(2).toList());
    }

    @Test
    void aStraightIsNoCorner() {
        assertEquals(
                "corner.json: segments: [{\"type\":\"straight\",\"length_m\":60}]: must turn somewhere: a straight is no "
                        + "corner",
                refusal(START + "{\"type\": \"straight\", \"length_m\": 60}]}"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0.001 | unusual; from line to edge, tracks have 1 to 25 m
            24    | unusual; the line turns with a radius of 20 m, so its inner edge lies beyond the centre
            """)
    void unusualWidthsAreTakenWithAWarning(String width, String message) {
        String json =
                (START + BEND.replace("60", "20") + "]}").replace("\"half_width_m\": 5", "\"half_width_m\": " + width);
        assertEquals(
                List.of("warning: corner.json: half_width_m: " + width + ": " + message),
                parse(json).warnings().stream().map(Warning::line).toList());
    }

    /** An arc of angle φ is φR long; a spiral's mean curvature is that of half its way. */
    @Test
    void anglesMakeTheLengths() {
        String bend = """
                {"type": "spiral", "angle_deg": 15, "end_radius_m": 60, "turn": "right"},
                {"type": "arc", "angle_deg": 60, "radius_m": 60, "turn": "right"},
                {"type": "spiral", "angle_deg": 20, "start_radius_m": 60, "end_radius_m": 120, "turn": "right"},
                {"type": "spiral", "angle_deg": 25, "start_radius_m": 120, "turn": "right"}
                """;
        DrawnCorner corner = CornerFile.parseDrawn(START + bend + "]}", "corner.json");
        double[] lengths = {Math.PI / 12 * 120, Math.PI / 3 * 60, Math.PI / 9 * 80, Math.PI * 5 / 36 * 240};
        for (int i = 0; i < lengths.length; i++) {
            assertEquals(lengths[i], corner.segments().get(i).length(), 1e-9);
        }
        assertEquals(-Math.toRadians(120), corner.angle(), 1e-12);
        double whole = lengths[0] + lengths[1] + lengths[2] + lengths[3];
        assertEquals(
                List.of(String.format(Locale.ROOT, "corner.json: turns 120.0° to the right, over %.1f m", whole)),
                parse(START + bend + "]}").notes());
        assertEquals(List.of(), parse(START + BEND + "]}").notes());
    }

    /** Where the angles of a drawn corner lead is said of the corners of a circuit, too, each by its number. */
    @Test
    void aCircuitSaysWhereTheAnglesOfItsCornersLead() {
        String bend = """
                {"type": "spiral", "angle_deg": 15, "end_radius_m": 60, "turn": "left"},
                {"type": "spiral", "angle_deg": 15, "start_radius_m": 60, "turn": "left"}]}
                """;
        String circuit = "{\"name\": \"c\", \"corners\": [" + START + BEND + "]}, " + START + bend + "]}";
        List<String> notes =
                CircuitFile.parse(circuit, "circuit.json", Path.of("")).notes();
        assertEquals(1, notes.size());
        assertTrue(notes.get(0).startsWith("circuit.json, corner 2: turns 30.0° to the left"), notes.toString());
    }

    /** Right and left do not cancel: each bend by itself, with a straight between two of one direction or none. */
    @Test
    void eachBendIsNamed() {
        String bends = """
                {"type": "spiral", "angle_deg": 10, "end_radius_m": 60, "turn": "right"},
                {"type": "spiral", "angle_deg": 10, "start_radius_m": 60, "turn": "right"},
                {"type": "straight", "length_m": 10},
                {"type": "spiral", "angle_deg": 12, "end_radius_m": 60, "turn": "right"},
                {"type": "spiral", "angle_deg": 12, "start_radius_m": 60, "turn": "right"},
                {"type": "spiral", "angle_deg": 15, "end_radius_m": 60, "turn": "left"},
                {"type": "spiral", "angle_deg": 15, "start_radius_m": 60, "turn": "left"}
                """;
        List<String> notes = parse(START + bends + "]}").notes();
        assertTrue(
                notes.get(0).startsWith("corner.json: turns 44.0° to the right, then 30.0° to the left, over "),
                notes.toString());
    }

    private static List<String> warnings(String segments) {
        return parse(START + segments + "]}").warnings().stream()
                .map(Warning::line)
                .toList();
    }

    @Test
    void moreThanATurnAndAHalfIsAskedAbout() {
        String coil = """
                {"type": "spiral", "angle_deg": 20, "end_radius_m": 60, "turn": "left"},
                {"type": "arc", "angle_deg": %s, "radius_m": 60, "turn": "left"},
                {"type": "spiral", "angle_deg": 20, "start_radius_m": 60, "turn": "left"}
                """;
        assertEquals(List.of(), warnings(coil.formatted("499")));
        assertEquals(
                List.of("warning: corner.json: segments: 541° in all: unusual; that is more than a turn and a half"),
                warnings(coil.formatted("501")));
    }

    /** The shift of a clothoid, l²/(24 R), as surveyors know it (from memory): 1 cm for 3.8 m at 60 m. */
    @Test
    void aSpiralThatNoCarCanFollowIsAskedAbout() {
        String bend = """
                {"type": "spiral", "length_m": %s, "end_radius_m": 60, "turn": "left"},
                {"type": "arc", "length_m": 40, "radius_m": 60, "turn": "left"},
                {"type": "spiral", "length_m": 20, "start_radius_m": 60, "turn": "left"}
                """;
        List<String> asked = warnings(bend.formatted("3.7"));
        assertEquals(1, asked.size());
        assertTrue(
                asked.get(0).startsWith("warning: corner.json: segments[0].length_m: 3.7: unusual; so short a spiral"));
        assertTrue(asked.get(0).endsWith("one of 4 m is followed"), asked.get(0));
        assertEquals(List.of(), warnings(bend.formatted("3.9")));
    }

    /** At 50 m/s, or what 1 g allows; a gentle bend may jump. */
    @Test
    void aJumpInCurvatureIsAskedAbout() {
        String jump = "the curvature jumps, which no car can follow; a spiral leads from one to the other";
        assertEquals(
                List.of(
                        "warning: corner.json: segments[0].type: straight to 60 m left: unusual; where this segment begins "
                                + jump,
                        "warning: corner.json: segments[1].type: 60 m left to 60 m right: unusual; where this segment begins "
                                + jump,
                        "warning: corner.json: segments[1].type: 60 m right to straight: unusual; where this segment ends "
                                + jump),
                warnings("""
                        {"type": "arc", "length_m": 50, "radius_m": 60, "turn": "left"},
                        {"type": "arc", "length_m": 50, "radius_m": 60, "turn": "right"}
                        """));
        assertEquals(List.of(), warnings("""
                {"type": "arc", "length_m": 50, "radius_m": 3000, "turn": "left"}
                """));
    }
}
