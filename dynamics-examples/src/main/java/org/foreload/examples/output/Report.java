package org.foreload.examples.output;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What a verb found: named values in order, of which some are reports or lists of reports themselves. Immutable; each
 * {@code with} returns a copy with one more value.
 *
 * <p>Names carry their unit ({@code brake_point_m}) and are the names in JSON and CSV. A number that is NaN stands for
 * "there is none": {@code null} in JSON, empty in CSV, a dash in tables.
 */
public final class Report {

    private final String title;
    private final Map<String, Object> values;
    private final List<String> notes;

    /** A report with nothing in it. */
    public Report() {
        this("", Map.of(), List.of());
    }

    /** A report with nothing but a title, which only tables show. */
    public Report(String title) {
        this(title, Map.of(), List.of());
    }

    private Report(String title, Map<String, Object> values, List<String> notes) {
        this.title = Objects.requireNonNull(title);
        this.values = values;
        this.notes = notes;
    }

    /** One more number, in the unit that the name ends with. */
    public Report with(String name, double number) {
        return plus(name, number);
    }

    /** One more text; null for none. */
    public Report with(String name, String text) {
        return plus(name, text);
    }

    /** One more yes or no. */
    public Report with(String name, boolean flag) {
        return plus(name, flag);
    }

    /** One more part with values of its own. */
    public Report with(String name, Report part) {
        return plus(name, Objects.requireNonNull(part));
    }

    /**
     * One more list. The first list of a report is what CSV prints.
     *
     * @param name the name in JSON
     * @param caption what stands above the table
     * @param rows each with the same names
     */
    public Report with(String name, String caption, List<Report> rows) {
        return plus(name, new Rows(caption, rows));
    }

    /** One more sentence for people; JSON and CSV leave it out. */
    public Report note(String sentence) {
        List<String> more = new ArrayList<>(notes);
        more.add(Objects.requireNonNull(sentence));
        return new Report(title, values, List.copyOf(more));
    }

    private Report plus(String name, Object value) {
        Map<String, Object> more = new LinkedHashMap<>(values);
        if (more.putIfAbsent(Objects.requireNonNull(name), value == null ? NONE : value) != null) {
            throw new IllegalArgumentException("two values named " + name);
        }
        return new Report(title, Collections.unmodifiableMap(more), notes);
    }

    /** Stands for a text that is not there. */
    static final Object NONE = new Object();

    /** A list with the words that stand above it. */
    record Rows(String caption, List<Report> rows) {
        Rows {
            Objects.requireNonNull(caption);
            rows = List.copyOf(rows);
        }
    }

    String title() {
        return title;
    }

    List<String> notes() {
        return notes;
    }

    /** The values in order: Double, String, Boolean, {@link #NONE}, Report, or {@link Rows}. */
    Map<String, Object> values() {
        return values;
    }

    /** The plain values, those of parts under {@code part.name}; lists are left out. */
    Map<String, Object> plainValues() {
        Map<String, Object> plain = new LinkedHashMap<>();
        values.forEach((name, value) -> {
            if (value instanceof Report part) {
                part.plainValues().forEach((inner, v) -> plain.put(name + "." + inner, v));
            } else if (!(value instanceof Rows)) {
                plain.put(name, value);
            }
        });
        return plain;
    }
}
