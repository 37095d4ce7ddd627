package org.foreload.validation;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.foreload.validation.subject.Inputs;

/** The checks, read from {@code checks.csv} and the sources in {@code sources.csv} beside it. */
public final class Catalogue {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setCommentMarker('#')
            .setIgnoreEmptyLines(true)
            .setIgnoreSurroundingSpaces(true)
            .get();

    private Catalogue() {}

    /**
     * All checks, in the order of the file.
     *
     * @throws IllegalArgumentException if an id occurs twice, a source is not listed or a number is none
     */
    public static List<Check> read() {
        Map<String, String> sources = new HashMap<>();
        for (CSVRecord row : rows("sources.csv")) {
            sources.put(row.get("key"), row.get("text"));
        }
        List<Check> checks = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (CSVRecord row : rows("checks.csv")) {
            Check check = check(row, sources);
            if (!ids.add(check.id())) {
                throw new IllegalArgumentException("two checks are called " + check.id());
            }
            checks.add(check);
        }
        return List.copyOf(checks);
    }

    private static Check check(CSVRecord row, Map<String, String> sources) {
        String source = sources.get(row.get("source"));
        if (source == null) {
            throw new IllegalArgumentException(row.get("id") + ": no source " + row.get("source"));
        }
        String place = row.get("place");
        return new Check(
                row.get("id"),
                row.get("name"),
                place.isEmpty() ? source : source + ", " + place,
                Status.of(row.get("status")),
                row.get("subject"),
                Inputs.parse(row.get("inputs")),
                Relation.of(row.get("relation")),
                Double.parseDouble(row.get("expected")),
                row.get("unit"),
                Double.parseDouble(row.get("budget")),
                row.get("reason"));
    }

    private static List<CSVRecord> rows(String file) {
        InputStream stream = Catalogue.class.getResourceAsStream(file);
        if (stream == null) {
            throw new IllegalStateException(file + " is not in the jar");
        }
        try (Reader reader = new InputStreamReader(stream, StandardCharsets.UTF_8);
                CSVParser parser = CSVParser.parse(reader, FORMAT)) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
