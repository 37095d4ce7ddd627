package org.foreload.examples.command;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.braking.Braking;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.file.InputException;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Answers one question of a batch: a plan for the car and corner of the command line, or a verb with its options.
 * Nothing in a question is passed over: what cannot be heeded is an error in place of the answer.
 */
final class BatchQuestion {

    /** Options that are about the batch's own answer, and so not handed on to the verbs of its questions. */
    static final Set<String> OF_THE_ANSWER = Set.of(CommonOptions.FORMAT, PictureOptions.NAME, "--debug");

    private static final ObjectMapper JSON = new ObjectMapper()
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private static final String VERB = "verb";

    private static final String OPTIONS = "options";

    private static final Set<String> PLAN_FIELDS = new TreeSet<>(Set.of(
            "brake_point_m",
            "peak_deceleration_mps2",
            "release_shape",
            "release_start_m",
            "release_end_m",
            "pick_up_m",
            "build_up_time_s",
            "profile",
            "margin_cost"));

    private static final Set<String> PLACE = Set.of("--car", "--demo-car", "--corner", "--demo-corner");

    private static final Set<String> MARGINS = Set.of("--edge-margin", "--front-margin", "--rear-margin", "--in-hand");

    /** Longest line that is read, characters: a plan has a few hundred. */
    private static final int LONGEST = 1 << 16;

    /** Characters of a value that an error shows. */
    private static final int SHOWN = 40;

    private final CornerStudy study;
    private final FootOptions foot;
    private final double buildUpTime;
    private final List<GivenOptions.Given> given;
    private final UnaryOperator<Report> placed;

    /**
     * Questions to one batch.
     *
     * @param study what plans are for
     * @param foot of the driver of plans with a brake point
     * @param buildUpTime of plans that name none, s
     * @param given options of the batch, which hold for its verbs too
     * @param placed adds to the answer to a plan where it lies
     */
    BatchQuestion(
            CornerStudy study,
            FootOptions foot,
            double buildUpTime,
            List<GivenOptions.Given> given,
            UnaryOperator<Report> placed) {
        this.study = study;
        this.foot = foot;
        this.buildUpTime = buildUpTime;
        this.given = List.copyOf(given);
        this.placed = placed;
    }

    /** One line of JSON, whatever the question. */
    String answer(String line) {
        try {
            ObjectNode question = read(line);
            return question.has(VERB) ? verb(question) : oneLine(Format.JSON.render(placed.apply(plan(question))));
        } catch (InputException e) {
            return error(new InputException(e.file(), field(e.field()), e.value(), e.getMessage()));
        } catch (InvalidValueException e) {
            return error(InputException.of(null, e.field(), e));
        } catch (ComputationException e) {
            return error(wrong(null, null, e.getMessage()));
        } catch (RuntimeException e) {
            return error(wrong(null, null, "the computation failed: " + e.getMessage()));
        }
    }

    private static ObjectNode read(String line) {
        if (line.isBlank()) {
            throw wrong(null, null, "must be a JSON object, and the line is blank");
        }
        if (line.length() > LONGEST) {
            throw wrong(null, null, "must be shorter than " + LONGEST + " characters");
        }
        try {
            JsonNode read = JSON.readTree(line);
            if (!(read instanceof ObjectNode question)) {
                throw wrong(null, shown(read), "must be a JSON object");
            }
            return question;
        } catch (MismatchedInputException e) {
            throw wrong(null, null, "must be one JSON object, and nothing after it");
        } catch (JsonProcessingException e) {
            Matcher twice = TWICE.matcher(e.getOriginalMessage());
            if (twice.find()) {
                throw wrong(twice.group(1), null, "must be given only once");
            }
            int column = e.getLocation().getColumnNr();
            throw wrong(null, null, "is not JSON (column " + column + ")");
        }
    }

    /** How the parser says that a field is there twice. */
    private static final Pattern TWICE = Pattern.compile("Duplicate field '([^']*)'");

    private Report plan(ObjectNode question) {
        only(question, PLAN_FIELDS, "is not a field of a plan");
        ReleaseOptions options = new ReleaseOptions(
                number(question, "brake_point_m"),
                number(question, "peak_deceleration_mps2"),
                text(question, "release_shape", ReleaseOptions.DEFAULT_SHAPE),
                number(question, "release_start_m"),
                number(question, "release_end_m"),
                number(question, "pick_up_m"));
        Double buildUp = number(question, "build_up_time_s");
        boolean profile = yes(question, "profile");
        boolean cost = yes(question, "margin_cost");
        Braking braking = options.braking(study, options.shape(), buildUp == null ? buildUpTime : buildUp);
        if (options.brakePointGiven()) {
            EntrySimulator simulator = foot.simulator(study);
            Report answer = EntryAnswer.brief(study, simulator.run(options.given(braking)), profile);
            return cost ? answer.with("margin_cost_s", Double.NaN) : answer;
        }
        Finding finding = study.latest(braking);
        Report answer = EntryAnswer.brief(study, finding, profile);
        return cost
                ? answer.with("margin_cost_s", finding.found() ? study.marginCost(finding.entry()) : Double.NaN)
                : answer;
    }

    /** Runs a verb within this process. */
    private String verb(ObjectNode question) {
        String name = text(question, VERB, "");
        if (name.equals("batch") || name.startsWith("-")) {
            throw wrong(VERB, name, "must be a verb other than batch");
        }
        only(question, Set.of(VERB, OPTIONS), "does not belong beside a verb, whose options are a list of texts");
        List<String> own = options(question);
        List<String> words = new ArrayList<>(List.of(name));
        words.addAll(own);
        words.addAll(handedOn(name, own));
        words.addAll(List.of(CommonOptions.FORMAT, "json"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Foreload.run(words.toArray(String[]::new), out, OutputStream.nullOutputStream());
        try {
            return oneLine(out.toString(StandardCharsets.UTF_8));
        } catch (IllegalStateException e) {
            throw wrong(OPTIONS, String.join(" ", own), "must ask for one JSON object");
        }
    }

    private static List<String> options(ObjectNode question) {
        JsonNode list = question.path(OPTIONS);
        if (absent(list)) {
            return List.of();
        }
        List<String> words = new ArrayList<>();
        boolean allowed = list.isArray();
        for (JsonNode word : list) {
            allowed &= word.isTextual() || word.isNumber();
            words.add(word.asText());
        }
        if (!allowed) {
            throw wrong(
                    OPTIONS, shown(list), "must be a list of texts and numbers, such as [\"--deceleration\", \"5\"]");
        }
        for (String word : words) {
            if (Set.of(CommonOptions.FORMAT, "--help", "-h").contains(option(word))) {
                throw wrong(OPTIONS, word, "must be left out: the answer is one line of JSON");
            }
        }
        return words;
    }

    /** The batch's options that the verb has, too, and that its own options leave open. */
    private List<String> handedOn(String name, List<String> own) {
        List<String> named = own.stream().map(BatchQuestion::option).toList();
        CommandSpec verb = Foreload.verb(name)
                .map(one -> new CommandLine(one).getCommandSpec())
                .orElse(CommandSpec.create());
        return given.stream()
                .filter(option ->
                        has(verb, option.name()) && named.stream().noneMatch(one -> rival(one, option.name())))
                .flatMap(option -> option.words().stream())
                .toList();
    }

    /** Where a verb has --car without --demo-car, that is the car of somebody's recording. */
    private static boolean has(CommandSpec verb, String option) {
        return verb.findOption(option) != null
                && (!PLACE.contains(option)
                        || verb.findOption("--demo-" + option.replaceFirst("^--(demo-)?", "")) != null);
    }

    /** Whether two options cannot stand together. */
    private static boolean rival(String one, String other) {
        return one.equals(other)
                || PLACE.contains(one) && one.equals(other.replaceFirst("^--demo-", "--"))
                || PLACE.contains(other) && other.equals(one.replaceFirst("^--demo-", "--"))
                || one.equals("--no-margin") && MARGINS.contains(other)
                || other.equals("--no-margin") && MARGINS.contains(one);
    }

    private static String option(String word) {
        return word.split("=", 2)[0];
    }

    private static void only(ObjectNode question, Collection<String> fields, String what) {
        question.properties().forEach(field -> {
            if (!fields.contains(field.getKey())) {
                throw wrong(
                        field.getKey(),
                        shown(field.getValue()),
                        what + "; allowed are " + String.join(", ", new TreeSet<>(fields)));
            }
        });
    }

    private static Double number(ObjectNode question, String field) {
        JsonNode value = question.path(field);
        if (absent(value)) {
            return null;
        }
        if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
            throw wrong(field, shown(value), "must be a finite number");
        }
        return value.doubleValue();
    }

    private static boolean yes(ObjectNode question, String field) {
        JsonNode value = question.path(field);
        if (!absent(value) && !value.isBoolean()) {
            throw wrong(field, shown(value), "must be true or false, without quotes");
        }
        return value.asBoolean();
    }

    private static String text(ObjectNode question, String field, String otherwise) {
        JsonNode value = question.path(field);
        if (!absent(value) && !value.isTextual()) {
            throw wrong(field, shown(value), "must be a text in quotes");
        }
        return absent(value) ? otherwise : value.textValue();
    }

    private static boolean absent(JsonNode value) {
        return value.isMissingNode() || value.isNull();
    }

    private static String shown(JsonNode value) {
        String all = value.isValueNode() ? value.asText() : value.toString();
        return all.length() <= SHOWN ? all : all.substring(0, SHOWN) + "…";
    }

    private static String oneLine(String json) {
        try {
            return JSON.writeValueAsString(JSON.readValue(json, ObjectNode.class));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The field of a plan that is read like an option of the command line. */
    private static String field(String option) {
        if (option == null || !option.startsWith("--")) {
            return option;
        }
        String start = option.substring(2).replace('-', '_');
        return PLAN_FIELDS.stream()
                .filter(one -> one.startsWith(start))
                .findFirst()
                .orElse(option);
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
        return oneLine(Format.JSON.render(new Report().with("error", error)));
    }
}
