package org.foreload.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.foreload.conventions.InvalidValueException;

/**
 * The fields of one JSON object, read strictly: only known names, only the right types, only finite numbers. Errors
 * name the field with its place in the file.
 */
final class JsonFields {

    private final String file;
    private final String place;
    private final JsonNode object;
    private final List<Warning> warnings;

    private JsonFields(String file, String place, JsonNode object, List<Warning> warnings) {
        this.file = file;
        this.place = place;
        this.object = object;
        this.warnings = warnings;
    }

    /**
     * The fields of a file's outermost object.
     *
     * @throws InputException if a field is not among {@code known}
     */
    static JsonFields of(String file, JsonNode object, Collection<String> known, List<Warning> warnings) {
        return new JsonFields(file, "", object, warnings).onlyWith(known);
    }

    private JsonFields onlyWith(Collection<String> known) {
        Iterator<String> names = object.fieldNames();
        while (names.hasNext()) {
            String name = names.next();
            if (!known.contains(name)) {
                String hint = NearestName.of(name, known)
                        .map(nearest -> "; did you mean " + nearest + "?")
                        .orElse(known(name, known));
                throw new InputException(file, place + name, text(object.get(name)), "unknown field" + hint);
            }
        }
        return this;
    }

    /** All known names, or of many those that are most like it. */
    private static String known(String name, Collection<String> known) {
        return known.size() <= MOST_NAMES
                ? "; known are " + String.join(", ", known)
                : "; those most like it are " + String.join(", ", NearestName.several(name, known, 3));
    }

    /** Names that fit into one line. */
    private static final int MOST_NAMES = 12;

    /** Whether the field is there. */
    boolean has(String name) {
        return object.has(name);
    }

    /**
     * A number that must be given.
     *
     * @throws InputException if it is missing, no number, or not finite
     */
    double number(String name) {
        JsonNode node = required(name, "a number");
        if (!node.isNumber()) {
            boolean quoted = node.isTextual() && Double.isFinite(DecimalText.parse(node.textValue()));
            throw refuse(name, quoted ? "must be a number without quotes" : "must be a number");
        }
        double value = node.doubleValue();
        if (!Double.isFinite(value)) {
            throw refuse(name, "must be a finite number");
        }
        return value;
    }

    /** A number, or {@code absent} if the field is not there. */
    double number(String name, double absent) {
        return has(name) ? number(name) : absent;
    }

    /** True or false, or {@code absent} if the field is not there. */
    boolean yes(String name, boolean absent) {
        if (!has(name)) {
            return absent;
        }
        JsonNode node = object.get(name);
        if (!node.isBoolean()) {
            boolean quoted = node.isTextual() && node.textValue().matches("true|false");
            throw refuse(name, quoted ? "must be true or false without quotes" : "must be true or false");
        }
        return node.booleanValue();
    }

    /** A text that must be given. */
    String text(String name) {
        JsonNode node = required(name, "a text");
        if (!node.isTextual()) {
            throw refuse(name, "must be a text in quotes");
        }
        return node.textValue();
    }

    /** The name of another file. */
    Path path(String name) {
        String text = text(name);
        try {
            if (!text.isBlank()) {
                return Path.of(text);
            }
        } catch (InvalidPathException e) {
            throw refuse(name, "must be the name of a file");
        }
        throw refuse(name, "must be the name of a file");
    }

    /** Whether the field holds a text. */
    boolean isText(String name) {
        return has(name) && object.get(name).isTextual();
    }

    /** One of some words. */
    <T> T choice(String name, Map<String, T> choices) {
        String allowed = String.join(", ", choices.keySet());
        JsonNode node = required(name, "one of " + allowed);
        T choice = node.isTextual() ? choices.get(node.textValue()) : null;
        if (choice == null) {
            throw refuse(name, "must be one of " + allowed);
        }
        return choice;
    }

    /** The fields of an object inside this one. */
    JsonFields object(String name, Collection<String> known) {
        JsonNode node = required(name, "an object");
        if (!node.isObject()) {
            throw refuse(name, "must be an object: { … }");
        }
        return new JsonFields(file, place + name + ".", node, warnings).onlyWith(known);
    }

    /** The fields of each object in a list inside this one; at least one. */
    List<JsonFields> objects(String name, Collection<String> known) {
        JsonNode list = required(name, "a list of objects");
        if (!list.isArray() || list.isEmpty()) {
            throw refuse(name, "must be a list of at least one object: [ { … } ]");
        }
        List<JsonFields> objects = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            String element = place + name + "[" + i + "]";
            if (!list.get(i).isObject()) {
                throw new InputException(file, element, text(list.get(i)), "must be an object: { … }");
            }
            objects.add(new JsonFields(file, element + ".", list.get(i), warnings).onlyWith(known));
        }
        return objects;
    }

    /** Makes a part of a model, and turns its refusal into one that names the file and the place. */
    <T> T build(Supplier<T> part) {
        return build("", part);
    }

    /** As {@link #build(Supplier)}, for a part whose field names lack the given prefix. */
    <T> T build(String prefix, Supplier<T> part) {
        try {
            return part.get();
        } catch (InvalidValueException e) {
            throw refusal(prefix + e.field(), e);
        }
    }

    /** The core's refusal of this field as one that names the file and the place. */
    InputException refusal(String name, InvalidValueException e) {
        return InputException.of(file, place + name, e);
    }

    /** A refusal of this field. */
    InputException refuse(String name, String message) {
        JsonNode node = object.get(name);
        return new InputException(file, place + name, node == null ? "missing" : text(node), message);
    }

    /** Notes that this field is possible but unusual or without effect. */
    void warn(String name, String message) {
        warnings.add(new Warning(file, place + name, text(object.get(name)), message));
    }

    /** As {@link #warn(String, String)}, of something that was computed and does not stand in the file. */
    void warn(String name, String value, String message) {
        warnings.add(new Warning(file, place + name, value, message));
    }

    private JsonNode required(String name, String what) {
        JsonNode node = object.get(name);
        if (node == null) {
            throw refuse(name, "must be given: " + what);
        }
        return node;
    }

    /** Of a list or an object only the beginning: an error is one line to read. */
    private static String text(JsonNode node) {
        if (node.isValueNode()) {
            return node.asText();
        }
        String all = node.toString();
        return all.length() <= LONGEST ? all : all.substring(0, LONGEST) + "…";
    }

    /** Characters of a list or an object that an error shows. */
    private static final int LONGEST = 40;
}
