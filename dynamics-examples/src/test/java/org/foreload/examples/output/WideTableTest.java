package org.foreload.examples.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.AlphaChars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

/** Whatever a report holds, its lines fit on a screen and lose nothing. */
class WideTableTest {

    private static int widest(String text) {
        return text.lines().mapToInt(Prose::width).max().orElse(0);
    }

    @Test
    void sentencesAreWrapped() {
        String sentence = "one word after the other ".repeat(20).strip() + ".";
        String text = Format.TABLE.render(
                new Report(sentence).headline(sentence).with("cause", sentence).note(sentence));
        assertTrue(widest(text) <= Prose.WIDTH, text);
        String words = text.replaceAll("\\s+", " ");
        assertEquals(4, words.split(sentence.replace(".", "\\."), -1).length - 1, text);
    }

    @Test
    void reasonsStandBelowTheirTable() {
        String why = "it left the line by more than the margin that was asked for, and then some more, and more";
        String text = Format.TABLE.render(new Report()
                .with(
                        "rows",
                        "Rows",
                        List.of(
                                new Report()
                                        .with("plan", "too long")
                                        .with("time_s", 1)
                                        .with("outcome", "ran wide")
                                        .with("why", why),
                                new Report()
                                        .with("plan", "too hard")
                                        .with("time_s", 2)
                                        .with("outcome", "made it")
                                        .with("why", "none"))));
        assertEquals("""

                Rows
                plan      time s  outcome
                too long   1.000  ran wide
                too hard   2.000  made it
                why:
                  too long: it left the line by more than the margin that was asked for, and then some more, and more
                  too hard: none
                """, text);
    }

    @Test
    void aTableThatFitsStaysInOnePiece() {
        Report row = new Report();
        for (String name : List.of("speed_mps", "front_axle_load_n", "rear_axle_load_n", "deceleration_mps2")) {
            row = row.with(name, 12345.6);
        }
        String text = Format.TABLE.render(new Report().with("rows", "Rows", List.of(row)));
        assertEquals(
                "speed m/s  front axle load N  rear axle load N  deceleration m/s²",
                text.lines().skip(2).findFirst().orElseThrow());
    }

    @Property(tries = 200)
    void noLineIsTooLong(
            @ForAll @Size(min = 1, max = 30) List<@AlphaChars @StringLength(min = 1, max = 60) String> names,
            @ForAll @IntRange(min = 1, max = 4) int rows,
            @ForAll @IntRange(min = 1, max = 90) int words) {
        List<String> headings = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            headings.add(names.get(i) + i);
        }
        List<Report> list = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            Report row = new Report().withCount("row", i);
            for (String name : headings) {
                row = name.length() % 2 == 0
                        ? row.with(name, i + 0.5)
                        : row.with(name, "x ".repeat(words).strip());
            }
            list.add(row);
        }
        String text = Format.TABLE.render(new Report().with("rows", "Rows", list));
        assertTrue(widest(text) <= Prose.WIDTH, text);
        String shown = text.lines().collect(Collectors.joining(" "));
        headings.forEach(name -> assertTrue(shown.contains(name), () -> name + " is not in\n" + text));
    }
}
