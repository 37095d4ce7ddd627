package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Many questions to one process: each answer is that of the verb, in its place. */
class BatchTest {

    private static List<JsonNode> answers(String options, List<String> questions) throws JsonProcessingException {
        Run run = Run.asked(
                String.join("\n", questions),
                ("batch --quiet " + options).trim().split(" "));
        assertEquals(0, run.status(), run.err());
        assertEquals("", run.err());
        List<JsonNode> answers = new ArrayList<>();
        for (String line : run.out().lines().toList()) {
            answers.add(new ObjectMapper().readTree(line));
        }
        return answers;
    }

    @Test
    void aPlanIsAnsweredAsEntryAnswersIt() throws JsonProcessingException {
        String plan = "{\"brake_point_m\": -140, \"peak_deceleration_mps2\": 8, \"release_shape\": \"smooth\","
                + " \"release_start_m\": -5, \"release_end_m\": 30, \"pick_up_m\": 45}";
        JsonNode answer =
                answers("", List.of(plan.replace("}", ", \"profile\": true}"))).get(0);
        JsonNode entry = Run.json(("entry --format json --brake-point=-140 --peak-deceleration 8 --release-shape smooth"
                        + " --release-start=-5 --release-end 30 --pick-up 45")
                .split(" "));
        answer.fieldNames().forEachRemaining(field -> assertEquals(entry.get(field), answer.get(field), field));
        assertTrue(answer.get("profile").size() > 100);
        assertFalse(answers("", List.of(plan)).get(0).has("profile"));
        JsonNode latest = answers("", List.of("{\"release_end_m\": 30}")).get(0);
        JsonNode found = Run.json("entry", "--format", "json", "--release-end", "30");
        assertEquals(found.get("brake_point_m"), latest.get("brake_point_m"));
        assertEquals(found.get("time_s"), latest.get("time_s"));
        assertEquals(found.get("in_hand_m"), latest.get("in_hand_m"));
        assertFalse(latest.has("margin_cost_s"));
        JsonNode costed = answers("", List.of("{\"release_end_m\": 30, \"margin_cost\": true}"))
                .get(0);
        assertEquals(found.get("margin_cost_s"), costed.get("margin_cost_s"));
        assertTrue(costed.get("margin_cost_s").isNumber());
    }

    @Test
    void aVerbIsAnsweredAsTheVerbAnswersIt() throws JsonProcessingException {
        JsonNode answer = answers("", List.of("{\"verb\": \"loads\", \"options\": [\"--deceleration\", \"5\"]}"))
                .get(0);
        assertEquals(Run.json("loads", "--format", "json", "--deceleration", "5"), answer);
    }

    /** On any number of threads, answers come in the order of the questions; what is wrong takes one line. */
    @Test
    void answersKeepTheirOrderAndAWrongLineItsPlace() throws JsonProcessingException {
        List<String> questions = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            questions.add(i % 4 == 3 ? "{\"brake_point_m\": " : "{\"brake_point_m\": " + (-150 - i) + "}");
        }
        List<JsonNode> one = answers("--threads 1", questions);
        List<JsonNode> three = answers("--threads 3", questions);
        assertEquals(one, three);
        assertEquals(questions.size(), one.size());
        for (int i = 0; i < one.size(); i++) {
            if (i % 4 == 3) {
                assertEquals("is not JSON", one.get(i).at("/error/message").asText());
            } else {
                assertEquals(-150 - i, one.get(i).get("brake_point_m").doubleValue());
            }
        }
    }

    @Test
    void eachMistakeIsSaid() throws JsonProcessingException {
        List<JsonNode> answers = answers(
                "",
                List.of(
                        "[]",
                        "{\"brakepoint_m\": 1}",
                        "{\"brake_point_m\": \"x\"}",
                        "{\"release_shape\": \"odd\"}",
                        "{\"verb\": \"batch\"}",
                        "{\"verb\": \"nothing\"}",
                        "{\"peak_deceleration_mps2\": -1}"));
        List<String> fields = answers.stream()
                .map(answer -> answer.at("/error/field").asText())
                .toList();
        assertEquals(List.of("brakepoint_m", "brake_point_m", "release_shape"), fields.subList(1, 4));
        assertEquals("peak_deceleration_mps2", fields.get(6));
        for (JsonNode answer : answers) {
            assertFalse(answer.at("/error/message").asText().isBlank(), answer.toString());
            assertEquals(1, answer.size());
        }
    }
}
