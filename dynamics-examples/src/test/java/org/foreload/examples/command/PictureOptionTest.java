package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Svg;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** {@code --picture} on the command line; the quick verbs are drawn, of the slow ones only what is refused is seen. */
class PictureOptionTest {

    @TempDir
    private Path directory;

    private static List<String> verbs() {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        return List.copyOf(
                Foreload.commandLine(nowhere, nowhere).getSubcommands().keySet());
    }

    private List<String> texts(String words) throws IOException {
        Path file = directory.resolve("picture.svg");
        List<String> all = new ArrayList<>(List.of(words.split(" ")));
        all.addAll(List.of("--picture", file.toString()));
        Run plain = Run.of(words.split(" "));
        Run drawn = Run.of(all.toArray(String[]::new));
        assertEquals("", drawn.err());
        assertEquals(0, drawn.status());
        assertEquals(plain.out(), drawn.out(), "the answer is the same with a picture");
        String first = Files.readString(file);
        Run.of(all.toArray(String[]::new));
        assertEquals(first, Files.readString(file), "the picture is the same each time");
        return Svg.texts(Svg.parse(first));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            loads                                        | load, kN                          | deceleration, m/s²
            grip                                         | lateral force that the axle can give, kN | deceleration, m/s²
            ideal --step 4                               | speed, m/s                        | distance along the line, 0 at turn-in, m
            handling                                     | steer of the front wheels, °      | lateral acceleration, m/s²
            stability --demo-car road                    | growth of a disturbance, 1/s      | grip left, %
            entry --demo-car road --brake-point -130     | deceleration, m/s²                | along the approach, m
            smoothness --demo-car road --frequencies 2 --quiet | ripple of the front load, N | frequency of the ripple, Hz
            pedal --demo-car road --attempts 2 --quiet   | share of the peak, %              | share of attempts, %
            validate --check 2.4                         | error over budget                  | check, in the order of the catalogue
            """)
    void axesHaveTheirUnits(String words, String one, String other) throws IOException {
        List<String> texts = texts(words);
        assertTrue(texts.contains(one), one + " in " + texts);
        assertTrue(texts.contains(other), other + " in " + texts);
    }

    @Test
    void aSweepIsDrawn() throws IOException {
        List<String> texts = texts("explore --demo-car road --demo-corner hairpin --quiet --shapes linear --peaks 0.75 "
                + "--starts -0.1 --ends 0.7");
        assertTrue(texts.contains("in hand, m"), texts.toString());
        assertTrue(texts.contains("time ahead, s"), texts.toString());
    }

    /** The caption tells the numbers of the answer. */
    @Test
    void theCaptionTellsTheAnswersNumbers() throws IOException {
        double best = Run.json("grip", "--format", "json")
                .get("best_deceleration_mps2")
                .asDouble();
        String words = String.join(" ", texts("grip"));
        assertTrue(words.contains(String.format(java.util.Locale.ROOT, "d* = %.2f", best)), words);
    }

    @Test
    void pngIsDrawnByItsSuffix() throws IOException {
        Path file = directory.resolve("picture.png");
        assertEquals(0, Run.of("loads", "--picture", file.toString()).status());
        assertEquals(2 * Picture.WIDTH, ImageIO.read(file.toFile()).getWidth());
    }

    @ParameterizedTest
    @MethodSource("verbs")
    void everyVerbRefusesAnUnknownSuffixBeforeItsWork(String verb) {
        // One verb cannot do without a file.
        String[] words = verb.equals("join")
                ? new String[] {verb, "part.jsonl", "--picture", "a.gif"}
                : new String[] {verb, "--picture", "a.gif"};
        Run.of(words).refusedWith("--picture: a.gif: must end with .svg or .png");
    }

    @Test
    void aFolderThatIsNotThereIsRefused() throws IOException {
        Path file = directory.resolve("no").resolve("a.svg");
        Run.of("best", "--picture", file.toString())
                .refusedWith("--picture: " + file + ": must be in a folder that is there");
        Run.of("best", "--picture", "").refusedNaming("--picture");
        try (Stream<Path> files = Files.list(directory)) {
            assertFalse(files.findAny().isPresent());
        }
    }
}
