package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.foreload.examples.sweep.Stop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
                assertTrue(one.get(i).at("/error/message").asText().startsWith("is not JSON"), one.toString());
            } else {
                assertEquals(-150 - i, one.get(i).get("brake_point_m").doubleValue());
            }
        }
    }

    /** The n-th answer is that to the n-th line. */
    @Test
    void aBlankLineKeepsItsPlace() throws JsonProcessingException {
        List<JsonNode> answers =
                answers("", List.of("{\"brake_point_m\": -150}", "", " \t", "{\"brake_point_m\": -151}"));
        assertEquals(4, answers.size());
        assertEquals(-150, answers.get(0).get("brake_point_m").doubleValue());
        for (JsonNode blank : answers.subList(1, 3)) {
            assertEquals(
                    "must be a JSON object, and the line is blank",
                    blank.at("/error/message").asText());
        }
        assertEquals(-151, answers.get(3).get("brake_point_m").doubleValue());
    }

    /** Somebody stops the batch when its third question is being read: two answers are out, and no more come. */
    @Test
    void aStopSaysHowManyLinesHaveTheirAnswer() {
        Stop stop = new Stop();
        byte[] question = "{\"verb\": \"loads\"}\n".getBytes(StandardCharsets.UTF_8);
        InputStream third = new ByteArrayInputStream(question) {
            @Override
            public synchronized int read(byte[] into, int offset, int length) {
                stop.request(0);
                return super.read(into, offset, length);
            }
        };
        InputStream two =
                new SequenceInputStream(new ByteArrayInputStream(question), new ByteArrayInputStream(question));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console console = new Console(err, () -> false, stop).reading(new SequenceInputStream(two, third));
        Foreload.run(new String[] {"batch"}, out, console);
        assertEquals(2, out.toString(StandardCharsets.UTF_8).lines().count());
        assertEquals(
                "stopped after 2 answers; the lines that follow have none",
                err.toString(StandardCharsets.UTF_8).strip());
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

    /** Car, corner and margins of the command line hold for a verb, unless its own options say otherwise. */
    @Test
    void aVerbIsAskedAboutTheCarAndTheCornerOfTheBatch() throws JsonProcessingException {
        String place = "--demo-car road --demo-corner hairpin";
        List<JsonNode> answers = answers(
                place + " --no-margin",
                List.of(
                        "{\"verb\": \"entry\"}",
                        "{\"verb\": \"loads\"}",
                        "{\"verb\": \"entry\", \"options\": [\"--demo-corner=medium\", \"--in-hand\", 3]}",
                        "{\"verb\": \"loads\", \"options\": [\"--demo-car\", \"downforce\"]}"));
        assertEquals(Run.json(("entry --format json --no-margin " + place).split(" ")), answers.get(0));
        assertEquals(Run.json("loads", "--format", "json", "--demo-car", "road"), answers.get(1));
        assertEquals(
                Run.json("entry --format json --demo-car road --demo-corner medium --in-hand 3".split(" ")),
                answers.get(2));
        assertEquals(Run.json("loads", "--format", "json", "--demo-car", "downforce"), answers.get(3));
    }

    /** What a question says is heeded or refused by field and value, never passed over. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            {"verb": "loads", "deceleration": 9}              | deceleration  | 9                | allowed are options, verb
            {"verb": "entry", "brake_point_m": -120}          | brake_point_m | -120             | allowed are options, verb
            {"verb": "loads", "options": "--deceleration 9"}  | options       | --deceleration 9 | must be a list of texts
            {"verb": "loads", "options": [["--speed"]]}       | options       | [["--speed"]]    | must be a list of texts
            {"verb": "loads", "options": ["--help"]}          | options       | --help           | must be left out
            {"verb": "loads", "options": ["--format", "csv"]} | options       | --format         | must be left out
            {"verb": "explore", "options": ["--shard=1/999"]} | options       | --shard=1/999    | must ask for one JSON object
            {"verb": 5}                                       | verb          | 5                | must be a text
            {"profile": "yes"}                                | profile       | yes              | must be true or false
            {"peak": 8}                                       | peak          | 8                | allowed are brake_point_m, build_up_time_s
            {"release_shape": 7}                              | release_shape | 7                | must be a text
            {"release_end_m": 5000}                           | release_end_m | 5000             | must be on the line
            {"pick_up_m": 1, "pick_up_m": 2}                  | pick_up_m     |                  | must be given only once
            {"pick_up_m": 1} {"pick_up_m": 2}                 |               |                  | nothing after it
            [3]                                               |               | [3]              | must be a JSON object
            """)
    void nothingIsPassedOver(String question, String field, String value, String allowed)
            throws JsonProcessingException {
        JsonNode error = answers("", List.of(question)).get(0).get("error");
        assertEquals(field, error.get("field").textValue());
        assertEquals(value, error.get("value").textValue());
        assertTrue(error.get("message").asText().contains(allowed), error.toString());
    }

    @Test
    void aBatchIsLinesOfJsonAndNothingElse() {
        Run.asked("", "batch", "--format", "csv")
                .refusedWith("--format: csv: must be json with batch: each answer is one line of JSON");
        Run.asked("", "batch", "--picture", "x.png")
                .refusedWith("--picture: x.png: must be left out with batch: each answer is one line of JSON");
        assertEquals(0, Run.asked("", "batch", "--format", "json").status());
    }
}
