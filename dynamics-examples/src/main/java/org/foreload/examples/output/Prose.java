package org.foreload.examples.output;

import java.util.ArrayList;
import java.util.List;

/** Sentences broken into lines that fit beside each other on a screen. */
public final class Prose {

    /** Longest line of the program's output, in characters: two of them stand beside each other on a usual screen. */
    public static final int WIDTH = 110;

    private Prose() {}

    /** The text in lines of at most {@link #WIDTH} characters, the second and later ones set in by two spaces. */
    static String wrapped(String text) {
        return wrapped(text, "", "  ");
    }

    /**
     * The text in lines of at most {@link #WIDTH} characters. A word that is longer stands on a line of its own.
     *
     * @param first before the first line
     * @param next before each later line
     */
    static String wrapped(String text, String first, String next) {
        return String.join("\n", lines(text, first, next, WIDTH));
    }

    /** A paragraph in lines of at most {@link #WIDTH} characters; a line that is short enough stays as it is. */
    public static String paragraph(String line) {
        return width(line) <= WIDTH ? line : wrapped(line, "", "");
    }

    /** The words of a text in lines of at most so many characters, where no word is longer. */
    static List<String> lines(String text, String first, String next, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.strip().split(" +")) {
            if (!empty && width(line) + 1 + width(word) > width) {
                lines.add(line.toString());
                line = new StringBuilder(next);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }

    /** How many characters a text takes on a screen. */
    static int width(CharSequence text) {
        return Character.codePointCount(text, 0, text.length());
    }
}
