package org.foreload.examples.picture;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.foreload.file.InputException;

/**
 * A picture: a title, rows of panels, and a caption that says what to see. The same picture has the same bytes each
 * time.
 *
 * @param title what it shows
 * @param caption what to see in it, with the numbers
 * @param rows panels from top to bottom; those of a row stand side by side
 */
public record Picture(String title, String caption, List<List<Panel>> rows) {

    static {
        // A picture never needs a screen, and a machine may have none.
        System.setProperty("java.awt.headless", "true");
    }

    /** Width, px. */
    public static final int WIDTH = 880;

    private static final double EDGE = 16;
    private static final double GAP = 10;
    private static final double TITLE_LINE = 20;
    private static final double CAPTION_LINE = 16;
    private static final FixedFont TITLE = FixedFont.bold(15);
    private static final FixedFont CAPTION = FixedFont.plain(12);

    /** Copies the rows. */
    public Picture {
        Objects.requireNonNull(title);
        Objects.requireNonNull(caption);
        rows = rows.stream().map(List::copyOf).toList();
    }

    /** A picture with panels below each other. */
    public static Picture of(String title, String caption, Panel... panels) {
        List<List<Panel>> rows = new ArrayList<>();
        for (Panel panel : panels) {
            rows.add(List.of(panel));
        }
        return new Picture(title, caption, rows);
    }

    /** The same with more words below it. */
    public Picture plus(String words) {
        return new Picture(title, caption + " " + words, rows);
    }

    /** Height, px. */
    public int height() {
        double height = 2 * EDGE + TITLE_LINE * lines(title, TITLE).size();
        for (List<Panel> row : rows) {
            height += rowHeight(row) + GAP;
        }
        return (int) Math.ceil(height + CAPTION_LINE * lines(caption, CAPTION).size());
    }

    /** The picture as SVG, with title and caption for those who have it read to them. It needs no font. */
    public String svg() {
        return new SvgText(WIDTH, height(), name()).draw(this::draw).element(title, caption) + "\n";
    }

    /**
     * The picture as PNG.
     *
     * @param scale pixels per px of the layout, 1 to 8
     * @throws InputException if this machine has no font to write with
     */
    public byte[] png(int scale) {
        if (!(scale >= 1 && scale <= 8)) {
            throw new InputException(null, "scale", String.valueOf(scale), "must be a whole number from 1 to 8");
        }
        requireFonts();
        BufferedImage image = new BufferedImage(WIDTH * scale, height() * scale, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        graphics.scale(scale, scale);
        draw(new MeasuredGraphics(graphics));
        graphics.dispose();
        try (ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            ImageIO.write(image, "png", bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Writes the picture, as a whole or not at all.
     *
     * @param file ends with {@code .svg} or {@code .png}
     * @throws InputException if it does not, or cannot be written
     */
    public void save(Path file) {
        PictureFile.at(null, file).write(this);
    }

    /**
     * Makes sure that PNG can be drawn here.
     *
     * @throws InputException if this machine has no font
     */
    static void requireFonts() {
        try {
            new java.awt.Font("SansSerif", java.awt.Font.PLAIN, 12)
                    .getStringBounds("m", new FontRenderContext(null, true, true));
        } catch (RuntimeException | LinkageError | InternalError e) {
            throw new InputException(
                    null,
                    null,
                    null,
                    "PNG needs a font on this machine: install fontconfig and one like DejaVu Sans, or ask for .svg");
        }
    }

    private void draw(Graphics2D graphics) {
        graphics.setPaint(java.awt.Color.WHITE);
        graphics.fill(new Rectangle2D.Double(0, 0, WIDTH, height()));
        double y = EDGE + write(graphics, title, TITLE, EDGE, TITLE_LINE);
        for (List<Panel> row : rows) {
            double height = rowHeight(row);
            double width = columnWidth(row);
            double x = EDGE;
            for (Panel panel : row) {
                panel.draw(graphics, new Rectangle2D.Double(x, y, width, height));
                x += width + GAP;
            }
            y += height + GAP;
        }
        write(graphics, caption, CAPTION, y, CAPTION_LINE);
    }

    /** Writes a text from y downwards; answers its height. */
    private static double write(Graphics2D graphics, String text, FixedFont font, double y, double line) {
        graphics.setFont(font);
        graphics.setPaint(Look.TEXT);
        double base = y;
        for (String part : lines(text, font)) {
            graphics.drawString(part, (float) EDGE, (float) (base + font.getSize()));
            base += line;
        }
        return base - y;
    }

    private static double columnWidth(List<Panel> row) {
        return (WIDTH - 2 * EDGE - GAP * (row.size() - 1)) / row.size();
    }

    private static double rowHeight(List<Panel> row) {
        double width = columnWidth(row);
        return row.stream().mapToDouble(panel -> panel.height(width)).max().orElse(0);
    }

    private static List<String> lines(String text, FixedFont font) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            if (line.length() > 0 && font.width(line + " " + word) > WIDTH - 2 * EDGE) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Names inside the SVG, so that several can stand in one page: the same for the same picture. */
    private String name() {
        CRC32 sum = new CRC32();
        sum.update((title + "\n" + caption).getBytes(StandardCharsets.UTF_8));
        return "p" + Long.toHexString(sum.getValue());
    }
}
