package org.foreload.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.foreload.examples.command.CommandReference;
import org.junit.jupiter.api.Test;

/** The project speaks one language: in help, manual, comments and pages. What verbs print is checked where they run. */
class VocabularyTest {

    private static final Path ROOT = Path.of("..");

    /** Comments that become documentation. */
    private static final Pattern COMMENT = Pattern.compile("/\\*\\*.*?\\*/", Pattern.DOTALL);

    /** Made from help, which is checked itself; and what was said in earlier versions. */
    private static final List<String> LEFT_OUT = List.of("commands.md", "CHANGELOG.md");

    private static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void helpSpeaksIt() {
        assertEquals(List.of(), Vocabulary.broken(CommandReference.page()));
    }

    @Test
    void theManualSpeaksIt() throws IOException {
        List<Path> pages = new ArrayList<>(files(ROOT.resolve("docs"), ".md"));
        pages.add(ROOT.resolve("README.md"));
        pages.add(ROOT.resolve("DEVELOPERS.md"));
        pages.removeIf(page -> LEFT_OUT.contains(page.getFileName().toString()));
        assertEquals(List.of(), broken(pages, false));
    }

    @Test
    void commentsSpeakIt() throws IOException {
        List<Path> sources = new ArrayList<>();
        for (String module : List.of("dynamics-core", "dynamics-core/files", "dynamics-examples", "validation")) {
            sources.addAll(files(ROOT.resolve(module).resolve("src/main/java"), ".java"));
        }
        assertEquals(List.of(), broken(sources, true));
    }

    @Test
    void pagesSpeakIt() throws IOException {
        Path resources = Path.of("src/main/resources");
        List<Path> pages = new ArrayList<>(files(resources, ".html"));
        pages.addAll(files(resources, ".js"));
        assertFalse(pages.isEmpty());
        assertEquals(List.of(), broken(pages, false));
    }

    private static List<String> broken(List<Path> files, boolean commentsOnly) throws IOException {
        List<String> broken = new ArrayList<>();
        for (Path file : files) {
            String text = Files.readString(file);
            for (String found : Vocabulary.broken(commentsOnly ? comments(text) : text)) {
                broken.add(file + ": " + found);
            }
        }
        return broken;
    }

    private static String comments(String source) {
        StringBuilder comments = new StringBuilder();
        Matcher matcher = COMMENT.matcher(source);
        while (matcher.find()) {
            comments.append(matcher.group().replaceAll("\\n\\s*\\*", " ")).append('\n');
        }
        return comments.toString();
    }
}
