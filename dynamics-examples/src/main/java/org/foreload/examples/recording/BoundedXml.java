package org.foreload.examples.recording;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashSet;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.foreload.file.InputException;

/**
 * XML of any length, piece by piece, in memory that does not grow with it. A parser keeps a comment, a name or an
 * attribute whole, each element until it is closed, and each name it has ever seen: so all of these have a bound.
 * Document types are skipped, and no entity is followed.
 */
final class BoundedXml {

    /** Longest single piece, bytes: a comment or an element's head. Text comes in parts and has no bound. */
    private static final long LONGEST_PIECE = 4L << 20;

    /** Elements inside each other at most; GPX of a logger has ten. */
    private static final int DEEPEST = 100;

    /** Different names of elements and attributes, prefixes and addresses of name spaces; GPX has some dozens. */
    private static final int MOST_NAMES = 10_000;

    private final String file;
    private final Metered in;
    private final XMLStreamReader xml;
    private final Set<String> names = new HashSet<>();
    private int depth;

    /**
     * Begins to read.
     *
     * @param file for errors
     * @throws InputException if the bytes are not XML from the start on
     */
    BoundedXml(InputStream in, String file) {
        this.file = file;
        this.in = new Metered(in);
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        try {
            // Decoded here: about bytes that are no text the parser would complain on the console by itself.
            this.xml = factory.createXMLStreamReader(TextEncoding.reader(this.in));
        } catch (XMLStreamException e) {
            throw refused(e);
        } catch (IOException e) {
            throw new InputException(file, null, null, "cannot be read");
        }
    }

    /** Whether there is more. */
    boolean hasNext() {
        try {
            return xml.hasNext();
        } catch (XMLStreamException e) {
            throw refused(e);
        }
    }

    /**
     * The next piece, a constant of {@link XMLStreamConstants}.
     *
     * @throws InputException if what follows is not XML, or is beyond a bound
     */
    int next() {
        in.sincePiece = 0;
        int piece;
        try {
            piece = xml.next();
        } catch (XMLStreamException e) {
            throw refused(e);
        }
        if (piece == XMLStreamConstants.START_ELEMENT) {
            depth++;
            if (depth > DEEPEST) {
                throw new InputException(
                        file, line(), null, "has more than " + DEEPEST + " elements inside each other");
            }
            names();
        } else if (piece == XMLStreamConstants.END_ELEMENT) {
            depth--;
        } else if (piece == XMLStreamConstants.PROCESSING_INSTRUCTION) {
            name(xml.getPITarget());
        }
        return piece;
    }

    private void names() {
        name(xml.getLocalName());
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            name(xml.getAttributeLocalName(i));
        }
        for (int i = 0; i < xml.getNamespaceCount(); i++) {
            name(xml.getNamespacePrefix(i));
            name(xml.getNamespaceURI(i));
        }
    }

    private void name(String name) {
        if (name != null && names.add(name) && names.size() > MOST_NAMES) {
            throw new InputException(file, line(), null, "has more than " + MOST_NAMES + " different names");
        }
    }

    /** Name of the element that begins or ends here, without prefix. */
    String element() {
        return xml.getLocalName();
    }

    /** An attribute of the element that begins here; null if there is none. */
    String attribute(String name) {
        return xml.getAttributeValue(null, name);
    }

    /** Appends as much of the text here as there is room for. */
    void text(StringBuilder target, int room) {
        target.append(xml.getTextCharacters(), xml.getTextStart(), Math.min(room, xml.getTextLength()));
    }

    /** Line, counted from 1. */
    long lineNumber() {
        return xml.getLocation().getLineNumber();
    }

    private String line() {
        return "line " + lineNumber();
    }

    private InputException refused(XMLStreamException e) {
        if (e.getNestedException() instanceof InputException beyond) {
            return beyond;
        }
        int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
        return new InputException(file, "line " + line, null, "is not XML");
    }

    /** Counts the bytes since the last piece. */
    private final class Metered extends InputStream {

        private final InputStream in;
        private long sincePiece;

        Metered(InputStream in) {
            this.in = in;
        }

        @Override
        public int read() throws IOException {
            count(1);
            return in.read();
        }

        @Override
        public int read(byte[] target, int offset, int length) throws IOException {
            int read = in.read(target, offset, length);
            count(Math.max(0, read));
            return read;
        }

        private void count(int bytes) {
            sincePiece += bytes;
            if (sincePiece > LONGEST_PIECE) {
                throw new InputException(
                        file,
                        null,
                        null,
                        "has an attribute or a comment of more than " + (LONGEST_PIECE >> 20) + " MB");
            }
        }
    }
}
