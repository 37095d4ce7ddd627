package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.foreload.conventions.InvalidValueException;
import org.foreload.file.InputException;
import org.foreload.recording.Channel;
import org.foreload.recording.Cleaning;
import org.foreload.recording.Recording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables as loggers write them, and GPX. */
class RecordingFileTest {

    static RecordedFile read(String text) {
        return read(text.getBytes(StandardCharsets.UTF_8), ColumnWish.NONE, Cut.NONE);
    }

    static RecordedFile read(byte[] bytes, ColumnWish wish, Cut cut) {
        try {
            return RecordingFile.read(new ByteArrayInputStream(bytes), "run.csv", wish, cut, Need.CORNERS);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** A run of 30 s at 10 Hz: speed 30 to 15 m/s, a pedal, lateral acceleration. */
    private static double[] row(int i) {
        return new double[] {0.1 * i, 30 - 0.05 * i, i > 100 && i < 150 ? 40 : 0, 5 * Math.sin(0.02 * i)};
    }

    static String table(String header, String separator, boolean comma, double... factors) {
        StringBuilder text = new StringBuilder(header).append('\n');
        for (int i = 0; i < 300; i++) {
            List<String> cells = new ArrayList<>();
            double[] row = row(i);
            for (int c = 0; c < row.length; c++) {
                String cell = String.format(Locale.ROOT, "%.9f", row[c] * factors[c]);
                cells.add(comma ? cell.replace('.', ',') : cell);
            }
            text.append(String.join(separator, cells)).append('\n');
        }
        return text.toString();
    }

    private static void assertPlain(RecordedFile file) {
        assertEquals(1, file.laps().size());
        assertEquals(300, file.rows());
        assertEquals(List.of(), file.leftOut());
        Recording recording = file.laps().get(0).recording();
        for (int c = 0; c < 4; c++) {
            Channel channel = List.of(Channel.TIME, Channel.SPEED, Channel.BRAKE, Channel.LATERAL)
                    .get(c);
            double[] expected = new double[300];
            for (int i = 0; i < expected.length; i++) {
                expected[i] = row(i)[c];
            }
            assertArrayEquals(expected, recording.column(channel), 1e-6, channel.name());
        }
    }

    @Test
    void headersWithUnitsAreUnderstood() {
        assertPlain(read(table("time_s,speed_mps,brake,lateral_acceleration_mps2", ",", false, 1, 1, 1, 1)));
        assertPlain(read(
                table("Time [s],Speed [km/h],Brake Pressure [bar],Lat Acc [g]", ",", false, 1, 3.6, 1, 1 / 9.80665)));
        assertPlain(read(table(
                "Time (ms);GPS Speed (mph);Brake (%);G Lat (g)", ";", true, 1000, 3600 / 1609.344, 1, 1 / 9.80665)));
        assertPlain(read(table("t\tv\tBrakePos\tLateralG (m/s^2)", "\t", true, 1, 1, 1, 1)));
        assertPlain(read(table("Time|Speed|Brake|AccelY", "|", false, 1, 1, 1, 1)));
        assertPlain(read(table("Time s;Speed km/h;Brake bar;LatAcc g", ";", false, 1, 3.6, 1, 1 / 9.80665)));
    }

    /** Commas between columns and before decimals: nobody can read that, and the refusal says why. */
    @Test
    void commasThatMeanTwoThingsAreRefusedForThat() {
        InputException refused = assertThrows(
                InputException.class,
                () -> read("Test day\n" + table("Time,Speed,Brake,Lat Acc", ",", true, 1, 1, 1, 1)));
        assertTrue(
                refused.line().startsWith("run.csv: line 2 names 4 columns and the line below has 8"), refused.line());
    }

    @Test
    void aRowOfUnitsAndLinesBeforeTheHeaderAreUnderstood() {
        String text = "Session,Tarnhollow\nDriver,\"A, B\"\n\nTime,Speed,Brake,Lat Acc\n\"s\",\"km/h\",\"bar\",\"g\"\n";
        String rows = table("", ",", false, 1, 3.6, 1, 1 / 9.80665).stripLeading();
        assertPlain(read(text + rows));
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "windows-1252"})
    void encodingsAreFound(String name) {
        String text = table("Zeit (s);Geschwindigkeit (km/h);Bremse;Lat Acc (m/s²)", ";", true, 1, 3.6, 1, 1);
        assertPlain(read(text.getBytes(Charset.forName(name)), ColumnWish.NONE, Cut.NONE));
        String marked = "\uFEFF" + text;
        if (!name.equals("windows-1252")) {
            assertPlain(read(marked.getBytes(Charset.forName(name)), ColumnWish.NONE, Cut.NONE));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void anyEndOfLineWillDo(String end) {
        String text = table("time_s,speed_mps,brake,lateral_acceleration_mps2", ",", false, 1, 1, 1, 1);
        assertPlain(read(text.replace("\n", end)));
    }

    /** A blank line below the units, as some loggers write, changes nothing. */
    @Test
    void unitsAreReadOverABlankLine() {
        String header = "Time,Speed,Brake,Lateral acceleration\ns,km/h,bar,m/s^2";
        assertPlain(read(table(header + "\n", ",", false, 1, 3.6, 1, 1)));
        assertPlain(read(table(header + "\n,,,", ",", false, 1, 3.6, 1, 1)));
    }

    @Test
    void theUserNamesColumnsAndUnits() {
        String text = table("a,b,c,d", ",", false, 1, 3.6, 1, -1);
        ColumnWish wish = ColumnWish.of("time=a,speed=b:km/h,brake=c,lateral=d:-m/s2");
        RecordedFile file = read(text.getBytes(StandardCharsets.UTF_8), wish, Cut.NONE);
        assertPlain(file);
        assertTrue(file.channels().stream().noneMatch(RecordedFile.FoundChannel::guessed));
        InputException e = assertThrows(
                InputException.class,
                () -> read(text.getBytes(StandardCharsets.UTF_8), ColumnWish.of("speed=v"), Cut.NONE));
        assertEquals("run.csv: speed: v: no such column; there are a, b, c, d", e.line());
    }

    @Test
    void wrongWishesAreRefused() {
        assertRefused("--columns: sped: must be one of", "sped=a");
        assertRefused("--columns: furlong: is no unit of distance; known are m, km, cm, ft, mi", "distance=a:furlong");
        assertRefused("--columns: speed: must be NAME=COLUMN", "speed");
        assertRefused("--columns: speed: is given twice", "speed=a,speed=b");
        assertRefused("nowhere.json: no such file", "nowhere.json");
    }

    private static void assertRefused(String start, String wish) {
        String line =
                assertThrows(InputException.class, () -> ColumnWish.of(wish)).line();
        assertTrue(line.startsWith(start), line);
    }

    /** Each kind of bad row is named by its line, and the rest is used. */
    @Test
    void whatCannotBeUsedIsToldByLine() {
        String[] lines = table("time_s,speed_mps,brake,lateral_acceleration_mps2", ",", false, 1, 1, 1, 1)
                .split("\n");
        lines[10] = lines[9];
        lines[20] = "1.0,20,0,0";
        lines[30] = "later,20,0,0";
        lines[35] = lines[35].replaceFirst(",[^,]*,", ",n/a,");
        lines[40] = lines[40].replaceFirst(",[^,]*,", ",fast,");
        lines[41] = lines[41].replaceFirst(",[^,]*,", ",fast,");
        lines[42] = lines[42].replaceFirst(",[^,]*,", ",faster,");
        lines[50] = lines[50].replaceFirst(",[^,]*,", ",9999,");
        lines[60] = ",,,";
        lines[70] = lines[70].replaceFirst(",[^,]*,", ",,");
        lines[80] = lines[80].replaceFirst(",[^,]*$", "");
        RecordedFile file = read(String.join("\n", lines));
        List<String> told = file.leftOut().stream()
                .map(u -> u.firstLine() + "-" + u.lastLine() + " " + u.reason() + ": " + u.text())
                .toList();
        assertEquals(
                List.of(
                        "11-11 same time as the row before: ",
                        "21-21 time goes back: ",
                        "31-31 time that is no number: later",
                        "31-31 no time: the row is not used: ",
                        "41-42 speed that is no number: fast",
                        "43-43 speed that is no number: faster",
                        "51-51 speed that cannot be: 9999",
                        "61-61 no number in any column that is used: ",
                        "81-81 fewer values than the head line: the rest is missing: "),
                told);
        assertEquals(296, file.laps().get(0).recording().rows());
        RecordedFile.FoundChannel speed = file.channels().stream()
                .filter(channel -> channel.name().equals("speed"))
                .findFirst()
                .orElseThrow();
        assertEquals(2, speed.missing(), "empty, and n/a");
        assertEquals(4, speed.unreadable());
        assertEquals(
                List.of("speed_mps"),
                file.leftOut().stream()
                        .filter(u -> u.reason().startsWith("speed"))
                        .map(RecordedFile.Unused::column)
                        .distinct()
                        .toList());
        assertTrue(Double.isNaN(file.laps().get(0).recording().column(Channel.SPEED)[38]));
    }

    @Test
    void lapsAreTakenApart() {
        StringBuilder text = new StringBuilder("lap,time_s,speed_mps,lateral_acceleration_mps2\n");
        for (int i = 0; i < 300; i++) {
            text.append(3 + i / 100).append(',').append(0.1 * i).append(i % 2 == 0 ? ",30,0\n" : ",30.01,1\n");
        }
        RecordedFile file = read(text.toString());
        assertEquals(
                List.of(3L, 4L, 5L),
                file.laps().stream().map(RecordedFile.Lap::number).toList());
        Cut cut = new Cut(OptionalDouble.of(60), OptionalDouble.of(120), OptionalLong.of(4));
        RecordedFile part = read(text.toString().getBytes(StandardCharsets.UTF_8), ColumnWish.NONE, cut);
        assertEquals(1, part.laps().size());
        Recording recording = part.laps().get(0).recording();
        assertEquals(60, recording.origin(), 3.1);
        assertEquals(20, recording.rows(), 1);
    }

    @Test
    void aClockThatStartsAnewStartsALap() {
        String table = table("time_s,speed_mps,brake,lateral_acceleration_mps2", ",", false, 1, 1, 1, 1);
        String rows = table.substring(table.indexOf('\n') + 1);
        assertEquals(2, read(table + rows).laps().size());
    }

    @Test
    void clocksAndDatesAreSeconds() {
        assertEquals(83.456, ClockText.parse("1:23.456"), 1e-9);
        assertEquals(3 * 3600 + 25 * 60 + 1.5, ClockText.parse("3:25:01,5"), 1e-9);
        double morning = ClockText.parse("2026-05-01T08:00:00.250Z");
        assertEquals(3600, ClockText.parse("2026-05-01T09:00:00.250+00:00") - morning, 1e-6);
        assertEquals(0, ClockText.parse("2026-05-01 08:00:00.250") - morning, 1e-6);
        assertTrue(Double.isNaN(ClockText.parse("2026-13-01T08:00:00Z")));
        assertTrue(Double.isNaN(ClockText.parse("noon")));
    }

    /** A degree of latitude at the equator and at 45°, and one of longitude there (WGS 84; from memory). */
    @Test
    void degreesBecomeMetres() {
        assertEquals(110_574, new LocalPlane(0, 0).north(1), 1);
        assertEquals(111_132, new LocalPlane(45, 0).north(46), 1);
        assertEquals(78_847, new LocalPlane(45, 7).east(8), 1);
        assertEquals(78_847, new LocalPlane(45, 179.5).east(-179.5), 1);
    }

    @Test
    void gpxIsRead() {
        StringBuilder text = new StringBuilder(
                "<?xml version=\"1.0\"?>\n<gpx xmlns=\"http://www.topografix.com/GPX/1/1\">" + "<trk><trkseg>\n");
        for (int i = 0; i < 60; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "<trkpt lat=\"%.7f\" lon=\"20\"><ele>3</ele><time>2026-05-01T08:00:%02dZ</time></trkpt>%n",
                    48 + i * 2e-4,
                    i));
        }
        RecordedFile file = read(text.append("</trkseg></trk></gpx>").toString());
        assertEquals(60, file.rows());
        Recording recording = file.laps().get(0).recording();
        assertFalse(recording.has(Channel.SPEED));
        assertNotNull(file.origin());
        // 2e-4 degrees of latitude at 48° are 22.24 m: 111 200 m a degree (WGS 84; from memory).
        assertEquals(22.24, recording.column(Channel.Y)[1], 0.01);
    }

    /** A file that names another, or itself without end, is not followed. */
    @Test
    void entitiesAreNotFollowed() {
        String text = "<?xml version=\"1.0\"?><!DOCTYPE gpx [<!ENTITY a SYSTEM \"file:///etc/hostname\">"
                + "<!ENTITY b \"&b;&b;\">]><gpx><trk><trkseg><trkpt lat=\"&a;\" lon=\"1\"/>&b;</trkseg></trk></gpx>";
        String line = assertThrows(InputException.class, () -> read(text)).line();
        assertEquals(1, line.lines().count());
        assertFalse(line.contains("Exception"), line);
    }

    @Test
    void anUnclosedQuoteDoesNotSwallowTheRest() {
        String text = table("time_s,speed_mps,brake,lateral_acceleration_mps2", ",", false, 1, 1, 1, 1);
        String quoted = text.replaceFirst("\n0.5", "\n\"0.5");
        assertPlain(read(quoted));
    }

    @Test
    void aLineWithoutEndIsCutNotKept() {
        byte[] bytes = new byte[20_000_000];
        java.util.Arrays.fill(bytes, (byte) 'x');
        assertThrows(InputException.class, () -> read(bytes, ColumnWish.NONE, Cut.NONE));
    }

    @Provide
    Arbitrary<byte[]> bytes() {
        Arbitrary<byte[]> any = Arbitraries.bytes().array(byte[].class).ofMaxSize(3000);
        Arbitrary<byte[]> written = Arbitraries.strings()
                .withChars(",;\t\n\r\"'.-0123456789eEtimspdlak<>/= ")
                .ofMaxLength(2000)
                .map(text -> text.getBytes(StandardCharsets.UTF_8));
        Arbitrary<byte[]> table = Arbitraries.integers()
                .between(0, Integer.MAX_VALUE)
                .tuple2()
                .flatMap(seed -> Arbitraries.randomValue(random -> {
                    byte[] good = table("time_s,speed_mps,brake,lateral_acceleration_mps2", ",", false, 1, 1, 1, 1)
                            .getBytes(StandardCharsets.UTF_8);
                    int changes = random.nextInt(40);
                    for (int i = 0; i < changes; i++) {
                        good[random.nextInt(good.length)] = (byte) random.nextInt(256);
                    }
                    return good;
                }));
        return Arbitraries.oneOf(any, written, table);
    }

    /** Any bytes give a result or one clear line. */
    @Property(tries = 600)
    void anyBytesAreAnsweredOrRefusedInOneLine(@ForAll("bytes") byte[] bytes) {
        try {
            RecordedFile file = read(bytes, ColumnWish.NONE, Cut.NONE);
            Cleaning quick = new Cleaning(0.1, 0.005, 0.9, 1, 1);
            file.laps().forEach(lap -> MeasuredLap.of(lap, quick));
        } catch (InputException refused) {
            assertEquals(1, refused.line().lines().count(), refused.line());
        } catch (InvalidValueException refused) {
            assertEquals(1, refused.getMessage().lines().count(), refused.getMessage());
        }
    }
}
