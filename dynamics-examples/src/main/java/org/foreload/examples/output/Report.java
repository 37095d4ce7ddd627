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
    private final List<String> headlines;
    private final List<String> notes;
    private final Report shown;

    /** A report with nothing in it. */
    public Report() {
        this("");
    }

    /** A report with nothing but a title, which only tables show. */
    public Report(String title) {
        this(title, Map.of(), List.of(), List.of(), null);
    }

    private Report(String title, Map<String, Object> values, List<String> headlines, List<String> notes, Report shown) {
        this.title = Objects.requireNonNull(title);
        this.values = values;
        this.headlines = headlines;
        this.notes = notes;
        this.shown = shown;
    }

    /** One more number, in the unit that the name ends with; one that is not finite stands for "there is none". */
    public Report with(String name, double number) {
        return plus(name, Double.isFinite(number) ? number : Double.NaN);
    }

    /** One more count. */
    public Report withCount(String name, long count) {
        return plus(name, count);
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
     * One more list. The first list of a report gives the rows of its CSV; later ones are not in the CSV.
     *
     * @param name the name in JSON
     * @param caption what stands above the table
     * @param rows each with the same names
     */
    public Report with(String name, String caption, List<Report> rows) {
        return plus(name, new Rows(caption, rows, false));
    }

    /** One more list, of which tables show every row, however many there are. */
    public Report withAll(String name, String caption, List<Report> rows) {
        return plus(name, new Rows(caption, rows, true));
    }

    /** One more sentence for people, before all values; JSON and CSV leave it out. */
    public Report headline(String sentence) {
        return new Report(title, values, plus(headlines, sentence), notes, shown);
    }

    /** One more sentence for people, after all values; JSON and CSV leave it out. */
    public Report note(String sentence) {
        return new Report(title, values, headlines, plus(notes, sentence), shown);
    }

    /** One more part for programs, which people read as a sentence before all other notes. */
    public Report said(String name, Report part, String sentence) {
        Report people = people();
        List<String> more = new ArrayList<>(List.of(sentence));
        more.addAll(people.notes);
        Report spoken = new Report(people.title, people.values, people.headlines, List.copyOf(more), null);
        return with(name, part).shownAs(spoken);
    }

    /** The same report, for which people are shown another one: where what programs read is too much to look at. */
    public Report shownAs(Report people) {
        return new Report(title, values, headlines, notes, Objects.requireNonNull(people));
    }

    private static List<String> plus(List<String> sentences, String one) {
        List<String> more = new ArrayList<>(sentences);
        more.add(Objects.requireNonNull(one));
        return List.copyOf(more);
    }

    private Report plus(String name, Object value) {
        Map<String, Object> more = new LinkedHashMap<>(values);
        if (more.putIfAbsent(Objects.requireNonNull(name), value == null ? NONE : value) != null) {
            throw new IllegalArgumentException("two values named " + name);
        }
        return new Report(title, Collections.unmodifiableMap(more), headlines, notes, shown);
    }

    /** Stands for a text that is not there. */
    static final Object NONE = new Object();

    /** A list with the words that stand above it. */
    record Rows(String caption, List<Report> rows, boolean whole) {
        Rows {
            Objects.requireNonNull(caption);
            rows = List.copyOf(rows);
        }
    }

    String title() {
        return title;
    }

    List<String> headlines() {
        return headlines;
    }

    List<String> notes() {
        return notes;
    }

    /** What people are shown: this report, unless another one was given. */
    Report people() {
        return shown == null ? this : shown;
    }

    /** The values in order: Double, Long, String, Boolean, {@link #NONE}, Report, or {@link Rows}. */
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
