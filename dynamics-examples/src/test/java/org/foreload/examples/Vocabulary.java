package org.foreload.examples;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** One name for one thing: words that the project does not use, and those that it uses instead. */
public final class Vocabulary {

    private static final int AROUND = 30;

    private record Rule(Pattern avoid, String use) {}

    private static final List<Rule> RULES = rules();

    private Vocabulary() {}

    private static List<Rule> rules() {
        try (Reader reader =
                new InputStreamReader(Vocabulary.class.getResourceAsStream("vocabulary.csv"), StandardCharsets.UTF_8)) {
            List<Rule> rules = new ArrayList<>();
            for (CSVRecord row : CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(reader)) {
                rules.add(new Rule(Pattern.compile(row.get("avoid")), row.get("use")));
            }
            return List.copyOf(rules);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What a text says in words that are not ours, each with what surrounds it. */
    public static List<String> broken(String text) {
        List<String> found = new ArrayList<>();
        String line = text.replaceAll("\\s+", " ");
        for (Rule rule : RULES) {
            Matcher matcher = rule.avoid().matcher(line);
            while (matcher.find()) {
                String around = line.substring(
                        Math.max(0, matcher.start() - AROUND), Math.min(line.length(), matcher.end() + AROUND));
                found.add("\"" + matcher.group() + "\" in \"…" + around + "…\": say " + rule.use());
            }
        }
        return found;
    }
}
