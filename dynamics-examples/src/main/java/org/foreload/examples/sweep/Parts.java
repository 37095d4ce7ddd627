package org.foreload.examples.sweep;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.file.InputException;
import org.foreload.strategy.SweepMemory;

/**
 * Parts of one sweep, computed anywhere and put together again. A part is lines of JSON: what was asked first, then one
 * line for each release. Together they are the memory of the whole sweep.
 */
public final class Parts implements SweepMemory {

    private static final ObjectMapper JSON = new ObjectMapper();

    /** Version of the form. */
    private static final int FORM = 1;

    private final List<Path> files;
    private final ObjectNode head;
    private final Map<FoundLine.Key, Found> known = new HashMap<>();

    private Parts(List<Path> files) {
        this.files = List.copyOf(files);
        ObjectNode first = null;
        for (Path file : files) {
            ObjectNode read = read(file);
            if (first != null && !same(first, read)) {
                throw new InputException(file.toString(), null, null, "is part of another sweep than " + files.get(0));
            }
            first = first == null ? read : first;
        }
        this.head = first;
    }

    /**
     * A part as text.
     *
     * @param request what the sweep was asked
     * @param arguments options that ask for it
     * @param part which part, as I/N
     * @param found what was found
     */
    public static String text(Request request, List<String> arguments, String part, Map<Braking, Found> found) {
        ObjectNode head = JsonNodeFactory.instance
                .objectNode()
                .put("foreload_part", FORM)
                .put("part", part)
                .put("version", request.version())
                .put("car", request.car())
                .put("corner", request.corner())
                .put("settings", request.line());
        ArrayNode options = head.putArray("arguments");
        arguments.forEach(options::add);
        StringBuilder text = new StringBuilder(line(head));
        found.forEach(
                (braking, one) -> text.append(line(FoundLine.of(braking, one).json())));
        return text.toString();
    }

    /**
     * Reads parts of one sweep.
     *
     * @param files one or more
     * @throws InputException if one cannot be read, is no part, or is part of another sweep than the first
     */
    public static Parts of(List<Path> files) {
        return new Parts(files);
    }

    /** The options that ask for the sweep. */
    public List<String> arguments() {
        List<String> arguments = new ArrayList<>();
        head.path("arguments").forEach(one -> arguments.add(one.asText()));
        return arguments;
    }

    /**
     * Refuses parts that do not make up the sweep that is now asked for.
     *
     * @throws InputException if the car, the corner or the program has changed, or releases are missing
     */
    public void check(Request request, List<Braking> releases) {
        compare("version", request.version(), "was computed by another version of the program");
        compare("car", request.car(), "was computed with another car than the options name now");
        compare("corner", request.corner(), "was computed with another corner than the options name now");
        String settings = head.path("settings").asText();
        if (!settings.equals(request.line())) {
            String changes = request.changes(settings);
            throw new InputException(
                    files.get(0).toString(),
                    "settings",
                    null,
                    "differ from those that it was computed with: " + changes);
        }
        long missing = releases.stream().filter(one -> recall(one).isEmpty()).count();
        if (missing > 0) {
            throw new InputException(
                    files.size() == 1 ? files.get(0).toString() : null,
                    "parts",
                    null,
                    missing + " of " + releases.size() + " releases are missing: give every part, each run to its end");
        }
    }

    private void compare(String field, String now, String message) {
        String before = head.path(field).asText();
        if (!before.equals(now)) {
            throw new InputException(files.get(0).toString(), field, before, message);
        }
    }

    @Override
    public Optional<Found> recall(Braking release) {
        return Optional.ofNullable(known.get(FoundLine.Key.of(release)));
    }

    @Override
    public void keep(Braking release, Found found) {
        // Every release is known once the parts have been checked.
    }

    private static boolean same(ObjectNode a, ObjectNode b) {
        return a.deepCopy().without("part").equals(b.deepCopy().without("part"));
    }

    private ObjectNode read(Path file) {
        try (BufferedReader lines = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            ObjectNode first = object(file, lines.readLine(), 1);
            if (first.path("foreload_part").asInt() != FORM) {
                throw new InputException(file.toString(), null, null, "is not part of a sweep");
            }
            int number = 2;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                FoundLine found = FoundLine.read(object(file, line, number), file.toString(), number);
                known.put(found.key(), found.found());
                number++;
            }
            return first;
        } catch (MalformedInputException e) {
            throw new InputException(file.toString(), null, null, "is not part of a sweep: not text in UTF-8");
        } catch (IOException e) {
            throw new InputException(file.toString(), null, null, "cannot be read");
        }
    }

    private static ObjectNode object(Path file, String line, int number) {
        try {
            JsonNode node = line == null ? null : JSON.readTree(line);
            if (node instanceof ObjectNode object) {
                return object;
            }
        } catch (JsonProcessingException e) {
            // Said below, as of a line that is JSON but no object.
        }
        throw new InputException(
                file.toString(),
                number == 1 ? null : "line " + number,
                null,
                number == 1 ? "is not part of a sweep" : "is damaged");
    }

    private static String line(ObjectNode object) {
        try {
            return JSON.writeValueAsString(object) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
