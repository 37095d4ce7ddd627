package org.foreload.examples.recording;

import java.io.IOException;
import java.io.Reader;

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
    private final char[] buffer = new char[BUFFER];
    private final StringBuilder line = new StringBuilder();
    private int at;
    private int end;
    private boolean feed;

    LineReader(Reader reader) {
        this.reader = reader;
    }

    /** The next line without its end; null after the last. CR, LF and both together end a line. */
    String next() throws IOException {
        line.setLength(0);
        boolean any = false;
        int quotes = 0;
        while (at < end || fill()) {
            if (feed && buffer[at] == '\n') {
                feed = false;
                at++;
                continue;
            }
            feed = false;
            int from = at;
            while (at < end && buffer[at] != '\n' && buffer[at] != '\r') {
                char c = buffer[at];
                if (c == '"' && line.length() + at - from < LONGEST) {
                    quotes++;
                }
                if (c < ' ' || c >= FIRST_HIGH_CONTROL) {
                    buffer[at] = c == '\t' || !Character.isISOControl(c) ? c : ' ';
                }
                at++;
            }
            any |= at > from;
            line.append(buffer, from, Math.min(at - from, LONGEST - line.length()));
            if (at < end) {
                feed = buffer[at] == '\r';
                at++;
                return text(quotes);
            }
        }
        return any ? text(quotes) : null;
    }

    /** Below it only the characters before the blank are control characters. */
    private static final char FIRST_HIGH_CONTROL = 0x7F;

    private String text(int quotes) {
        return quotes % 2 == 0 ? line.toString() : line.toString().replace("\"", "");
    }

    private boolean fill() throws IOException {
        at = 0;
        end = Math.max(0, reader.read(buffer));
        return end > 0;
    }
}
