package org.foreload.examples.manual;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.examples.command.CommandReference;
import org.foreload.examples.program.FirstStudy;
import org.foreload.file.CarFile;
import org.foreload.file.CornerFile;
import org.foreload.study.Proportion;
import org.foreload.validation.Catalogue;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.Resources;

/** What README and manual show is what is there: commands, output, files, programs, links and checks. */
@ResourceLock(Resources.SYSTEM_OUT)
@ResourceLock(Resources.SYSTEM_ERR)
class ManualTest {

    /** Pages that another test runs, in ways of their own. */
    private static final Set<String> RUN_ELSEWHERE = Set.of("scripting.md");

    private static final Pattern OPTION = Pattern.compile("--[a-z][a-z-]+");

    /** How a page names a check: by its id in the table of checks. */
    private static final Pattern CHECK = Pattern.compile("check `([^`]+)`");

    @TempDir
    private Path directory;

    private static List<Page> run() throws IOException {
        return Page.all().stream()
                .filter(page ->
                        !RUN_ELSEWHERE.contains(page.file().getFileName().toString()))
                .toList();
    }

    @TestFactory
    Stream<DynamicTest> itsCommandsPrintWhatItShows() throws IOException {
        return run().stream()
                .filter(page -> page.blocks().stream().anyMatch(block -> block.is("sh") || block.is("console")))
                .map(page -> DynamicTest.dynamicTest(page.file().toString(), () -> {
                    Path own = Files.createTempDirectory(directory, "page");
                    Console console = new Console(own);
                    String text = text(page.file());
                    for (Page.Block block : page.blocks()) {
                        String fence = "```" + block.info() + "\n";
                        text = text.replace(fence + block.text() + "```", fence + console.show(block) + "```");
                    }
                    if (Console.RENEW) {
                        Files.writeString(page.file(), text);
                    }
                    assertTrue(
                            console.done() > 0 || page.blocks().stream().anyMatch(Page.Block::isLong),
                            () -> page.file() + " runs nothing");
                }));
    }

    @Test
    void itsFilesAreRead() throws IOException {
        for (Page page : run()) {
            for (Page.Block block : page.blocks()) {
                String name = block.words().isEmpty() ? "block" : block.words().get(0);
                if (block.is("csv")) {
                    Files.writeString(directory.resolve(name), block.text());
                } else if (block.is("json")) {
                    Path file = Files.writeString(directory.resolve(name), block.text());
                    if (name.startsWith("car")) {
                        assertEquals(List.of(), CarFile.read(file).warnings(), block::toString);
                    } else if (name.startsWith("corner")) {
                        assertEquals(List.of(), CornerFile.read(file).warnings(), block::toString);
                    } else {
                        new ObjectMapper().readTree(block.text());
                    }
                }
            }
        }
    }

    @Test
    void itsJavaIsCompiledAndRunByTheBuild() throws IOException {
        String sources;
        // The files beside docs/scripting.md are run with that page.
        try (Stream<Path> own = Files.walk(Path.of("src"));
                Stream<Path> scripts = Files.walk(Page.ROOT.resolve("docs/scripting"))) {
            sources = Stream.concat(own, scripts)
                    .filter(file -> file.toString().endsWith(".java"))
                    .map(ManualTest::text)
                    .map(ManualTest::bare)
                    .collect(Collectors.joining("\n"));
        }
        for (Page page : run()) {
            for (Page.Block block : page.blocks()) {
                if (block.is("java")) {
                    assertTrue(sources.contains(bare(block.text())), block::toString);
                }
            }
        }
    }

    @Test
    void theReadmesProgramGains() throws IOException {
        List<Page.Block> files = Page.read(Page.ROOT.resolve("README.md")).blocks().stream()
                .filter(block -> block.is("json"))
                .toList();
        Path car = Files.writeString(directory.resolve("car.json"), files.get(0).text());
        Path corner =
                Files.writeString(directory.resolve("corner.json"), files.get(1).text());
        String gain = FirstStudy.gain(car, corner);
        assertTrue(gain.matches("trailing gains 0\\.\\d\\d s"), gain);
    }

    @Test
    void itsLinksLeadSomewhere() throws IOException {
        Map<Path, Page> pages = new TreeMap<>();
        Page.all().forEach(page -> pages.put(page.file().normalize(), page));
        Set<String> dead = new TreeSet<>();
        for (Page page : pages.values()) {
            for (String link : page.links()) {
                if (!leadsSomewhere(page, link, pages)) {
                    dead.add(page.file() + ": " + link);
                }
            }
        }
        assertEquals(Set.of(), dead);
    }

    private static boolean leadsSomewhere(Page page, String link, Map<Path, Page> pages) {
        if (link.contains(":")) {
            URI uri = URI.create(link);
            return "https".equals(uri.getScheme()) && uri.getHost() != null;
        }
        String[] parts = link.split("#", 2);
        Path target = parts[0].isEmpty()
                ? page.file().normalize()
                : page.file().resolveSibling(parts[0]).normalize();
        if (parts.length == 2) {
            return pages.containsKey(target) && pages.get(target).anchors().contains(parts[1]);
        }
        return Files.exists(target);
    }

    @Test
    void itsOptionsExist() throws IOException {
        String page = CommandReference.page();
        // --[no-]why stands for two options.
        String reference = page.replace("--[no-]", "--no-") + page.replace("--[no-]", "--");
        Set<String> unknown = new TreeSet<>();
        for (Page one : run()) {
            for (String code : one.code()) {
                OPTION.matcher(code)
                        .results()
                        .filter(option -> !Pattern.compile(Pattern.quote(option.group()) + "(?![a-z-])")
                                .matcher(reference)
                                .find())
                        .forEach(option -> unknown.add(one.file() + ": " + option.group()));
            }
        }
        assertEquals(Set.of(), unknown);
    }

    @Test
    void theCommandReferenceIsNew() {
        assertEquals(
                CommandReference.page(),
                text(Page.ROOT.resolve("docs/commands.md")),
                "docs/commands.md is stale; DEVELOPERS.md has the command that makes it anew");
    }

    @Test
    void theChecksItNamesExist() throws IOException {
        Set<String> known = Catalogue.read().stream().map(check -> check.id()).collect(Collectors.toSet());
        Set<String> unknown = new TreeSet<>();
        for (Page page : run()) {
            CHECK.matcher(text(page.file()))
                    .results()
                    .filter(check -> !known.contains(check.group(1)))
                    .forEach(check -> unknown.add(page.file() + ": " + check.group(1)));
        }
        assertEquals(Set.of(), unknown);
    }

    @Test
    void itsIntervalOfNoFailureIsComputed() {
        String high = String.format(
                Locale.ROOT, "no failure in 64 entries still allows %.1f %%", 100 * new Proportion(0, 64).high());
        assertTrue(text(Page.ROOT.resolve("docs/theory/study.md")).contains(high), high);
    }

    @Test
    void everyChapterHasItsPage() throws IOException {
        String index = text(Page.ROOT.resolve("docs/theory/README.md"));
        try (Stream<Path> chapters = Files.list(Page.ROOT.resolve("dynamics-core/src/main/java/org/foreload"))) {
            Set<String> without = chapters.filter(Files::isDirectory)
                    .map(chapter -> chapter.getFileName().toString())
                    .filter(chapter -> !index.contains("`" + chapter + "`"))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(Set.of(), without);
        }
    }

    /** Text with one space for each gap, so that a block may be broken into lines in its own way. */
    private static String bare(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }

    private static String text(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(file.toString(), e);
        }
    }
}
