package org.foreload.examples.picture;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.image.ImageObserver;
import java.text.AttributedCharacterIterator;

/** Draws with another graphics: the methods that are older than Java 2D. */
abstract class PassedGraphics extends Graphics2D {

    final Graphics2D to;

    PassedGraphics(Graphics2D to) {
        this.to = to;
    }

    @Override
    public void clearRect(int a0, int a1, int a2, int a3) {
        to.clearRect(a0, a1, a2, a3);
    }

    @Override
    public void clipRect(int a0, int a1, int a2, int a3) {
        to.clipRect(a0, a1, a2, a3);
    }

    @Override
    public void copyArea(int a0, int a1, int a2, int a3, int a4, int a5) {
        to.copyArea(a0, a1, a2, a3, a4, a5);
    }

    @Override
    public void dispose() {
        to.dispose();
    }

    @Override
    public void drawArc(int a0, int a1, int a2, int a3, int a4, int a5) {
        to.drawArc(a0, a1, a2, a3, a4, a5);
    }

    @Override
    public boolean drawImage(Image a0, int a1, int a2, Color a3, ImageObserver a4) {
        return to.drawImage(a0, a1, a2, a3, a4);
    }

    @Override
    public boolean drawImage(Image a0, int a1, int a2, int a3, int a4, Color a5, ImageObserver a6) {
        return to.drawImage(a0, a1, a2, a3, a4, a5, a6);
    }

    @Override
    public boolean drawImage(
            Image a0, int a1, int a2, int a3, int a4, int a5, int a6, int a7, int a8, Color a9, ImageObserver a10) {
        return to.drawImage(a0, a1, a2, a3, a4, a5, a6, a7, a8, a9, a10);
    }

    @Override
    public boolean drawImage(
            Image a0, int a1, int a2, int a3, int a4, int a5, int a6, int a7, int a8, ImageObserver a9) {
        return to.drawImage(a0, a1, a2, a3, a4, a5, a6, a7, a8, a9);
    }

    @Override
    public boolean drawImage(Image a0, int a1, int a2, int a3, int a4, ImageObserver a5) {
        return to.drawImage(a0, a1, a2, a3, a4, a5);
    }

    @Override
    public boolean drawImage(Image a0, int a1, int a2, ImageObserver a3) {
        return to.drawImage(a0, a1, a2, a3);
    }

    @Override
    public void drawLine(int a0, int a1, int a2, int a3) {
        to.drawLine(a0, a1, a2, a3);
    }

    @Override
    public void drawOval(int a0, int a1, int a2, int a3) {
        to.drawOval(a0, a1, a2, a3);
    }

    @Override
    public void drawPolygon(int[] a0, int[] a1, int a2) {
        to.drawPolygon(a0, a1, a2);
    }

    @Override
    public void drawPolyline(int[] a0, int[] a1, int a2) {
        to.drawPolyline(a0, a1, a2);
    }

    @Override
    public void drawRoundRect(int a0, int a1, int a2, int a3, int a4, int a5) {
        to.drawRoundRect(a0, a1, a2, a3, a4, a5);
    }

    @Override
    public void drawString(String a0, int a1, int a2) {
        to.drawString(a0, a1, a2);
    }

    @Override
    public void drawString(AttributedCharacterIterator a0, int a1, int a2) {
        to.drawString(a0, a1, a2);
    }

    @Override
    public void fillArc(int a0, int a1, int a2, int a3, int a4, int a5) {
        to.fillArc(a0, a1, a2, a3, a4, a5);
    }

    @Override
    public void fillOval(int a0, int a1, int a2, int a3) {
        to.fillOval(a0, a1, a2, a3);
    }

    @Override
    public void fillPolygon(int[] a0, int[] a1, int a2) {
        to.fillPolygon(a0, a1, a2);
    }

    @Override
    public void fillRect(int a0, int a1, int a2, int a3) {
        to.fillRect(a0, a1, a2, a3);
    }

    @Override
    public void fillRoundRect(int a0, int a1, int a2, int a3, int a4, int a5) {
        to.fillRoundRect(a0, a1, a2, a3, a4, a5);
    }

    @Override
    public Shape getClip() {
        return to.getClip();
    }

    @Override
    public Rectangle getClipBounds() {
        return to.getClipBounds();
    }

    @Override
    public Color getColor() {
        return to.getColor();
    }

    @Override
    public Font getFont() {
        return to.getFont();
    }

    @Override
    public void setClip(int a0, int a1, int a2, int a3) {
        to.setClip(a0, a1, a2, a3);
    }

    @Override
    public void setClip(Shape a0) {
        to.setClip(a0);
    }

    @Override
    public void setColor(Color a0) {
        to.setColor(a0);
    }

    @Override
    public void setFont(Font a0) {
        to.setFont(a0);
    }

    @Override
    public void setPaintMode() {
        to.setPaintMode();
    }

    @Override
    public void setXORMode(Color a0) {
        to.setXORMode(a0);
    }

    @Override
    public void translate(int a0, int a1) {
        to.translate(a0, a1);
    }
}
