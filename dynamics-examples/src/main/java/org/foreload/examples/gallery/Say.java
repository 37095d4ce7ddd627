package org.foreload.examples.gallery;

import java.util.Locale;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.strategy.CornerStudy;

/** Numbers, places and entries in captions. */
final class Say {

    private Say() {}

    /** A sentence with numbers, the same in every country. */
    static String of(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    /** Car and corner. */
    static String where(CornerStudy study) {
        return study.simulator().car().name() + " in "
                + study.simulator().corner().name();
    }

    /** Multiplied by a number: newtons as kilonewtons, shares as per cent. */
    static double[] times(double factor, double[] values) {
        double[] scaled = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            scaled[i] = factor * values[i];
        }
        return scaled;
    }

    /** How it was braked and what came of it. */
    static String how(EntryResult entry) {
        String braked = Words.sentence(Words.brake(entry, Units.KMH));
        return entry.made()
                ? braked
                        + of(
                                ": %.2f s, slowest %.1f m/s at %.0f m, %.0f %% of the slowing done while turning.",
                                entry.time(), entry.minimumSpeed(), entry.minimumSpeedAt(), 100 * entry.trailShare())
                : braked + ": " + entry.outcome().words() + "; " + entry.cause() + ".";
    }

    /** {@code Brake 112 m before turn-in, peak 9.75 m/s² (0.99 g), release point …, brake off …}. */
    static String plan(BrakePlan plan) {
        return Words.sentence(Words.brake(plan, Units.KMH));
    }
}
