package org.foreload.examples.gallery;

import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;

/** Entries in words. */
final class Tale {

    private Tale() {}

    /** How it was braked and what came of it. */
    static String of(EntryResult entry) {
        String braked = entry.braked() ? plan(entry.plan()) : "No braking at all";
        return entry.made()
                ? braked
                        + Say.of(
                                ": through in %.2f s, slowest %.1f m/s at %.1f m, %.0f %% of the slowing done while turning.",
                                entry.time(), entry.minimumSpeed(), entry.minimumSpeedAt(), 100 * entry.trailShare())
                : braked + ": " + entry.outcome().words() + "; " + entry.cause() + ".";
    }

    /** {@code Foot down 111.8 m before turn-in, to 9.75 m/s², off 47.1 m after turn-in (progressive)}. */
    static String plan(BrakePlan plan) {
        return Say.of(
                "Foot down %s, to %.2f m/s², off %s (%s)",
                Say.station(plan.brakePoint()),
                plan.peakDeceleration(),
                Say.station(plan.release().end()),
                plan.release().shape().name());
    }
}
