package org.foreload.examples.recording;

import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;

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
    private char[] line = new char[256];
    private int length;
    private int quotes;
    private int at;
    private int end;
    private boolean feed;

    LineReader(Reader reader) {
        this.reader = reader;
    }

    /**
     * Goes on to the next line; says whether there is one. CR, LF and both together end a line. {@link #line} and
     * {@link #length}, or {@link #text}, are it without its end.
     */
    boolean next() throws IOException {
        length = 0;
        quotes = 0;
        boolean any = false;
        while (at < end || fill()) {
            if (feed && buffer[at] == '\n') {
                feed = false;
                at++;
                continue;
            }
            feed = false;
            int from = at;
            int to = lineEnd();
            any |= to > from;
            keep(from, to);
            if (at < end) {
                feed = buffer[at] == '\r';
                at++;
                unpair();
                return true;
            }
        }
        unpair();
        return any;
    }

    /** The characters of the line, the first {@link #length} of these; they change with the next line. */
    char[] line() {
        return line;
    }

    /** Number of characters of the line. */
    int length() {
        return length;
    }

    /** Whether there are quotation marks in the line. */
    boolean quoted() {
        return quotes > 0;
    }

    /** The line as a text. */
    String text() {
        return new String(line, 0, length);
    }

    /** Below it only the characters before the blank are control characters. */
    private static final char FIRST_HIGH_CONTROL = 0x7F;

    /**
     * Moves to the end of the line or of the buffer, makes blanks of control characters, and counts quotation marks.
     */
    private int lineEnd() {
        int from = at;
        while (at < end) {
            char c = buffer[at];
            if (c < ' ' || c >= FIRST_HIGH_CONTROL) {
                if (c == '\n' || c == '\r') {
                    break;
                }
                if (c != '\t' && Character.isISOControl(c)) {
                    buffer[at] = ' ';
                }
            } else if (c == '"' && length + at - from < LONGEST) {
                quotes++;
            }
            at++;
        }
        return at;
    }

    private void keep(int from, int to) {
        int kept = Math.min(to - from, LONGEST - length);
        if (length + kept > line.length) {
            line = Arrays.copyOf(line, Math.max(2 * line.length, length + kept));
        }
        System.arraycopy(buffer, from, line, length, kept);
        length += kept;
    }

    /** Takes the quotation marks out where they do not pair up. */
    private void unpair() {
        if (quotes % 2 == 0) {
            return;
        }
        int kept = 0;
        for (int i = 0; i < length; i++) {
            if (line[i] != '"') {
                line[kept++] = line[i];
            }
        }
        length = kept;
        quotes = 0;
    }

    private boolean fill() throws IOException {
        at = 0;
        end = Math.max(0, reader.read(buffer));
        return end > 0;
    }
}
