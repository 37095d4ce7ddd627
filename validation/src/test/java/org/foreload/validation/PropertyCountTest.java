package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Counts the laws that run as properties in the normal build, in all modules, and holds the report to the count. */
class PropertyCountTest {

    /** What a property runs unless it says otherwise; jqwik's own default, which no file here changes. */
    private static final int DEFAULT_TRIES = 1000;

    private static final List<String> MODULES =
            List.of("dynamics-core", "dynamics-core/files", "validation", "dynamics-examples");

    private static final Pattern PROPERTY = Pattern.compile("(?m)^\\s*@Property(\\(([^)]*)\\))?\\s*$");

    private static final Pattern TRIES = Pattern.compile("tries = (\\w+)");

    /** Tries of each property of a source file. */
    private static List<Integer> tries(String source) {
        List<Integer> all = new ArrayList<>();
        Matcher property = PROPERTY.matcher(source);
        while (property.find()) {
            Matcher tries = TRIES.matcher(property.group(2) == null ? "" : property.group(2));
            all.add(tries.find() ? number(tries.group(1), source) : DEFAULT_TRIES);
        }
        return all;
    }

    private static int number(String text, String source) {
        if (text.matches("\\d+")) {
            return Integer.parseInt(text);
        }
        Matcher constant = Pattern.compile("int " + text + " = (\\d+);").matcher(source);
        assertTrue(constant.find(), () -> "what is " + text + "?");
        return Integer.parseInt(constant.group(1));
    }

    private static List<Integer> ofAllModules() throws IOException {
        List<Integer> all = new ArrayList<>();
        for (String module : MODULES) {
            try (Stream<Path> files = Files.walk(Path.of("..", module, "src", "test", "java"))) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    all.addAll(tries(Files.readString(file)));
                }
            }
        }
        return all;
    }

    @Test
    void theReportSaysHowManyPropertiesRunAThousandTries() throws IOException {
        List<Integer> all = ofAllModules();
        long thousand = all.stream().filter(tries -> tries >= DEFAULT_TRIES).count();
        assertTrue(thousand >= 40, () -> thousand + " properties");
        String says = thousand + " properties run a thousand tries each in every build, " + (all.size() - thousand)
                + " dearer ones fewer";
        String notes;
        try (var in = Catalogue.class.getResourceAsStream("report-notes.md")) {
            notes = new String(in.readAllBytes(), StandardCharsets.UTF_8).replaceAll("\\s+", " ");
        }
        assertTrue(notes.contains(says), () -> "the notes must say: " + says);
    }
}
