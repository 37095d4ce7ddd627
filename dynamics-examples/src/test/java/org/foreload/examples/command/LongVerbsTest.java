package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.foreload.braking.BrakePlan;
import org.foreload.examples.demo.Demos;
import org.foreload.file.CornerFile;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** The verbs that take longest, each run to its end on a short corner with the simple shapes only. */
class LongVerbsTest {

    private static JsonNode answer(String verb, String... more) throws IOException {
        List<String> words = new ArrayList<>(List.of(verb));
        words.addAll(List.of("--corner", ShortCorner.file()));
        words.addAll(List.of("--restarts", "0", "--quiet", "--tolerance", "1e-4", "--format", "json"));
        words.addAll(List.of(more));
        return Run.json(words.toArray(String[]::new));
    }

    private static List<JsonNode> rows(JsonNode answer, String name) {
        return StreamSupport.stream(answer.get(name).spliterator(), false).toList();
    }

    @Test
    void sensitivityIsSortedAndKnowsThatLessGripIsSlower() throws IOException {
        String words = EveryVerbTest.SENSITIVITY + ShortCorner.file();
        List<JsonNode> rows = rows(Reports.of(words.split(" ")).json(), "rows");
        double before = Double.POSITIVE_INFINITY;
        for (JsonNode row : rows) {
            double change = Math.abs(row.get("time_change_s").asDouble());
            assertTrue(change <= before, row.toString());
            before = change;
        }
        JsonNode friction = rows.stream()
                .filter(row -> row.get("parameter").asText().equals("friction_scale"))
                .findFirst()
                .orElseThrow();
        assertTrue(friction.get("time_change_s").asDouble() < 0, friction.toString());
    }

    @Test
    void stepsKeepWithinTheAcceptedRisk() throws IOException {
        JsonNode answer = answer("steps", "--samples", "16", "--driver", "novice", "--steps", "2", "--accept", "0.1");
        assertTrue(answer.get("margin_cost_s").asDouble() >= 0);
        List<JsonNode> steps = rows(answer, "steps");
        assertTrue(steps.size() >= 1);
        startsAsTheSheetDoes(steps.get(0));
        assertTrue(answer.get("best_time_s").asDouble() > 0);
        assertTrue(answer.get("best_failure_probability").isNumber());
        for (JsonNode step : steps) {
            assertTrue(step.get("failure_probability").asDouble() <= 0.1, step.toString());
            assertTrue(!step.get("goes_first").asText().isBlank());
            for (String field : List.of("release_start_m", "pick_up_m", "in_hand_m", "margins")) {
                assertTrue(step.has(field), field);
            }
        }
    }

    /** Where no release is described: straight-line braking, as hard and as late as {@code SheetTest} holds it to. */
    private static void startsAsTheSheetDoes(JsonNode now) {
        CornerStudy study = CornerStudy.of(
                Demos.car("", Demos.DEFAULT_CAR).value(),
                CornerFile.parse(ShortCorner.JSON, "short.json", Path.of(".")).value());
        BrakePlan straight = PracticeSteps.straightLine(
                        new RiskStudy(study, Scatter.NOVICE, 16, 1), 0.25, 0.1, Sweep.quiet())
                .orElseThrow();
        assertEquals(straight.release().start(), now.get("release_start_m").asDouble());
        assertEquals(straight.release().end(), now.get("release_end_m").asDouble());
        assertEquals(straight.peakDeceleration(), now.get("peak_mps2").asDouble(), 1e-9);
        double apart = straight.brakePoint() - now.get("brake_point_m").asDouble();
        assertEquals(0, apart, STEP, "m, with another tolerance of the integrator");
    }

    /** In which a brake point within the risk is looked for, m. */
    private static final double STEP = 2;

    @Test
    void aLapIsTheSumOfItsCorners() throws IOException {
        String words = EveryVerbTest.CIRCUIT + ShortCorner.ring();
        JsonNode lap = Reports.of(words.split(" ")).json();
        List<JsonNode> corners = rows(lap, "corners");
        assertEquals(2, corners.size());
        double sum = corners.stream()
                .mapToDouble(corner -> corner.get("gain_s").asDouble())
                .sum();
        assertEquals(sum, lap.get("lap_gain_s").asDouble(), 1e-12);
        assertTrue(sum > 0);
        assertEquals("", lap.get("corners_not_counted").asText());
        assertTrue(corners.get(1).get("approach_speed_mps").asDouble() != 28);
    }

    @Test
    void theSensiblePlanOfTheCurveIsSlowerThanTheRecklessOne() throws IOException {
        JsonNode risk =
                answer("risk", "--curve", "--no-margin", "--samples", "8", "--driver", "novice", "--accept", "0.2");
        for (String field : List.of("pick_up_m", "in_hand_m", "margins", "margin_cost_s")) {
            assertTrue(risk.has(field), field);
        }
        List<JsonNode> curve = rows(risk, "curve");
        assertTrue(curve.size() >= 2, curve.toString());
        for (int i = 1; i < curve.size(); i++) {
            assertTrue(curve.get(i).get("failure_probability").asDouble()
                    >= curve.get(i - 1).get("failure_probability").asDouble());
            assertTrue(curve.get(i).get("mean_time_s").asDouble()
                    <= curve.get(i - 1).get("mean_time_s").asDouble());
        }
    }
}
