package org.foreload.validation.subject;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Named inputs of a check, each a number or a word; names carry units. One immutable map, read by name.
 *
 * @param values by name
 */
public record Inputs(Map<String, String> values) {

    /** Copies the map. */
    public Inputs {
        values = Map.copyOf(values);
    }

    /** Reads {@code name=value; name=value}. */
    public static Inputs parse(String text) {
        Map<String, String> values = new LinkedHashMap<>();
        for (String part : text.split(";")) {
            if (!part.isBlank()) {
                String[] pair = part.split("=", 2);
                if (pair.length != 2 || values.put(pair[0].strip(), pair[1].strip()) != null) {
                    throw new IllegalArgumentException("not a list of name=value, each name once: " + text);
                }
            }
        }
        return new Inputs(values);
    }

    /** A number that must be there. */
    public double number(String name) {
        return Double.parseDouble(word(name));
    }

    /** A number, or what holds where it is left out. */
    public double number(String name, double otherwise) {
        String value = values.get(name);
        return value == null ? otherwise : Double.parseDouble(value);
    }

    /** A word that must be there. */
    public String word(String name) {
        String value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("no input " + name + " among " + values.keySet());
        }
        return value;
    }

    /** A word, or what holds where it is left out. */
    public String word(String name, String otherwise) {
        return values.getOrDefault(name, otherwise);
    }

    /** All inputs but one. */
    public Inputs without(String name) {
        Map<String, String> rest = new LinkedHashMap<>(values);
        rest.remove(name);
        return new Inputs(rest);
    }

    /** Whether an input is given. */
    public boolean has(String name) {
        return values.containsKey(name);
    }
}
