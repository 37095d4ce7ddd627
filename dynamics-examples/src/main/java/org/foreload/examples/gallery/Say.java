package org.foreload.examples.gallery;

import java.util.Locale;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
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
        String braked = entry.braked() ? plan(entry.plan()) : "No braking at all";
        return entry.made()
                ? braked
                        + of(
                                ": through in %.2f s, slowest %.1f m/s at %.1f m, %.0f %% of the slowing done while turning.",
                                entry.time(), entry.minimumSpeed(), entry.minimumSpeedAt(), 100 * entry.trailShare())
                : braked + ": " + entry.outcome().words() + "; " + entry.cause() + ".";
    }

    /** {@code Foot down 111.8 m before turn-in, to 9.75 m/s², off 47.1 m after turn-in (progressive)}. */
    static String plan(BrakePlan plan) {
        return of(
                "Foot down %s, %s, off %s (%s)",
                Words.place(plan.brakePoint()),
                Words.press(plan),
                Words.place(plan.release().end()),
                plan.release().shape().name());
    }
}
