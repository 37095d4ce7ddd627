package org.foreload.examples.output;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a field's name says: {@code front_axle_load_n} is the front axle load in N.
 *
 * @param label the name in words
 * @param unit the unit as people write it; empty for a plain number
 * @param decimals how many decimals a table shows
 */
public record Quantity(String label, String unit, int decimals) {

    /** Endings that are units; the longest first, so that {@code _mps2} is not read as {@code _m}. */
    private enum Unit {
        RAD_PER_MPS2("rad/(m/s²)", 6),
        KG_M2("kg·m²", 0),
        KG_M3("kg/m³", 3),
        N_PER_RAD("N/rad", 0),
        PER_RAD("1/rad", 2),
        RAD_PER_S("rad/s", 3),
        PER_S("1/s", 3),
        PER_M("1/m", 4),
        PERCENT("%", 1),
        MPS2("m/s²", 2),
        MPS("m/s", 2),
        DEG("°", 2),
        KG("kg", 1),
        HZ("Hz", 2),
        MS("ms", 1),
        DEGPS("°/s", 2),
        M2("m²", 3),
        N("N", 0),
        M("m", 2),
        G("g", 3),
        S("s", 3),
        W("W", 0);

        private final String symbol;
        private final int decimals;

        Unit(String symbol, int decimals) {
            this.symbol = symbol;
            this.decimals = decimals;
        }
    }

    /** Decimals of a plain number: shares and ratios to a thousandth. */
    private static final int PLAIN_DECIMALS = 3;

    private static final List<Unit> UNITS = List.of(Unit.values());

    /** Names that programs know under another word than the trade's, whole names with their unit. */
    private static final Map<String, String> WHOLE = Map.of(
            "brake_m", "brake point",
            "off_m", "brake off",
            "brake_on_m", "brake point",
            "release.start_m", "release point",
            "release.end_m", "brake off");

    /** Words of names, in the trade's spelling. */
    private static final Map<String, String> TRADE = new TreeMap<>(Map.ofEntries(
            Map.entry("ease off", "release point"),
            Map.entry("first ease", "release point"),
            Map.entry("release start", "release point"),
            Map.entry("release end", "brake off"),
            Map.entry("release brake point", "brake point"),
            Map.entry("release peak", "peak"),
            Map.entry("release before the latest", "before the latest"),
            Map.entry("release build-up", "build-up"),
            Map.entry("margins (front|rear|edge)", "$1 margin"),
            Map.entry("minimum speed at", "slowest point"),
            Map.entry("pick up", "pick-up"),
            Map.entry("turn in", "turn-in"),
            Map.entry("adhesion utilisation", "adhesion used"),
            Map.entry("utilisation", "grip used"),
            Map.entry("roll over utilisation", "roll-over used"),
            Map.entry("most sideslip", "sideslip allowed"),
            Map.entry("build up", "build-up"),
            Map.entry("cg", "CG"),
            Map.entry("roll center", "roll-centre"),
            Map.entry("(tracking bandwidth|steering rate) radps", "$1"),
            Map.entry("peak friction x", "peak longitudinal friction"),
            Map.entry("peak friction y", "peak lateral friction")));

    /** Reads a field's name. */
    public static Quantity of(String name) {
        for (Unit unit : UNITS) {
            String ending = "_" + unit.name().toLowerCase(Locale.ROOT);
            if (name.endsWith(ending)) {
                return new Quantity(label(name, ending), unit.symbol, unit.decimals);
            }
        }
        return new Quantity(words(name), "", PLAIN_DECIMALS);
    }

    /** The words of a name with this ending; a whole name may also stand inside another part. */
    private static String label(String name, String ending) {
        int dot = name.lastIndexOf('.');
        String last = WHOLE.get(name.substring(dot + 1));
        if (dot >= 0 && last != null) {
            return words(name.substring(0, dot)) + " " + last;
        }
        return WHOLE.getOrDefault(name, words(name.substring(0, name.length() - ending.length())));
    }

    /** Label and unit for the head of a column. */
    public String heading() {
        return unit.isEmpty() ? label : label + " " + unit;
    }

    /** The words of a name; one that ends a part's name and begins its field's is said once. */
    private static String words(String name) {
        String words = name.replace('_', ' ').replace('.', ' ').replaceAll("\\b(\\w+) (?=\\1\\b)", "");
        for (Map.Entry<String, String> trade : TRADE.entrySet()) {
            words = words.replaceAll("\\b" + trade.getKey() + "\\b", trade.getValue());
        }
        return words;
    }
}
