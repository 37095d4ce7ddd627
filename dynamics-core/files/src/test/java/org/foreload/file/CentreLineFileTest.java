package org.foreload.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.foreload.path.Corner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Corner files whose line is measured in a CSV file beside them. */
class CentreLineFileTest {

    private static final double RADIUS = 80;

    /** What every refusal of a line ends with. */
    private static final String ASKED_FOR = " (centre_line_csv of DIR/corner.json)";

    @TempDir
    private Path directory;

    /** Thirty metres straight east, then a quarter circle to the left, a point every two metres. */
    private static String points(String more) {
        return IntStream.range(0, 78)
                .mapToObj(i -> {
                    double s = 2 * i - 30;
                    double x = s < 0 ? s : RADIUS * Math.sin(s / RADIUS);
                    double y = s < 0 ? 0 : RADIUS * (1 - Math.cos(s / RADIUS));
                    return String.format(Locale.ROOT, "%.4f,%.4f%s", x, y, more);
                })
                .collect(Collectors.joining("\n"));
    }

    private Loaded<Corner> read(String csv, String fields) throws IOException {
        Files.writeString(directory.resolve("line.csv"), csv);
        Path corner = directory.resolve("corner.json");
        Files.writeString(
                corner,
                "{\"name\": \"c\", \"approach_speed_mps\": 40, \"centre_line_csv\": \"line.csv\"" + fields + "}");
        return CornerFile.read(corner);
    }

    private String refusal(String csv, String fields) {
        String line =
                assertThrows(InputException.class, () -> read(csv, fields)).line();
        return line.replace(directory.toString(), "DIR").replace('\\', '/').replace(ASKED_FOR, "");
    }

    @Test
    void theLineIsFoundBesideTheCornerAndFollowed() throws IOException {
        Corner corner = read("x_m,y_m\n" + points(""), ", \"half_width_m\": 4").value();
        assertEquals(1 / RADIUS, corner.path().curvature(60), 0.02 / RADIUS);
        assertEquals(4, corner.path().widthLeft(60));
        assertTrue(
                corner.path().start() < -20,
                "turn-in after the straight: " + corner.path().start());
    }

    @Test
    void straightsAreSetBeforeAndAfter() throws IOException {
        String csv = "x_m,y_m\n" + points("");
        Corner bare = read(csv, ", \"half_width_m\": 4").value();
        Corner longer = read(csv, ", \"half_width_m\": 4, \"approach_length_m\": 100, \"exit_length_m\": 50")
                .value();
        // The joints of the fit may shift turn-in by a metre or two.
        assertEquals(bare.path().start() - 100, longer.path().start(), 5);
        assertEquals(
                150,
                longer.path().end()
                        - longer.path().start()
                        - (bare.path().end() - bare.path().start()),
                0.5);
    }

    /** 5 degrees of banking and 2 percent of grade, in radians; columns in any order, quoted, with CRLF and a BOM. */
    @Test
    void widthsBankingAndGradeAreRead() throws IOException {
        String csv = "\uFEFF\"x_m\",y_m,banking_deg,width_right_m,\"width_left_m\",grade_percent\r\n"
                + points(",5,3.5,\"4.5\",2").replace("\n", "\r\n") + "\r\n\r\n";
        Loaded<Corner> loaded = read(csv, "");
        assertEquals(List.of(), loaded.warnings());
        Corner corner = loaded.value();
        assertEquals(4.5, corner.path().widthLeft(50), 1e-9);
        assertEquals(3.5, corner.path().widthRight(50), 1e-9);
        assertEquals(0.0872664626, corner.path().banking(50), 1e-9);
        assertEquals(0.0199973340, corner.path().grade(50), 1e-9);
    }

    @Test
    void aHalfWidthBesideMeasuredWidthsIsWarnedOf() throws IOException {
        Loaded<Corner> loaded = read("x_m,y_m,width_left_m,width_right_m\n" + points(",4,4"), ", \"half_width_m\": 7");
        assertEquals(4, loaded.value().path().widthLeft(50), 1e-9);
        assertEquals(1, loaded.warnings().size());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            x_m;y_m\\n1;2             | DIR/line.csv: column x_m;y_m: unknown column; columns are separated by commas
            x_m,y\\n1,2               | DIR/line.csv: column y: unknown column; did you mean y_m?
            x_m,x_m\\n1,2             | DIR/line.csv: column x_m: is given twice
            x_m\\n1                   | DIR/line.csv: column y_m: missing: must be given
            x_m,y_m,width_left_m\\n   | DIR/line.csv: column width_right_m: missing: must be given
            x_m,y_m\\n1,2\\n3,abc     | DIR/line.csv: y_m, row 2: abc: must be a finite number
            x_m,y_m\\n1,2\\n3,NaN     | DIR/line.csv: y_m, row 2: NaN: must be a finite number
            x_m,y_m\\n1,2\\n3,        | DIR/line.csv: y_m, row 2: : must be a finite number
            x_m,y_m\\n1,2\\n3         | DIR/line.csv: row 2: 1 value: must have 2, as the head line; row 1 is the line below it
            x_m,y_m\\n1,2\\n3,4       | DIR/line.csv: x_m: 2 points: must be 5 points or more
            x_m,y_m\\n1,2\\n1,2\\n3,2\\n4,2\\n5,2 | DIR/line.csv: x_m, row 2: 1: must be another point than the row before
            """)
    void aWrongLineIsRefusedWithColumnAndRow(String csv, String line) {
        assertEquals(line, refusal(csv.replace("\\n", "\n"), ", \"half_width_m\": 4"));
    }

    /** The field and the value as they stand in the file, in degrees. */
    @Test
    void aBankingBeyondTheVerticalIsRefused() {
        assertEquals(
                "DIR/line.csv: banking_deg, row 1: 95: must be between -90 and 90 degrees",
                refusal("x_m,y_m,banking_deg\n" + points(",95"), ", \"half_width_m\": 4"));
    }

    @Test
    void aStraightLineIsNoCorner() {
        assertEquals(
                "DIR/corner.json: centre_line_csv: line.csv: must turn somewhere: a straight is no corner",
                refusal("x_m,y_m\n0,0\n9,0\n18,0\n27,0\n36,0\n45,0", ", \"half_width_m\": 4"));
    }

    @Test
    void filesThatAreNoLineAreRefused() {
        assertEquals("DIR/line.csv: is empty; it must begin with the columns x_m,y_m", refusal("", ""));
        assertEquals("DIR/line.csv: is not a text file in UTF-8", refusal("x_m,y_m\n\0", ""));
        assertTrue(refusal("x_m,y_m\n\"1,2\n3,4", "").startsWith("DIR/line.csv: is not CSV: "));
    }

    @Test
    void wrongFieldsOfTheCornerAreRefusedInItsName() {
        String csv = "x_m,y_m\n" + points("");
        String name = "DIR/corner.json: ";
        assertEquals(name + "half_width_m: missing: must be given: a number", refusal(csv, ""));
        assertEquals(name + "half_width_m: 0: must be a number above 0", refusal(csv, ", \"half_width_m\": 0"));
        assertEquals(
                name + "smoothing_m: -1: must be a number above 0",
                refusal(csv, ", \"half_width_m\": 4, \"smoothing_m\": -1"));
        assertEquals(
                name + "segments: []: must not be given together with centre_line_csv",
                refusal(csv, ", \"segments\": []"));
    }

    @Test
    void aMissingLineIsNamed() throws IOException {
        Path corner = directory.resolve("corner.json");
        Files.writeString(corner, "{\"name\": \"c\", \"approach_speed_mps\": 40, \"centre_line_csv\": \"none.csv\"}");
        String line = assertThrows(InputException.class, () -> CornerFile.read(corner))
                .line();
        String none = directory.resolve("none.csv").toString();
        assertEquals(none + ": no such file (centre_line_csv of " + corner + ")", line);
    }
}
