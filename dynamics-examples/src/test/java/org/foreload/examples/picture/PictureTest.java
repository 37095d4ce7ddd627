package org.foreload.examples.picture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.foreload.examples.picture.BarChart.Bar;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart.Side;
import org.foreload.file.InputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of made-up numbers: what is in the files, and that it is the same each time. */
class PictureTest {

    @TempDir
    private Path directory;

    private static XyChart chart() {
        return XyChart.of(Axis.of("way", "m"), Axis.of("speed", "m/s"))
                .heading("A & B")
                .line("rising", new double[] {0, 1, 2}, new double[] {0, 10, 20}, Style.FIRST)
                .line("falling", new double[] {0, 1, 2}, new double[] {20, 10, 0}, Style.SECOND.with(Marker.SQUARE))
                .area("below", new double[] {0, 2, 2}, new double[] {0, 0, 20}, Style.AIDE)
                .markX(1, "here")
                .markY(15, "so high")
                .label(2, 20, "top", Side.LEFT);
    }

    private static Picture picture() {
        return new Picture(
                "A title <first>",
                "What to see & why",
                List.of(
                        List.of(chart(), chart().equal()),
                        List.of(ChartStack.of(chart(), chart())),
                        List.of(new BarChart(
                                "Bars",
                                Axis.of("gain", "s"),
                                List.of(
                                        Bar.of("one", 1, "1.0", Ink.BLUE),
                                        new Bar("two", -2, -3, -1, "-2.0", Ink.VERMILION))))));
    }

    /** What is positive to the left stands to the left, in a chart to scale too. */
    @Test
    void anAxisToTheLeftRisesToTheLeft() {
        Axis across = Axis.of("cornering, left positive", "%").between(-100, 100);
        assertFalse(Look.axis(across, -100, 100).isInverted());
        assertTrue(Look.axis(across.toTheLeft().between(-110, 110), -110, 110).isInverted());
    }

    @Test
    void svgTellsTitleCaptionAxesSeriesAndMarks() {
        var root = Svg.parse(picture().svg());
        assertEquals("img", root.getAttribute("role"));
        assertEquals(
                "A title <first>", root.getElementsByTagName("title").item(0).getTextContent());
        assertEquals(
                "What to see & why", root.getElementsByTagName("desc").item(0).getTextContent());
        String labelled = root.getAttribute("aria-labelledby");
        for (String id : labelled.split(" ")) {
            assertTrue(Svg.ids(root).contains(id), id);
        }
        List<String> texts = Svg.texts(root);
        for (String wanted : List.of(
                "way, m",
                "speed, m/s",
                "rising",
                "falling",
                "below",
                "here",
                "so high",
                "top",
                "A & B",
                "gain, s",
                "one",
                "two",
                "1.0",
                "-2.0")) {
            assertTrue(texts.contains(wanted), wanted + " in " + texts);
        }
    }

    @Test
    void thePictureIsTheSameEachTimeAndOnManyThreads() {
        String first = picture().svg();
        List<String> many = Stream.generate(() -> 0)
                .limit(8)
                .parallel()
                .map(one -> picture().svg())
                .toList();
        many.forEach(one -> assertEquals(first, one));
        assertArrayEquals(picture().png(1), picture().png(1));
    }

    @Test
    void namesInsideDifferFromPictureToPicture() {
        List<String> some = Svg.ids(Svg.parse(picture().svg()));
        List<String> others =
                Svg.ids(Svg.parse(Picture.of("Another", "caption", chart()).svg()));
        assertFalse(some.isEmpty());
        assertTrue(some.stream().noneMatch(others::contains), some + " " + others);
    }

    @Test
    void pngHasTheSizeAskedForAndIsNotBlank() throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture().png(2)));
        assertEquals(2 * Picture.WIDTH, image.getWidth());
        assertEquals(2 * picture().height(), image.getHeight());
        assertEquals(Color.WHITE.getRGB(), image.getRGB(0, 0));
        int blue = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < image.getHeight(); y++) {
                blue += image.getRGB(x, y) == new Color(0x0072B2).getRGB() ? 1 : 0;
            }
        }
        assertTrue(blue > 500, "blue pixels: " + blue);
        assertThrows(InputException.class, () -> picture().png(0));
    }

    /**
     * The line through (0, 0), (1, 10), (2, 20) is straight, and its ends are where the axis says 0 and 2, 0 and 20.
     */
    @Test
    void aLineIsDrawnWhereItsNumbersAre() {
        Axis x = Axis.of("way", "m").between(0, 2);
        Axis y = Axis.of("speed", "m/s").between(0, 20);
        XyChart chart = XyChart.of(x, y).line("", new double[] {0, 1, 2}, new double[] {0, 10, 20}, Style.FIRST);
        var root = Svg.parse(Picture.of("t", "c", chart).svg());
        double[] line = Svg.line(root, "0,114,178");
        double[] frame = Svg.frame(root);
        assertEquals(6, line.length);
        assertArrayEquals(
                new double[] {
                    frame[0], frame[3], (frame[0] + frame[2]) / 2, (frame[1] + frame[3]) / 2, frame[2], frame[1]
                },
                line,
                0.02);
    }

    @Test
    void aUnitIsEquallyLongOnBothAxesOfAPlan() {
        XyChart square = XyChart.of(Axis.of("east", "m"), Axis.of("north", "m"))
                .line("", new double[] {0, 40, 40}, new double[] {0, 0, 40}, Style.FIRST)
                .equal();
        double[] line = Svg.line(Svg.parse(Picture.of("t", "c", square).svg()), "0,114,178");
        assertEquals(line[2] - line[0], line[3] - line[5], 0.05);
    }

    /** Where words go depends on no font of the machine: each text begins inside the picture and ends inside it. */
    @Test
    void noTextIsCutOff() {
        for (double[] text : Svg.places(Svg.parse(picture().svg()))) {
            assertTrue(text[0] >= 0 && text[0] + text[1] <= Picture.WIDTH, text[0] + " " + text[1]);
        }
    }

    /** Beside a low chart the words of the upright axis are smaller, so that they end inside it. */
    @Test
    void wordsBesideALowChartAreNotCutOff() {
        XyChart low = XyChart.of(Axis.of("way", "m"), Axis.of("lateral acceleration", "m/s²"))
                .line("", new double[] {0, 1}, new double[] {0, 1}, Style.FIRST);
        String words = low.y().text();
        assertTrue(FixedFont.of(Look.WORDS).width(words) > 140 - Look.BOTTOM);
        assertTrue(FixedFont.of(XyDrawing.upright(low, true, 180)).width(words) <= 180 - Look.BOTTOM + 8);
        assertEquals(Look.WORDS.getSize(), XyDrawing.upright(low, true, 300).getSize());
    }

    @Test
    void anAxisNeedsAUnit() {
        assertThrows(IllegalArgumentException.class, () -> Axis.of("speed", " "));
        assertThrows(
                IllegalArgumentException.class, () -> Axis.of("speed", "m/s").between(2, 1));
    }

    @Test
    void stylesDifferInMoreThanTheirInk() {
        List<Style> styles = List.of(Style.FIRST, Style.SECOND, Style.THIRD, Style.FOURTH, Style.AIDE);
        for (Style one : styles) {
            for (Style other : styles) {
                if (one != other) {
                    assertNotEquals(one.dash(), other.dash());
                }
            }
        }
    }

    @Test
    void aPictureIsSavedByItsSuffix() throws IOException {
        Path svg = directory.resolve("a.SVG");
        Path png = directory.resolve("a.png");
        picture().save(svg);
        picture().save(png);
        assertEquals(picture().svg(), Files.readString(svg, StandardCharsets.UTF_8));
        assertEquals(2 * Picture.WIDTH, ImageIO.read(png.toFile()).getWidth());
        try (Stream<Path> files = Files.list(directory)) {
            assertEquals(2, files.count());
        }
    }

    @Test
    void aPlaceThatCannotBeIsRefusedInOneLine() {
        assertEquals("must end with .svg or .png", refusal(directory.resolve("a.jpg")));
        assertEquals("must end with .svg or .png", refusal(directory.resolve("svg")));
        assertEquals(
                "must be in a folder that is there",
                refusal(directory.resolve("no").resolve("a.svg")));
        Path folder = directory.resolve("b.svg");
        assertTrue(folder.toFile().mkdir());
        assertEquals("must be a file, not a folder", refusal(folder));
    }

    private static String refusal(Path file) {
        InputException e = assertThrows(InputException.class, () -> picture().save(file));
        assertEquals(file.toString(), e.value());
        assertNull(e.field());
        return e.getMessage();
    }
}
