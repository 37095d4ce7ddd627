package org.foreload.examples.recording;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.foreload.file.InputException;
import org.foreload.file.NearestName;

/**
 * Which column the user says holds what: {@code speed=Speed:km/h,brake=P front:bar}, or a JSON file {@code {"speed":
 * {"column": "Speed", "unit": "km/h"}, "brake": "P front"}}. A unit that begins with a minus turns the sign. Nothing
 * behind the equals sign, or an empty text in the file, says that no column is to be taken.
 *
 * @param columns what the user named
 */
public record ColumnWish(Map<Quantity, Wanted> columns) {

    /** Nothing is said: every column is guessed. */
    public static final ColumnWish NONE = new ColumnWish(Map.of());

    private static final String OPTION = "--columns";

    /** Largest map that is read, bytes. */
    private static final int LARGEST = 100_000;

    /** Copies the map. */
    public ColumnWish {
        columns = Map.copyOf(columns);
    }

    /**
     * One column.
     *
     * @param header as written in the file; empty for no column
     * @param unit as the user wrote it; empty for that of the header
     */
    public record Wanted(String header, String unit) {

        /** Whether no column is to be taken. */
        boolean none() {
            return header.isEmpty();
        }
    }

    /**
     * Reads the option's text, or the JSON file that it names.
     *
     * @throws InputException if it cannot be understood
     */
    public static ColumnWish of(String text) {
        if (text.endsWith(".json") && text.indexOf('=') < 0) {
            return json(Path.of(text), text);
        }
        Map<Quantity, Wanted> wanted = new EnumMap<>(Quantity.class);
        for (String part : text.split(",")) {
            int equals = part.indexOf('=');
            if (equals < 0) {
                throw new InputException(
                        null, OPTION, part, "must be NAME=COLUMN or NAME=COLUMN:UNIT, with commas between");
            }
            String column = part.substring(equals + 1).strip();
            int colon = column.lastIndexOf(':');
            String header = colon < 0 ? column : column.substring(0, colon).strip();
            String unit = colon < 0 ? "" : column.substring(colon + 1).strip();
            put(wanted, null, part.substring(0, equals).strip(), header, unit);
        }
        return new ColumnWish(wanted);
    }

    private static ColumnWish json(Path path, String file) {
        Map<Quantity, Wanted> wanted = new EnumMap<>(Quantity.class);
        JsonNode tree;
        try {
            if (Files.size(path) > LARGEST) {
                throw new InputException(file, null, null, "is larger than 100 kB");
            }
            tree = new ObjectMapper().readTree(Files.readString(path));
        } catch (JsonProcessingException e) {
            throw new InputException(file, null, null, "is not JSON: " + e.getOriginalMessage());
        } catch (NoSuchFileException e) {
            throw new InputException(file, null, null, "no such file");
        } catch (IOException e) {
            throw new InputException(file, null, null, "cannot be read as a text in UTF-8");
        }
        if (tree == null || !tree.isObject()) {
            throw new InputException(file, null, null, "must be an object of columns: {\"speed\": \"Speed\"}");
        }
        tree.properties().forEach(field -> {
            JsonNode value = field.getValue();
            JsonNode header = value.isObject() ? value.path("column") : value;
            JsonNode unit = value.isObject() ? value.path("unit") : value.path("unit");
            if (!header.isTextual() || !(unit.isMissingNode() || unit.isTextual())) {
                throw new InputException(
                        file, field.getKey(), value.toString(), "must be a header, or {\"column\": …, \"unit\": …}");
            }
            put(wanted, file, field.getKey(), header.textValue(), unit.asText(""));
        });
        return new ColumnWish(wanted);
    }

    private static void put(Map<Quantity, Wanted> wanted, String file, String name, String header, String unit) {
        Quantity quantity = Quantity.of(name).orElseThrow(() -> unknown(file, name));
        if (wanted.put(quantity, new Wanted(header, unit)) != null) {
            throw new InputException(file, file == null ? OPTION : name, name, "is given twice");
        }
        String bare = unit.startsWith("-") ? unit.substring(1) : unit;
        if (!bare.isEmpty() && Units.factor(quantity, bare).isEmpty()) {
            throw new InputException(
                    file,
                    file == null ? OPTION : name,
                    unit,
                    "is no unit of " + name + "; known are " + Units.of(quantity));
        }
    }

    private static InputException unknown(String file, String name) {
        var words =
                java.util.Arrays.stream(Quantity.values()).map(Quantity::word).toList();
        Optional<String> nearest = NearestName.of(name, words);
        return new InputException(
                file,
                file == null ? OPTION : name,
                name,
                "must be one of " + String.join(", ", words)
                        + nearest.map(word -> "; did you mean " + word + "?").orElse(""));
    }
}
