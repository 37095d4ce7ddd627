package org.foreload.examples.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.foreload.braking.Braking;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.file.InputException;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Many questions to one process, a line of JSON each. */
@Command(
        name = "batch",
        sortOptions = false,
        description = {
            "Reads one question a line from standard input and answers each with one line of JSON, in order, on all "
                    + "processors. A line that is wrong gets an error, and the rest carries on.",
            "",
            "A question is a plan for the car and the corner of the command line, with the fields brake_point_m (left out: "
                    + "the latest that keeps the margin), peak_deceleration_mps2, release_shape, release_start_m, "
                    + "release_end_m, pick_up_m, build_up_time_s, of which only those that differ from the defaults of "
                    + "'foreload entry' need be there; with \"profile\": true the answer has the entry along the line, too, "
                    + "and with \"margin_cost\": true what the margin costs, which takes a second search. "
                    + "Or it is a verb with its options: {\"verb\": \"loads\", \"options\": [\"--deceleration\", \"5\"]}."
        },
        optionListHeading = "%nOptions:%n",
        footer = {"", "Example:  foreload batch --demo-car road < questions.jsonl", "", Cautions.FIRST, Cautions.SECOND
        })
final class BatchVerb extends Verb {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static final Set<String> FIELDS = Set.of(
            "brake_point_m",
            "peak_deceleration_mps2",
            "release_shape",
            "release_start_m",
            "release_end_m",
            "pick_up_m",
            "build_up_time_s",
            "profile",
            "margin_cost");

    /** Answers in progress for each thread: enough to keep all busy, few enough to stay in memory. */
    private static final int AHEAD = 16;

    /** Longest line that is read, characters: a plan has a few hundred. */
    private static final int LONGEST = 1 << 16;

    @Mixin
    private SweepOptions sweepOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    /** Answers go out as they come; nothing is left to print. */
    @Override
    String answer(Console console) {
        sweepOptions.check();
        studyOptions.check();
        return placeOptions.ask(console, studyOptions::study, study -> {
            answer(study, console.in());
            return "";
        });
    }

    private void answer(CornerStudy study, InputStream questions) {
        ExecutorService pool = Executors.newFixedThreadPool(sweepOptions.threads(), task -> {
            Thread thread = new Thread(task, "foreload-batch");
            thread.setDaemon(true);
            return thread;
        });
        Deque<Future<String>> pending = new ArrayDeque<>();
        PrintWriter out = out();
        try {
            BufferedReader lines = new BufferedReader(new InputStreamReader(questions, StandardCharsets.UTF_8));
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.isBlank()) {
                    continue;
                }
                String question = line;
                pending.add(pool.submit(() -> answer(study, question)));
                boolean full = pending.size() >= AHEAD * sweepOptions.threads();
                while (!pending.isEmpty() && (full || pending.peek().isDone() || !lines.ready())) {
                    print(out, pending.poll());
                    full = false;
                }
            }
            while (!pending.isEmpty()) {
                print(out, pending.poll());
            }
        } catch (IOException e) {
            throw new ComputationException("standard input cannot be read: " + e.getMessage());
        } finally {
            pool.shutdownNow();
        }
    }

    private static void print(PrintWriter out, Future<String> answer) {
        try {
            out.println(answer.get());
            out.flush();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ComputationException("stopped before all questions were answered");
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        }
    }

    /** One line of JSON, whatever the question. */
    private String answer(CornerStudy study, String line) {
        try {
            if (line.length() > LONGEST) {
                throw wrong(null, null, "must be shorter than " + LONGEST + " characters");
            }
            if (!(JSON.readTree(line) instanceof ObjectNode question)) {
                throw wrong(null, null, "must be a JSON object");
            }
            return question.has("verb") ? verb(question) : oneLine(Format.JSON.render(plan(study, question)));
        } catch (JsonProcessingException e) {
            return error(wrong(null, null, "is not JSON"));
        } catch (InputException e) {
            return error(new InputException(e.file(), field(e.field()), e.value(), e.getMessage()));
        } catch (InvalidValueException e) {
            return error(InputException.of(null, e.field(), e));
        } catch (RuntimeException e) {
            return error(wrong(null, null, "the computation failed: " + e.getMessage()));
        }
    }

    private Report plan(CornerStudy study, ObjectNode question) {
        question.fieldNames().forEachRemaining(field -> {
            if (!FIELDS.contains(field)) {
                throw wrong(field, null, "is not a field of a plan; there are " + String.join(", ", sorted()));
            }
        });
        ReleaseOptions options = new ReleaseOptions(
                number(question, "brake_point_m"),
                number(question, "peak_deceleration_mps2"),
                question.path("release_shape").asText(ReleaseOptions.DEFAULT_SHAPE),
                number(question, "release_start_m"),
                number(question, "release_end_m"),
                number(question, "pick_up_m"));
        Double buildUp = number(question, "build_up_time_s");
        Braking braking =
                options.braking(study, options.shape(), buildUp == null ? studyOptions.buildUpTime() : buildUp);
        boolean profile = question.path("profile").asBoolean();
        boolean cost = question.path("margin_cost").asBoolean();
        if (options.brakePointGiven()) {
            EntrySimulator simulator = footOptions.simulator(study);
            Report answer = EntryAnswer.brief(study, simulator.run(options.given(braking)), profile);
            return cost ? answer.with("margin_cost_s", Double.NaN) : answer;
        }
        Finding finding = study.latest(braking);
        Report answer = EntryAnswer.brief(study, finding, profile);
        return cost
                ? answer.with("margin_cost_s", finding.found() ? study.marginCost(finding.entry()) : Double.NaN)
                : answer;
    }

    private static List<String> sorted() {
        return FIELDS.stream().sorted().toList();
    }

    private static Double number(ObjectNode question, String field) {
        JsonNode value = question.get(field);
        if (value == null || value.isNull()) {
            return null;
        }
        if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
            throw wrong(field, value.toString(), "must be a finite number");
        }
        return value.doubleValue();
    }

    /** Runs a verb within this process. */
    private static String verb(ObjectNode question) throws JsonProcessingException {
        List<String> words = new ArrayList<>(List.of(question.path("verb").asText()));
        if (words.get(0).equals("batch") || words.get(0).startsWith("-")) {
            throw wrong("verb", words.get(0), "must be a verb other than batch");
        }
        question.path("options").forEach(option -> words.add(option.asText()));
        words.addAll(List.of("--format", "json"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Foreload.run(words.toArray(String[]::new), out, OutputStream.nullOutputStream());
        return oneLine(out.toString(StandardCharsets.UTF_8));
    }

    private static String oneLine(String json) throws JsonProcessingException {
        return JSON.writeValueAsString(JSON.readTree(json));
    }

    /** The field of a plan that is read like an option of the command line. */
    private static String field(String option) {
        if (option == null || !option.startsWith("--")) {
            return option;
        }
        String start = option.substring(2).replace('-', '_');
        return FIELDS.stream().filter(one -> one.startsWith(start)).findFirst().orElse(option);
    }

    private static InputException wrong(String field, String value, String message) {
        return new InputException(null, field, value, message);
    }

    private static String error(InputException what) {
        Report error = new Report()
                .with("file", what.file())
                .with("field", what.field())
                .with("value", what.value())
                .with("message", what.getMessage());
        try {
            return oneLine(Format.JSON.render(new Report().with("error", error)));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
