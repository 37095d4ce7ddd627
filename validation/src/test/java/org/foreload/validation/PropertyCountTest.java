package org.foreload.validation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Counts the laws that run as properties in the normal build, in all modules, and holds the report to the count. */
class PropertyCountTest {

    private static final List<String> MODULES =
            List.of("dynamics-core", "dynamics-core/files", "validation", "dynamics-examples");

    private static final Pattern PROPERTY = Pattern.compile("(?m)^\\s*@Property(\\(([^)]*)\\))?\\s*$");

    /** Where the build says how often a property runs that names no number of its own. */
    private static final Pattern TRIES = Pattern.compile("<property.tries>(\\d+)</property.tries>");

    /** Of each property of a source file, whether it names a number of its own. */
    private static List<Boolean> numbered(String source) {
        return PROPERTY.matcher(source)
                .results()
                .map(property -> property.group(2) != null && property.group(2).contains("tries = "))
                .toList();
    }

    private static List<Boolean> ofAllModules() throws IOException {
        List<Boolean> all = new ArrayList<>();
        for (String module : MODULES) {
            try (Stream<Path> files = Files.walk(Path.of("..", module, "src", "test", "java"))) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    all.addAll(numbered(Files.readString(file)));
                }
            }
        }
        return all;
    }

    @Test
    void theReportSaysHowManyPropertiesRunHowOften() throws IOException {
        List<Integer> tries = TRIES.matcher(Files.readString(Path.of("..", "pom.xml")))
                .results()
                .map(found -> Integer.valueOf(found.group(1)))
                .toList();
        List<Boolean> all = ofAllModules();
        long plain = all.stream().filter(own -> !own).count();
        assertTrue(plain >= 40, () -> plain + " properties");
        String says = plain + " properties run " + tries.get(0) + " tries each in every build and " + tries.get(1)
                + " in the long one, " + (all.size() - plain) + " others a number of their own";
        String notes;
        try (var in = Catalogue.class.getResourceAsStream("report-notes.md")) {
            notes = new String(in.readAllBytes(), StandardCharsets.UTF_8).replaceAll("\\s+", " ");
        }
        assertTrue(notes.contains(says), () -> "the notes must say: " + says);
    }
}
