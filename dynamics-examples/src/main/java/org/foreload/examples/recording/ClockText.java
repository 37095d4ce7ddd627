package org.foreload.examples.recording;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Times of day and dates as seconds: {@code 14:03:59.20}, {@code 1:23.456}, {@code 2026-05-01T14:03:59.2Z} (ISO 8601).
 */
final class ClockText {

    private static final Pattern CLOCK = Pattern.compile("(?:(\\d{1,3}):)?(\\d{1,3}):(\\d{1,2}(?:[.,]\\d{1,12})?)");

    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}[T ]\\d{2}:\\d{2}(:\\d{2}.*)?");

    private static final Instant EPOCH = Instant.parse("2000-01-01T00:00:00Z");

    private ClockText() {}

    /** Seconds; of a date those since the year 2000, so that milliseconds are kept; NaN if it is neither. */
    static double parse(String text) {
        if (text.indexOf(':') < 0) {
            return Double.NaN;
        }
        Matcher clock = CLOCK.matcher(text);
        if (clock.matches()) {
            double hours = clock.group(1) == null ? 0 : Integer.parseInt(clock.group(1));
            double seconds = Double.parseDouble(clock.group(3).replace(',', '.'));
            return 3600 * hours + 60 * Integer.parseInt(clock.group(2)) + seconds;
        }
        if (!DATE.matcher(text).matches()) {
            return Double.NaN;
        }
        try {
            String iso = text.replace(' ', 'T');
            boolean zone = iso.endsWith("Z") || iso.lastIndexOf('+') > 10 || iso.lastIndexOf('-') > 10;
            Instant instant = zone
                    ? OffsetDateTime.parse(iso).toInstant()
                    : LocalDateTime.parse(iso).toInstant(ZoneOffset.UTC);
            Duration since = Duration.between(EPOCH, instant);
            return since.getSeconds() + since.getNano() * 1e-9;
        } catch (DateTimeException | ArithmeticException e) {
            return Double.NaN;
        }
    }
}
