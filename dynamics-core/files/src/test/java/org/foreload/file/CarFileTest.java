package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Car files: what may be left out, what is refused and how, and that what is written is read back. */
class CarFileTest {

    @TempDir
    private Path directory;

    @Provide
    Arbitrary<Car> cars() {
        return SampleCars.cars();
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void whatIsWrittenIsReadBack(@ForAll("cars") Car car) {
        assertEquals(car, CarFile.parse(CarFile.write(car), "car.json").value());
    }

    private static String refusal(String json) {
        return assertThrows(InputException.class, () -> CarFile.parse(json, "car.json"))
                .line();
    }

    private static List<String> warnings(String json) {
        return CarFile.parse(json, "car.json").warnings().stream()
                .map(Warning::line)
                .toList();
    }

    @Test
    void whatIsAbsentIsZeroOrEqualOrRigid() {
        Loaded<Car> loaded = CarFile.parse(SampleCars.SMALLEST, "car.json");
        Car car = loaded.value();
        assertEquals(List.of(), loaded.warnings());
        assertEquals(Aerodynamics.NONE, car.aerodynamics());
        assertEquals(1.5, car.chassis().frontTrack());
        assertEquals(1.5, car.chassis().rearTrack());
        assertEquals(0, car.suspension().frontRollCenterHeight());
        assertEquals(0, car.suspension().rearRollCenterHeight());
        assertEquals(Response.RIGID, car.suspension().pitch());
        assertEquals(Response.RIGID, car.suspension().roll());
        FrictionTyre tyre = (FrictionTyre) car.frontTyre();
        assertEquals(0, tyre.loadSensitivity());
        assertEquals(0, tyre.relaxationLength());
        String rearOnly = SampleCars.smallestWith("front_track_m", "\"rear_track_m\": 1.4");
        assertEquals(1.4, CarFile.parse(rearOnly, "car.json").value().chassis().frontTrack());
    }

    @Test
    void aMagicFormulaWithoutCurvatureFactorHasNone() {
        String json = SampleCars.smallestWith("model", "\"model\": \"magic-formula\", \"shape_factor\": 1.4");
        FrictionTyre tyre =
                (FrictionTyre) CarFile.parse(json, "car.json").value().frontTyre();
        assertEquals(new SlipCurve.MagicFormula(1.4, 0), tyre.curve());
    }

    @Test
    void theRollResponseIsThatOfThePitchUnlessGiven() {
        String pitch = SampleCars.smallestAnd("\"pitch_frequency_hz\": 1.5, \"pitch_damping_ratio\": 0.4");
        Car car = CarFile.parse(pitch, "car.json").value();
        assertEquals(new Response(1.5, 0.4), car.suspension().pitch());
        assertEquals(new Response(1.5, 0.4), car.suspension().roll());
        String both = pitch.replaceFirst("\\{", "{\"roll_frequency_hz\": 2,");
        assertEquals(
                new Response(2, 0.4),
                CarFile.parse(both, "car.json").value().suspension().roll());
        String rigid = pitch.replaceFirst("\\{", "{\"roll_frequency_hz\": \"rigid\",");
        assertEquals(
                Response.RIGID,
                CarFile.parse(rigid, "car.json").value().suspension().roll());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "name",
                "mass_kg",
                "wheelbase_m",
                "cg_to_front_axle_m",
                "cg_height_m",
                "yaw_inertia_kg_m2",
                "front_track_m",
                "front_roll_stiffness_share",
                "front_brake_share",
                "power_w",
                "driven_axle"
            })
    void whatMustBeGivenIsNamed(String field) {
        String line = refusal(SampleCars.smallestWithout(field));
        assertTrue(line.startsWith("car.json: " + field + ": missing: must be given"), line);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "model",
                "peak_friction_x",
                "peak_friction_y",
                "reference_load_n",
                "cornering_stiffness_per_rad",
                "slip_stiffness"
            })
    void whatATyreMustHaveIsNamed(String field) {
        String line = refusal(SampleCars.smallestWithout(field));
        assertTrue(line.startsWith("car.json: front_tyre." + field + ": missing: must be given"), line);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            mass_kg             | "mass_kg": -5                   | mass_kg: -5: must be a number above 0
            mass_kg             | "mass_kg": 0                    | mass_kg: 0: must be a number above 0
            mass_kg             | "mass_kg": NaN                  | mass_kg: NaN: must be a finite number
            mass_kg             | "mass_kg": -Infinity            | mass_kg: -Infinity: must be a finite number
            mass_kg             | "mass_kg": 1e400                | mass_kg: 1E+400: must be a finite number
            mass_kg             | "mass_kg": "1000"               | mass_kg: 1000: must be a number without quotes
            mass_kg             | "mass_kg": null                 | mass_kg: null: must be a number
            mass_kg             | "mass_kg": [1000]               | mass_kg: [1000]: must be a number
            mass_kg             | "mass_kg": true                 | mass_kg: true: must be a number
            mass_kg             | "mass_kg": [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17] | mass_kg: [1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,…: must be a number
            power_w             | "power_w": 1e5, "anti_lock": "true" | anti_lock: true: must be true or false without quotes
            mass_kg             | "mass": 1000                    | mass: 1000: unknown field; did you mean mass_kg?
            mass_kg             | "Mass_kg": 1000                 | Mass_kg: 1000: unknown field; did you mean mass_kg?
            mass_kg             | "mass_kg": 1, "mass_kg": 2      | mass_kg: is given twice (line 3, column 26)
            name                | "name": 7                       | name: 7: must be a text in quotes
            cg_to_front_axle_m  | "cg_to_front_axle_m": 2.6       | cg_to_front_axle_m: 2.6: must be a number above 0 and below 2.5
            front_brake_share   | "front_brake_share": 1.01       | front_brake_share: 1.01: must be a number from 0 to 1
            driven_axle         | "driven_axle": "both"           | driven_axle: both: must be one of front, rear, all
            driven_axle         | "driven_axle": 1                | driven_axle: 1: must be one of front, rear, all
            model               | "model": "Brush"                | front_tyre.model: Brush: must be one of linear, brush, magic-formula
            model               | "model": "magic-formula"        | front_tyre.shape_factor: missing: must be given: a number
            peak_friction_x     | "peak_friction_x": 0            | front_tyre.peak_friction_x: 0: must be a number above 0
            peak_friction_y     | "grip": 1                       | front_tyre.grip: 1: unknown field; known are model, peak_friction_x, peak_friction_y, load_sensitivity, reference_load_n, relaxation_length_m, cornering_stiffness_per_rad, slip_stiffness, shape_factor, curvature_factor
            power_w             | "power_w": 1e5, "pitch_frequency_hz": 2 | pitch_damping_ratio: missing: must be given with pitch_frequency_hz: a number above 0
            power_w             | "power_w": 1e5, "pitch_frequency_hz": 0, "pitch_damping_ratio": 1 | pitch_frequency_hz: 0: must be above 0
            power_w             | "power_w": 1e5, "pitch_frequency_hz": "stiff" | pitch_frequency_hz: stiff: must be a number above 0 or "rigid"
            """)
    void aWrongFieldIsRefusedInOneLine(String field, String replacement, String line) {
        assertEquals("car.json: " + line, refusal(SampleCars.smallestWith(field, replacement)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {"name": "x",           | line 1, column 14: is not JSON: Unexpected end-of-input
            {"name": 'x'}           | line 1, column 10: is not JSON: Unexpected character
            {"name": "x"} {}        | line 1, column 15: text after the end
            {name: "x"}             | line 1, column 2: is not JSON: Unexpected character
            [1, 2]                  | [1,2]: must be a JSON object
            7                       | 7: must be a JSON object
            nonsense                | line 1, column 1: is not JSON: Unrecognized token
            {"name": "x", // why    | line 1, column 15: is not JSON: Unexpected character ('/' (code 47)): JSON has no comments
            """)
    void whatIsNotJsonIsRefusedWithItsPlace(String text, String start) {
        String line = refusal(text);
        assertTrue(line.startsWith("car.json: " + start), line);
        assertEquals(1, line.lines().count(), line);
        // Places and settings of the parser's own.
        assertTrue(!line.contains("Source") && !line.contains("Feature"), line);
    }

    @Test
    void deepNestingIsRefused() {
        String deep = "[".repeat(100_000);
        assertEquals("car.json: is nested deeper than 32 levels", refusal("{\"name\": " + deep));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            front_track_m   | "front_track_m": 400, "rear_track_m": 1.5 | front_track_m: 400: unusual; cars have 0.9 to 2.3 m
            peak_friction_x | "peak_friction_x": 3                      | front_tyre.peak_friction_x: 3: unusual; cars have 0.05 to 2.2
            model           | "model": "brush", "shape_factor": 1.4     | front_tyre.shape_factor: 1.4: has no effect; only the magic-formula model uses it
            power_w         | "power_w": 1e5, "drag_area_m2": 0.7       | drag_area_m2: 0.7: has no effect without air_density_kg_m3 (about 1.2 kg/m³ near sea level)
            power_w         | "power_w": 1e5, "pitch_damping_ratio": 1  | pitch_damping_ratio: 1: has no effect without a number for pitch_frequency_hz
            """)
    void anUnusualValueIsTakenWithAWarning(String field, String replacement, String line) {
        assertEquals(List.of("warning: car.json: " + line), warnings(SampleCars.smallestWith(field, replacement)));
    }

    /** 300 N slow 2000 kg by 0.15 m/s², and a car of 2 kg by 150 m/s². */
    @Test
    void theDragOfAClosedThrottleIsWarnedOfAsItIsWritten() {
        assertTrue(warnings(SampleCars.smallestWith("mass_kg", "\"mass_kg\": 2, \"closed_throttle_drag_n\": 300"))
                .contains(
                        "warning: car.json: closed_throttle_drag_n: 300: unusual; it slows this car by 150 m/s², cars "
                                + "slow by 0.02 to 3 m/s²"));
    }

    /** A car has too many fields to list them all in one line: the nearest are offered. */
    @Test
    void anUnknownFieldIsAnsweredWithWholeNames() {
        assertEquals(
                "car.json: zzyyx: 1: unknown field; those most like it are rear_tyre, front_tyre, driven_axle",
                refusal("{\"zzyyx\": 1}"));
    }

    @Test
    void unusualMassAndHeightSayWhatTheyDoToTheRest() {
        assertTrue(warnings(SampleCars.smallestWith("mass_kg", "\"mass_kg\": 20"))
                .contains("warning: car.json: mass_kg: 20: unusual; cars have 150 to 4000 kg"));
        String tall = warnings(SampleCars.smallestWith("cg_height_m", "\"cg_height_m\": 1.6"))
                .get(1);
        assertTrue(tall.contains("the car would roll over at 0.47 g of cornering"), tall);
        assertEquals(
                List.of(
                        "warning: car.json: cg_height_m: 0.72: unusual beside track and tyres: the car would roll over at "
                                + "1 g of cornering, before its tyres slide at 1.1 g"),
                warnings(SampleCars.smallestWith("cg_height_m", "\"cg_height_m\": 0.72")));
    }

    /** The point mass of level 1 is legal and nothing to warn about. */
    @Test
    void zeroHeightAndInertiaAreLegal() {
        String flat = SampleCars.smallestWith("cg_height_m", "\"cg_height_m\": 0")
                .replace("\"yaw_inertia_kg_m2\": 1400", "\"yaw_inertia_kg_m2\": 0");
        assertEquals(List.of(), warnings(flat));
    }

    @Test
    void filesThatAreNoTextAreRefused() throws IOException {
        Path binary = Files.write(directory.resolve("binary.json"), new byte[] {'{', 0, 1, 2});
        Path latin = Files.write(
                directory.resolve("latin.json"), "{\"name\": \"Größe\"}".getBytes(StandardCharsets.ISO_8859_1));
        Path empty = Files.write(directory.resolve("empty.json"), new byte[0]);
        Path large = directory.resolve("large.json");
        Files.writeString(large, " ".repeat(TextFile.LARGEST + 1));
        assertEquals(binary + ": is not a text file in UTF-8", refusal(binary));
        assertEquals(latin + ": is not a text file in UTF-8", refusal(latin));
        assertEquals(empty + ": is empty; it must hold a JSON object", refusal(empty));
        assertEquals(large + ": is larger than 16 MB", refusal(large));
        assertEquals(directory + ": must be a file, but is a directory", refusal(directory));
        assertEquals(directory.resolve("none") + ": no such file", refusal(directory.resolve("none")));
    }

    private static String refusal(Path path) {
        return assertThrows(InputException.class, () -> CarFile.read(path)).line();
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheFile() throws IOException {
        Path path = Files.writeString(directory.resolve("bom.json"), "\uFEFF" + SampleCars.SMALLEST);
        assertEquals("smallest", CarFile.read(path).value().name());
    }

    @Test
    void longAndManyLinedValuesStayOneShortLine() {
        String name = IntStream.range(0, 500).mapToObj(i -> "x\\n").collect(Collectors.joining());
        String line = refusal(SampleCars.smallestWith("driven_axle", "\"driven_axle\": \"" + name + "\""));
        assertEquals(1, line.lines().count());
        assertTrue(line.length() < 500, line);
    }
}
