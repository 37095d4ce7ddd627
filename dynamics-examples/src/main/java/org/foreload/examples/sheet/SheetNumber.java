package org.foreload.examples.sheet;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.examples.output.Numbers;

/** Numbers of an entry on the sheet; a dash where there is none. */
enum SheetNumber {
    TIME("time, s", made(entry -> Numbers.rounded(entry.time(), 3))),
    LOST(
            "slower than the plan, s",
            (sheet, entry) -> entry.made()
                    ? Numbers.rounded(entry.time() - sheet.plan().entry().time(), 3)
                    : SheetNumber.NONE),
    OUTCOME("outcome", any(entry -> entry.outcome().words())),
    BRAKE_POINT("brake point, m", any(entry -> Numbers.rounded(entry.plan().brakePoint(), 1))),
    EASE_OFF(
            "release point, m",
            any(entry -> Numbers.rounded(entry.plan().release().start(), 1))),
    OFF("brake off, m", any(entry -> Numbers.rounded(entry.plan().release().end(), 1))),
    PICK_UP("pick-up, m", made(entry -> Numbers.rounded(entry.pickUp(), 1))),
    PEAK("peak, m/s²", any(entry -> Numbers.rounded(entry.plan().peakDeceleration(), 2))),
    GREATEST("greatest deceleration, m/s²", any(entry -> Numbers.rounded(Speeds.greatest(entry), 2))),
    TURN_IN_SPEED("turn-in, ", (sheet, entry) -> speed(sheet, entry.turnInSpeed())),
    SLOWEST("slowest point, ", (sheet, entry) -> speed(sheet, entry.made() ? entry.minimumSpeed() : Double.NaN)),
    SLOWEST_AT("slowest point, m", made(entry -> Numbers.rounded(entry.minimumSpeedAt(), 1))),
    TRAIL_SHARE("slowing done while turning", made(entry -> Words.percent(entry.trailShare()))),
    LIMIT("limited by", (sheet, entry) -> EntryAnswer.limit(sheet.study(), entry));

    static final String NONE = "–";

    private final String words;
    private final BiFunction<Sheet, EntryResult, String> text;

    SheetNumber(String words, BiFunction<Sheet, EntryResult, String> text) {
        this.words = words;
        this.text = text;
    }

    /** Name and unit. */
    String words(Units units) {
        return switch (this) {
            case TURN_IN_SPEED, SLOWEST -> words + units.speedUnit() + (units == Units.SI ? "" : " (m/s)");
            default -> words;
        };
    }

    /** The number as text. */
    String of(Sheet sheet, EntryResult entry) {
        return text.apply(sheet, entry);
    }

    private static BiFunction<Sheet, EntryResult, String> any(Function<EntryResult, String> text) {
        return (sheet, entry) -> text.apply(entry);
    }

    private static BiFunction<Sheet, EntryResult, String> made(Function<EntryResult, String> text) {
        return (sheet, entry) -> entry.made() ? text.apply(entry) : NONE;
    }

    private static String speed(Sheet sheet, double speed) {
        Units units = sheet.request().units();
        String beside = units == Units.SI ? "" : " (" + Numbers.rounded(speed, 1) + ")";
        return Double.isFinite(speed) ? units.speedAlone(speed) + beside : NONE;
    }
}
