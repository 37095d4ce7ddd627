package org.foreload.examples.recording;

/** A clock that begins anew when it is full, as one of the day does at midnight: it has not gone back. */
final class FullClock {

    /** Where clocks are full, s: the day, and counters of milliseconds and of microseconds with 16 and 32 bits. */
    private static final double[] FULL = {86_400, 65.536, 4_294_967.296, 4_294.967296};

    /**
     * Steps of the clock, as long as the one before, within which it goes on; a lap's own clock begins anew anywhere.
     */
    private static final double STEPS = 2.5;

    /** Longest step, s, by which a clock is still known: a number far off may be one that was misread. */
    private static final double LONGEST_STEP = 1;

    private double last = Double.NaN;
    private double step = Double.NaN;
    private double passed;

    /** What a clock would say that is never full, s; NaN for NaN. */
    double goesOn(double read) {
        if (Double.isNaN(read)) {
            return read;
        }
        for (double full : FULL) {
            boolean began = read < last && last < full && step <= LONGEST_STEP;
            if (began && read + full - last < STEPS * step) {
                passed += full;
                last -= full;
            }
        }
        step = read - last;
        last = read;
        return read + passed;
    }
}
