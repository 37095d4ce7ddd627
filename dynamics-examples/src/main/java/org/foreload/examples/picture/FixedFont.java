package org.foreload.examples.picture;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.awt.font.TextAttribute;
import java.awt.geom.Rectangle2D;
import java.text.AttributedCharacterIterator;
import java.util.Locale;
import java.util.Map;

/**
 * A sans-serif font that knows its widths without any font being installed. The widths are those of a wide font (DejaVu
 * Sans), in thousandths of the size: what is drawn in a narrower one fits as well.
 */
final class FixedFont extends Font {

    private static final long serialVersionUID = 1L;

    /** From the space to the tilde. */
    private static final int[] WIDTHS = {
        318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636,
                636,
        636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557,
                863,
        748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550,
                635,
        615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525,
                636,
        337, 636, 838
    };

    private static final int FIRST = ' ';

    /** Width of any other character. */
    private static final int OTHER = 640;

    private static final double BOLD = 1.12;

    private static final float ASCENT = 0.93f;
    private static final float DESCENT = 0.24f;

    FixedFont(int style, int size) {
        super(Font.SANS_SERIF, style, size);
    }

    static FixedFont plain(int size) {
        return new FixedFont(Font.PLAIN, size);
    }

    static FixedFont bold(int size) {
        return new FixedFont(Font.BOLD, size);
    }

    static FixedFont of(Font font) {
        return font instanceof FixedFont fixed ? fixed : new FixedFont(font.getStyle(), font.getSize());
    }

    /** Width of a text, px. */
    double width(String text) {
        double sum = 0;
        for (int i = 0; i < text.length(); i++) {
            int index = text.charAt(i) - FIRST;
            sum += index >= 0 && index < WIDTHS.length ? WIDTHS[index] : OTHER;
        }
        return sum * getSize() / 1000 * (isBold() ? BOLD : 1);
    }

    FontMetrics metrics() {
        return new Metrics(this);
    }

    private LineMetrics line(int characters) {
        return new Line(characters, getSize());
    }

    private Rectangle2D bounds(String text) {
        return new Rectangle2D.Double(0, -ASCENT * getSize(), width(text), (ASCENT + DESCENT) * getSize());
    }

    /** The same in another size, and nothing else: still without a font being looked up. */
    @Override
    public Font deriveFont(Map<? extends AttributedCharacterIterator.Attribute, ?> attributes) {
        return attributes.get(TextAttribute.SIZE) instanceof Number size
                ? new FixedFont(getStyle(), size.intValue())
                : this;
    }

    @Override
    public String getFamily() {
        return SANS_SERIF;
    }

    @Override
    public String getFamily(Locale locale) {
        return SANS_SERIF;
    }

    @Override
    public LineMetrics getLineMetrics(String text, FontRenderContext context) {
        return line(text.length());
    }

    @Override
    public LineMetrics getLineMetrics(String text, int begin, int limit, FontRenderContext context) {
        return line(limit - begin);
    }

    @Override
    public Rectangle2D getStringBounds(String text, FontRenderContext context) {
        return bounds(text);
    }

    @Override
    public Rectangle2D getStringBounds(String text, int begin, int limit, FontRenderContext context) {
        return bounds(text.substring(begin, limit));
    }

    /** The same for those who ask a graphics. */
    private static final class Metrics extends FontMetrics {

        private static final long serialVersionUID = 1L;

        private final FixedFont fixed;

        Metrics(FixedFont font) {
            super(font);
            fixed = font;
        }

        @Override
        public int getAscent() {
            return Math.round(ASCENT * fixed.getSize());
        }

        @Override
        public int getDescent() {
            return Math.round(DESCENT * fixed.getSize());
        }

        @Override
        public int charWidth(char one) {
            return stringWidth(String.valueOf(one));
        }

        @Override
        public int charWidth(int codePoint) {
            return stringWidth(Character.toString(codePoint));
        }

        @Override
        public int charsWidth(char[] data, int from, int length) {
            return stringWidth(new String(data, from, length));
        }

        @Override
        public int stringWidth(String text) {
            return (int) Math.ceil(fixed.width(text));
        }

        @Override
        public LineMetrics getLineMetrics(String text, Graphics context) {
            return fixed.line(text.length());
        }

        @Override
        public Rectangle2D getStringBounds(String text, Graphics context) {
            return fixed.bounds(text);
        }
    }

    /** Heights of a line. */
    private static final class Line extends LineMetrics {

        private final int characters;
        private final float size;

        Line(int characters, float size) {
            this.characters = characters;
            this.size = size;
        }

        @Override
        public int getNumChars() {
            return characters;
        }

        @Override
        public float getAscent() {
            return ASCENT * size;
        }

        @Override
        public float getDescent() {
            return DESCENT * size;
        }

        @Override
        public float getLeading() {
            return 0;
        }

        @Override
        public float getHeight() {
            return (ASCENT + DESCENT) * size;
        }

        @Override
        public int getBaselineIndex() {
            return ROMAN_BASELINE;
        }

        @Override
        public float[] getBaselineOffsets() {
            return new float[] {0, -ASCENT * size / 2, -ASCENT * size};
        }

        @Override
        public float getStrikethroughOffset() {
            return -ASCENT * size / 3;
        }

        @Override
        public float getStrikethroughThickness() {
            return 1;
        }

        @Override
        public float getUnderlineOffset() {
            return 1;
        }

        @Override
        public float getUnderlineThickness() {
            return 1;
        }
    }
}
