package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedReader;
import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Lines are those that the platform's own reader finds, however little comes at once. */
class LineReaderTest {

    /** Gives a few characters at a time, as a slow source does. */
    private static Reader slow(String text, int most) {
        return new FilterReader(new StringReader(text)) {
            @Override
            public int read(char[] into, int from, int length) throws IOException {
                return super.read(into, from, Math.min(length, most));
            }
        };
    }

    private static List<String> lines(Reader from) throws IOException {
        LineReader reader = new LineReader(from);
        List<String> lines = new ArrayList<>();
        while (reader.next()) {
            lines.add(reader.text());
        }
        return lines;
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.strings()
                .withChars("a1,;\"\r\n\t\u0001\u007f\u0085é")
                .ofMaxLength(60);
    }

    @Property(tries = 1000)
    void linesAreThoseOfThePlatform(@ForAll("texts") String text, @ForAll @IntRange(min = 1, max = 9) int most)
            throws IOException {
        List<String> expected = new BufferedReader(new StringReader(text))
                .lines()
                .map(line -> line.replaceAll("[\u0001\u007f\u0085]", " "))
                .map(line -> line.chars().filter(c -> c == '"').count() % 2 == 0 ? line : line.replace("\"", ""))
                .toList();
        assertEquals(expected, lines(slow(text, most)));
    }

    @Test
    void whatALineHasBeyondTheLongestIsDropped() throws IOException {
        String longest = "7".repeat(LineReader.LONGEST);
        assertEquals(List.of(longest, "2"), lines(slow(longest + "\"31\r\n2", 1000)));
    }
}
