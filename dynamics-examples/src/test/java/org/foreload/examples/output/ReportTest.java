package org.foreload.examples.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The three faces of a report. */
class ReportTest {

    private static final Report REPORT = new Report("A title")
            .with("brake_point_m", -101.23456789)
            .with("none_s", Double.NaN)
            .with("outcome", "made it")
            .with("word", (String) null)
            .with("sure", true)
            .with("release", new Report().with("shape", "linear").with("end_m", 12.5))
            .with(
                    "rows",
                    "Some rows",
                    List.of(
                            new Report().with("s_m", -1.5).with("axle", "front"),
                            new Report().with("s_m", 1000).with("axle", "a, \"b\"")))
            .note("A remark.");

    @Test
    void theTableRoundsAlignsAndNamesUnits() {
        assertEquals("""
                A title

                brake point    -101.23  m
                none                 -  s
                outcome        made it
                word                 -
                sure               yes
                release shape   linear
                brake off        12.50  m

                Some rows
                    s m  axle
                  -1.50  front
                1000.00  a, "b"

                A remark.
                """, Format.TABLE.render(REPORT));
    }

    @Test
    void jsonKeepsEveryDigitAndHasNullForNone() throws IOException {
        JsonNode json = new ObjectMapper().readTree(Format.JSON.render(REPORT));
        assertEquals(-101.23456789, json.get("brake_point_m").doubleValue());
        assertEquals(true, json.get("none_s").isNull());
        assertEquals(true, json.get("word").isNull());
        assertEquals(true, json.get("sure").booleanValue());
        assertEquals("linear", json.at("/release/shape").textValue());
        assertEquals(1000, json.at("/rows/1/s_m").doubleValue());
        assertEquals(7, json.size());
    }

    @Test
    void csvIsTheFirstListWithTheSingleValuesOrOneRow() {
        assertEquals("""
                s_m,axle,brake_point_m,none_s,outcome,word,sure,release.shape,release.end_m
                -1.5,front,-101.23456789,,made it,,true,linear,12.5
                1000.0,"a, ""b""\",-101.23456789,,made it,,true,linear,12.5
                """, Format.CSV.render(REPORT));
        Report plain = new Report()
                .with("time_s", 1.25)
                .with("none_s", Double.NaN)
                .with("release", new Report().with("end_m", 2));
        assertEquals("time_s,none_s,release.end_m\n1.25,,2.0\n", Format.CSV.render(plain));
    }

    /**
     * A name that the rows have, too, gets a word before it: no column stands twice. Other lists, and parts with lists,
     * are left to JSON.
     */
    @Test
    void aSingleValueOfTheSameNameAsAColumnIsToldApart() {
        Report report = new Report()
                .with("time_s", 17)
                .with("rows", "Rows", List.of(new Report().with("time_s", 1), new Report().with("time_s", 2)))
                .with("more", "More rows", List.of(new Report().with("s_m", 3)))
                .with("best", new Report().with("time_s", 4).with("rows", "Its rows", List.of()))
                .with("gain_s", 0.5);
        assertEquals("time_s,answer.time_s,gain_s\n1.0,17.0,0.5\n2.0,17.0,0.5\n", Format.CSV.render(report));
    }

    @Test
    void longTablesAreThinned() {
        List<Report> rows = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            rows.add(new Report().with("s_m", i));
        }
        String table = Format.TABLE.render(new Report().with("rows", "Rows", rows));
        // Rows 0, 3, …, 99, a head, a caption, an empty line and the remark.
        assertEquals(34 + 4, table.lines().count());
        assertEquals(
                101,
                Format.CSV
                        .render(new Report().with("rows", "Rows", rows))
                        .lines()
                        .count());
    }

    @Test
    void aNameIsGivenOnce() {
        Report one = new Report().with("time_s", 1);
        assertThrows(IllegalArgumentException.class, () -> one.with("time_s", 2));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            front_axle_load_n                      | front axle load N
            deceleration_mps2                      | deceleration m/s²
            turn_in_speed_mps                      | turn-in speed m/s
            minimum_speed_at_m                     | slowest point m
            sideslip_deg                           | sideslip °
            understeer_gradient_rad_per_mps2       | understeer gradient rad/(m/s²)
            yaw_rate_gain_per_s                    | yaw rate gain 1/s
            yaw_inertia_kg_m2                      | yaw inertia kg·m²
            trail_share                            | trail share
            rear_margin_change                     | rear margin change
            release.release_start_m                | release point m
            release.peak_deceleration_mps2         | peak deceleration m/s²
            sensible.brake_m                       | sensible brake point m
            front_adhesion_utilisation             | front adhesion used
            release.build_up_time_s                | build-up time s
            margins.front                          | front margin
            """)
    void theUnitIsReadOffTheName(String name, String heading) {
        assertEquals(heading, Quantity.of(name).heading());
    }

    @ParameterizedTest
    @CsvSource({"1.005, 1.0, 1", "-0.04, 0.0, 1", "2.5, 2, 0", "1e15, 1.0E15, 2", "NaN, -, 2", "Infinity, Infinity, 2"})
    void numbersAreRounded(double value, String text, int decimals) {
        assertEquals(text, Numbers.rounded(value, decimals));
    }

    @ParameterizedTest
    @CsvSource({"5, 5", "0.1, 0.1", "-0.0, 0", "1200000, 1200000", "1e-9, 1.0E-9", "NaN, NaN"})
    void numbersAreShort(double value, String text) {
        assertEquals(text, Numbers.shortest(value));
    }
}
