package org.foreload.examples.recording;

import java.io.IOException;
import java.io.Reader;
import java.nio.CharBuffer;

/**
 * Lines of a text of any length in bounded memory: what a line has beyond a bound is dropped, control characters become
 * blanks, and quotation marks that do not pair up within a line are taken out, so that no field runs on over the rest
 * of a file.
 */
final class LineReader {

    /** Longest line that is kept, characters: some thousand columns. */
    static final int LONGEST = 64_000;

    private static final int BUFFER = 1 << 16;

    private final Reader reader;
    private final CharBuffer buffer = CharBuffer.allocate(BUFFER);
    private final StringBuilder line = new StringBuilder();
    private boolean feed;

    LineReader(Reader reader) {
        this.reader = reader;
        buffer.flip();
    }

    /** The next line without its end; null after the last. CR, LF and both together end a line. */
    String next() throws IOException {
        line.setLength(0);
        boolean any = false;
        int quotes = 0;
        while (true) {
            if (!buffer.hasRemaining() && !fill()) {
                return any ? text(quotes) : null;
            }
            char c = buffer.get();
            if (feed && c == '\n') {
                feed = false;
                continue;
            }
            feed = c == '\r';
            if (c == '\n' || c == '\r') {
                return text(quotes);
            }
            any = true;
            if (line.length() < LONGEST) {
                quotes += c == '"' ? 1 : 0;
                line.append(c == '\t' || !Character.isISOControl(c) ? c : ' ');
            }
        }
    }

    private String text(int quotes) {
        return quotes % 2 == 0 ? line.toString() : line.toString().replace("\"", "");
    }

    private boolean fill() throws IOException {
        buffer.clear();
        int read = reader.read(buffer);
        buffer.flip();
        return read > 0;
    }
}
