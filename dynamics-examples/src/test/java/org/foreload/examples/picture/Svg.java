package org.foreload.examples.picture;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Reads what a picture holds. */
public final class Svg {

    private Svg() {}

    /** The root of a picture; fails if it is not well-formed. */
    public static Element parse(String svg) {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg)))
                    .getDocumentElement();
        } catch (Exception e) {
            throw new AssertionError("not well-formed", e);
        }
    }

    /** All words in it. */
    public static List<String> texts(Element root) {
        return elements(root, "text").stream().map(Element::getTextContent).toList();
    }

    /** All names in it, that of the root too. */
    static List<String> ids(Element root) {
        return elements(root, "*").stream()
                .map(one -> one.getAttribute("id"))
                .filter(id -> !id.isEmpty())
                .toList();
    }

    /** Left end and width of each level text; the rotated ones are left out. */
    static List<double[]> places(Element root) {
        List<double[]> places = new ArrayList<>();
        for (Element text : elements(root, "text")) {
            String turned = value(text, "transform");
            if (!turned.isEmpty() && !turned.startsWith("matrix(1,0,0,1") && !turned.startsWith("translate")) {
                continue;
            }
            int size = Integer.parseInt(value(text, "font-size").replace("px", ""));
            FixedFont font = value(text, "font-weight").equals("bold") ? FixedFont.bold(size) : FixedFont.plain(size);
            places.add(new double[] {Double.parseDouble(text.getAttribute("x")), font.width(text.getTextContent())});
        }
        return places;
    }

    /** An attribute of an element, or of the nearest around it that has it. */
    private static String value(Element element, String name) {
        String own = element.getAttribute(name);
        return own.isEmpty() && element.getParentNode() instanceof Element around ? value(around, name) : own;
    }

    /** Corners of the first open path in a colour: x, y, x, y … */
    static double[] line(Element root, String rgb) {
        Element path = elements(root, "path").stream()
                .filter(one -> value(one, "stroke").equals("rgb(" + rgb + ")"))
                .filter(one -> !one.getAttribute("d").endsWith("Z"))
                .findFirst()
                .orElseThrow();
        return numbers(path.getAttribute("d"));
    }

    /** Left, top, right, bottom of the chart: that of its clip, which is the last one. */
    static double[] frame(Element root) {
        List<Element> clips = elements(root, "clipPath");
        Element last = clips.get(clips.size() - 1);
        double[] corners = numbers(elements(last, "path").get(0).getAttribute("d"));
        double[] x = new double[corners.length / 2];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = corners[2 * i];
            y[i] = corners[2 * i + 1];
        }
        return new double[] {
            Arrays.stream(x).min().orElseThrow(),
            Arrays.stream(y).min().orElseThrow(),
            Arrays.stream(x).max().orElseThrow(),
            Arrays.stream(y).max().orElseThrow()
        };
    }

    private static double[] numbers(String path) {
        return Arrays.stream(path.split("[MLZ, ]+"))
                .filter(part -> !part.isEmpty())
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static List<Element> elements(Element root, String tag) {
        NodeList list = root.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < list.getLength(); i++) {
            elements.add((Element) list.item(i));
        }
        return elements;
    }
}
