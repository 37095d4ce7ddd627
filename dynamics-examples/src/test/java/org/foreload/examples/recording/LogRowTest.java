package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** A line that is split by hand has the cells that Commons CSV finds in it. */
class LogRowTest {

    private static Layout layout(String separator, boolean comma) {
        String numbers =
                comma ? "1,5" + separator + "2,5" + separator + "3,5" : "1.5" + separator + "2.5" + separator + "3.5";
        return Layout.of(List.of("time" + separator + "speed" + separator + "lat acc", numbers, numbers))
                .orElseThrow();
    }

    @Provide
    Arbitrary<String> lines() {
        return Arbitraries.strings()
                .withChars("0123456789.,;\t +-e:xT")
                .ofMinLength(1)
                .ofMaxLength(60);
    }

    @Property(tries = 1000)
    void cellsAreThoseOfTheLibrary(@ForAll("lines") String line) {
        for (String separator : List.of(",", ";", "\t")) {
            Layout layout = layout(separator, separator.equals(";"));
            LogRow row = new LogRow(layout);
            row.read(line);
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                cells.add(row.text(i));
            }
            List<String> expected = layout.cells(line);
            assertEquals(expected, cells);
            for (int i = 0; i < row.size(); i++) {
                assertEquals(expected.get(i).isBlank(), row.blank(i), line);
                if (!row.blank(i)) {
                    assertEquals(layout.number(expected.get(i)), row.number(i), line);
                }
            }
        }
    }
}
