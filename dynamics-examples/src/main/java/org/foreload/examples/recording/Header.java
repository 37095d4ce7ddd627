package org.foreload.examples.recording;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A column's header, taken apart: {@code Speed [km/h]}, {@code speed_kph}, {@code Brake Pressure (bar)}.
 *
 * @param text as written
 * @param name in small letters, words separated by single blanks, without the unit
 * @param unit as written; empty if it has none
 */
record Header(String text, String name, String unit) {

    private static final Pattern BRACKETED = Pattern.compile("^(.*?)\\s*[(\\[{]([^)\\]}]*)[)\\]}]\\s*$");

    /** Endings of names that are units, and how they are written else; the longest first. */
    private static final List<List<String>> ENDINGS = List.of(
            List.of("_rad_per_s", "rad/s"),
            List.of("_deg_per_s", "deg/s"),
            List.of("_radps", "rad/s"),
            List.of("_degps", "deg/s"),
            List.of("_mps2", "m/s2"),
            List.of("_mps", "m/s"),
            List.of("_kph", "km/h"),
            List.of("_kmh", "km/h"),
            List.of("_mph", "mph"),
            List.of("_dps", "deg/s"),
            List.of("_percent", "%"),
            List.of("_pct", "%"),
            List.of("_kpa", "kpa"),
            List.of("_mm", "mm"),
            List.of("_bar", "bar"),
            List.of("_psi", "psi"),
            List.of("_deg", "deg"),
            List.of("_rad", "rad"),
            List.of("_ms", "ms"),
            List.of("_km", "km"),
            List.of("_ft", "ft"),
            List.of("_g", "g"),
            List.of("_n", "n"),
            List.of("_s", "s"),
            List.of("_m", "m"));

    static Header of(String text) {
        String whole = text.strip();
        Matcher bracketed = BRACKETED.matcher(whole);
        if (bracketed.matches()) {
            return new Header(
                    whole, plain(bracketed.group(1)), bracketed.group(2).strip());
        }
        String small = whole.toLowerCase(Locale.ROOT);
        for (List<String> ending : ENDINGS) {
            if (small.endsWith(ending.get(0)) && small.length() > ending.get(0).length()) {
                String name = small.substring(0, small.length() - ending.get(0).length());
                return new Header(whole, plain(name), ending.get(1));
            }
        }
        return new Header(whole, plain(small), "");
    }

    /** The same where the last word is a unit, {@code Speed km/h}; the whole as the name where it is none. */
    static Header spaced(String text) {
        String whole = text.strip();
        int blank = whole.lastIndexOf(' ');
        String last = whole.substring(blank + 1);
        return blank > 0 && Units.known(last) ? new Header(whole, plain(whole.substring(0, blank)), last) : of(text);
    }

    private static String plain(String name) {
        // A capital inside a word begins a new one: BrakePressure.
        String words = name.replaceAll("(?<=\\p{Ll})(?=\\p{Lu})", " ").toLowerCase(Locale.ROOT);
        return words.replaceAll("[^\\p{L}\\p{N}]+", " ").strip();
    }
}
