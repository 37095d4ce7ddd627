package org.foreload.examples.recording;

import static org.foreload.examples.recording.RecordingFileTest.read;
import static org.foreload.examples.recording.RecordingFileTest.table;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.foreload.file.InputException;
import org.foreload.recording.Channel;
import org.junit.jupiter.api.Test;

/** Columns that hold text, nothing, or one and the same number. */
class ColumnCheckTest {

    private static final String HEADER = "time_s,speed_mps,brake,lateral_acceleration_mps2";

    /** A table in which every cell of a column is another text. */
    private static byte[] replaced(int column, String text) {
        String[] lines = table(HEADER + ",throttle", ",", false, 1, 1, 1, 1).split("\n");
        for (int i = 1; i < lines.length; i++) {
            String[] cells = (lines[i] + "," + i % 7).split(",");
            cells[column] = i == 1 && column == 1 && text.equals("abc") ? "30" : text;
            lines[i] = String.join(",", cells);
        }
        return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    private static String refusal(byte[] bytes, ColumnWish wish) {
        return assertThrows(InputException.class, () -> read(bytes, wish, Cut.NONE))
                .line();
    }

    @Test
    void aNeededColumnOfTextIsRefusedInOneLine() {
        assertEquals(
                "run.csv: speed: abc: column speed_mps is text: 299 of 300 cells are no number that can be, the first in "
                        + "line 3; name another by --columns, or leave it out by --columns speed=, if it can be made from "
                        + "time with distance or position",
                refusal(replaced(1, "abc"), ColumnWish.NONE));
        String brake = refusal(replaced(2, "pressed"), ColumnWish.NONE);
        assertTrue(brake.startsWith("run.csv: brake: pressed: column brake is text: 300 of 300 cells"), brake);
        String lateral = refusal(replaced(3, "left"), ColumnWish.NONE);
        assertTrue(
                lateral.startsWith("run.csv: lateral: column lateral_acceleration_mps2 is text: 300 of 300 cells"),
                lateral);
    }

    /** A sensor that is stuck, or was never connected, is no measurement. */
    @Test
    void aNeededColumnThatNeverChangesIsRefusedInOneLine() {
        String brake = refusal(replaced(2, "0"), ColumnWish.NONE);
        assertEquals(
                "run.csv: brake: 0: column brake never changes: it is 0 in all 300 rows that have a value; name another by "
                        + "--columns, or leave it out by --columns brake=, and braking is read from the deceleration",
                brake);
        String speed = refusal(replaced(1, "36.7"), ColumnWish.of("speed=speed_mps:km/h"));
        assertTrue(
                speed.startsWith("run.csv: speed: 36.7: column speed_mps never changes: it is 36.7 in all 300 rows"),
                speed);
        String lateral = refusal(replaced(3, "0.1"), ColumnWish.NONE);
        assertTrue(lateral.startsWith("run.csv: lateral: column lateral_acceleration_mps2 never changes"), lateral);
    }

    /** A receiver without a fix writes one and the same place; a straight along a meridian is none. */
    @Test
    void positionsThatStandStillAreIgnored() {
        StringBuilder still = new StringBuilder(HEADER + ",lat,lon\n");
        StringBuilder north = new StringBuilder(HEADER + ",lat,lon\n");
        for (String line : table("", ",", false, 1, 1, 1, 1).strip().split("\n")) {
            still.append(line).append(",48,20\n");
            north.append(line)
                    .append(",")
                    .append(48 + 2e-4 * Double.parseDouble(line.substring(0, 5)))
                    .append(",20\n");
        }
        RecordedFile stuck = read(still.toString());
        assertEquals(2, stuck.ignored().size());
        assertFalse(stuck.laps().get(0).recording().hasPosition());
        assertEquals(List.of(), read(north.toString()).ignored());
    }

    /** The brake may be left out, and so may what nobody needs. */
    @Test
    void whatIsNotNeededIsIgnoredWithAWord() {
        RecordedFile without = read(replaced(2, "0"), ColumnWish.of("brake="), Cut.NONE);
        assertFalse(without.laps().get(0).recording().has(Channel.BRAKE));
        assertEquals(List.of(), without.ignored());
        for (String stuck : List.of("7", "open", "")) {
            RecordedFile file = read(replaced(4, stuck), ColumnWish.NONE, Cut.NONE);
            assertFalse(file.laps().get(0).recording().has(Channel.THROTTLE));
            assertEquals("throttle", file.ignored().get(0).name());
            assertTrue(
                    file.channels().stream().noneMatch(channel -> channel.name().equals("throttle")));
        }
        RecordedFile empty = read(replaced(2, "-"), ColumnWish.NONE, Cut.NONE);
        assertEquals("column brake is empty", empty.ignored().get(0).reason());
        assertEquals(List.of(), empty.leftOut());
    }

    /** A brake that no foot can have given is a missing cell, and listed as one of any other channel that cannot be. */
    @Test
    void aBrakeThatCannotBeIsListedByLineWithWhatStandsThere() {
        String[] lines = table(HEADER, ",", false, 1, 1, 1, 1).split("\n");
        lines[121] = lines[121].replace(",40.000000000,", ",9999,");
        lines[201] = lines[201].replace(",0.000000000,", ",-50,");
        RecordedFile file = read(String.join("\n", lines));
        assertEquals(
                List.of(
                        new RecordedFile.Unused(122, 122, "brake", "9999", "brake that cannot be"),
                        new RecordedFile.Unused(202, 202, "brake", "-50", "brake that cannot be")),
                file.leftOut());
        assertEquals(
                List.of(2L),
                file.channels().stream()
                        .filter(channel -> channel.name().equals("brake"))
                        .map(RecordedFile.FoundChannel::unreadable)
                        .toList());
        double[] brake = file.laps().get(0).recording().column(Channel.BRAKE);
        assertTrue(Double.isNaN(brake[120]) && Double.isNaN(brake[200]));
        assertEquals(40, brake[119]);
    }
}
