package org.foreload.file;

/** Keeps foreign text to one short, printable line. */
final class OneLine {

    /** Longest text that still reads as part of one line; what is longer is cut. */
    private static final int LONGEST = 300;

    private OneLine() {}

    static String of(String text) {
        StringBuilder line = new StringBuilder();
        int length = Math.min(text.length(), LONGEST);
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            boolean plain = !Character.isISOControl(c) && c != '\u2028' && c != '\u2029';
            if (plain) {
                line.append(c);
            } else if (!line.isEmpty() && line.charAt(line.length() - 1) != ' ') {
                line.append(' ');
            }
        }
        return text.length() > LONGEST ? line.append('…').toString() : line.toString();
    }
}
