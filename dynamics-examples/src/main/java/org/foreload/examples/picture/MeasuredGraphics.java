package org.foreload.examples.picture;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.Map;

/**
 * Draws with another graphics, but measures text by {@link FixedFont}, so that a picture is laid out the same on every
 * machine, also on one without fonts.
 */
final class MeasuredGraphics extends PassedGraphics {

    MeasuredGraphics(Graphics2D to) {
        super(to);
    }

    @Override
    public Graphics create() {
        return new MeasuredGraphics((Graphics2D) to.create());
    }

    /** Never a font that would have to be looked up: a chart may have kept one of its own that equals ours. */
    @Override
    public Font getFont() {
        return FixedFont.of(super.getFont());
    }

    @Override
    public void setFont(Font font) {
        super.setFont(FixedFont.of(font));
    }

    @Override
    public FontMetrics getFontMetrics(Font font) {
        return FixedFont.of(font).metrics();
    }

    @Override
    public void addRenderingHints(Map<?, ?> a0) {
        to.addRenderingHints(a0);
    }

    @Override
    public void clip(Shape a0) {
        to.clip(a0);
    }

    @Override
    public void draw(Shape a0) {
        to.draw(a0);
    }

    @Override
    public void drawGlyphVector(GlyphVector a0, float a1, float a2) {
        to.drawGlyphVector(a0, a1, a2);
    }

    @Override
    public boolean drawImage(Image a0, AffineTransform a1, ImageObserver a2) {
        return to.drawImage(a0, a1, a2);
    }

    @Override
    public void drawImage(BufferedImage a0, BufferedImageOp a1, int a2, int a3) {
        to.drawImage(a0, a1, a2, a3);
    }

    @Override
    public void drawRenderableImage(RenderableImage a0, AffineTransform a1) {
        to.drawRenderableImage(a0, a1);
    }

    @Override
    public void drawRenderedImage(RenderedImage a0, AffineTransform a1) {
        to.drawRenderedImage(a0, a1);
    }

    @Override
    public void drawString(String a0, float a1, float a2) {
        to.drawString(a0, a1, a2);
    }

    @Override
    public void drawString(AttributedCharacterIterator a0, float a1, float a2) {
        to.drawString(a0, a1, a2);
    }

    @Override
    public void fill(Shape a0) {
        to.fill(a0);
    }

    @Override
    public Color getBackground() {
        return to.getBackground();
    }

    @Override
    public Composite getComposite() {
        return to.getComposite();
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return to.getDeviceConfiguration();
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return to.getFontRenderContext();
    }

    @Override
    public Paint getPaint() {
        return to.getPaint();
    }

    @Override
    public Object getRenderingHint(RenderingHints.Key a0) {
        return to.getRenderingHint(a0);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return to.getRenderingHints();
    }

    @Override
    public Stroke getStroke() {
        return to.getStroke();
    }

    @Override
    public AffineTransform getTransform() {
        return to.getTransform();
    }

    @Override
    public boolean hit(Rectangle a0, Shape a1, boolean a2) {
        return to.hit(a0, a1, a2);
    }

    @Override
    public void rotate(double a0, double a1, double a2) {
        to.rotate(a0, a1, a2);
    }

    @Override
    public void rotate(double a0) {
        to.rotate(a0);
    }

    @Override
    public void scale(double a0, double a1) {
        to.scale(a0, a1);
    }

    @Override
    public void setBackground(Color a0) {
        to.setBackground(a0);
    }

    @Override
    public void setComposite(Composite a0) {
        to.setComposite(a0);
    }

    @Override
    public void setPaint(Paint a0) {
        to.setPaint(a0);
    }

    @Override
    public void setRenderingHint(RenderingHints.Key a0, Object a1) {
        to.setRenderingHint(a0, a1);
    }

    @Override
    public void setRenderingHints(Map<?, ?> a0) {
        to.setRenderingHints(a0);
    }

    @Override
    public void setStroke(Stroke a0) {
        to.setStroke(a0);
    }

    @Override
    public void setTransform(AffineTransform a0) {
        to.setTransform(a0);
    }

    @Override
    public void shear(double a0, double a1) {
        to.shear(a0, a1);
    }

    @Override
    public void transform(AffineTransform a0) {
        to.transform(a0);
    }

    @Override
    public void translate(double a0, double a1) {
        to.translate(a0, a1);
    }
}
