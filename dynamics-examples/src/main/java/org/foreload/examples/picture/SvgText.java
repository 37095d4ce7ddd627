package org.foreload.examples.picture;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGeneratorContext.GraphicContextDefaults;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Drawings as the text of an SVG element: the same drawing, the same text. */
final class SvgText {

    private static final String NAMESPACE = "http://www.w3.org/2000/svg";

    /** Decimals of a px: a hundredth is finer than any screen. */
    private static final int DECIMALS = 2;

    /** Size of words that have none of their own, px; all have. */
    private static final int DEFAULT_SIZE = 12;

    private final Document document;
    private final SVGGraphics2D graphics;
    private final int width;
    private final int height;
    private final String name;

    /**
     * @param width px
     * @param height px
     * @param name of the element; begins all names inside, so that several elements can stand in one page
     */
    SvgText(int width, int height, String name) {
        this.width = width;
        this.height = height;
        this.name = name;
        document = document();
        SVGGeneratorContext context = context(document);
        context.setIDGenerator(new SVGIDGenerator() {
            @Override
            public String generateID(String prefix) {
                return name + super.generateID(prefix);
            }
        });
        graphics = new SVGGraphics2D(context, false);
        graphics.setSVGCanvasSize(new Dimension(width, height));
    }

    /** A graphics that is measured without fonts and draws into nothing. */
    static Graphics2D nowhere() {
        return new MeasuredGraphics(new SVGGraphics2D(context(document()), false));
    }

    private static SVGGeneratorContext context(Document document) {
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setPrecision(DECIMALS);
        context.setComment(null);
        // Its own default would have to be looked up among the fonts of the machine, which may have none.
        GraphicContextDefaults defaults = new GraphicContextDefaults();
        defaults.setFont(FixedFont.plain(DEFAULT_SIZE));
        context.setGraphicContextDefaults(defaults);
        return context;
    }

    private static Document document() {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(NAMESPACE, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Draws. */
    SvgText draw(Consumer<Graphics2D> drawing) {
        drawing.accept(new MeasuredGraphics(graphics));
        return this;
    }

    /**
     * The element.
     *
     * @param title read to those who do not see the drawing
     * @param caption read to them, too; empty for none
     */
    String element(String title, String caption) {
        Element root = graphics.getRoot();
        root.setAttribute("id", name);
        root.setAttribute("viewBox", "0 0 " + width + " " + height);
        root.setAttribute("role", "img");
        Node first = root.getFirstChild();
        root.insertBefore(said("title", name + "t", title), first);
        root.setAttribute("aria-labelledby", name + "t");
        if (!caption.isEmpty()) {
            root.insertBefore(said("desc", name + "d", caption), first);
            root.setAttribute("aria-labelledby", name + "t " + name + "d");
        }
        if ("genericDefs".equals(((Element) first).getAttribute("id"))) {
            root.removeChild(first); // Always empty here, and of the same name in each drawing.
        }
        StringWriter text = new StringWriter();
        try {
            graphics.stream(root, text, false, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String whole = text.toString();
        return whole.substring(whole.indexOf("<svg")).strip();
    }

    private Element said(String tag, String id, String text) {
        Element element = document.createElementNS(NAMESPACE, tag);
        element.setAttribute("id", id);
        element.setTextContent(text);
        return element;
    }
}
