package org.foreload.gap;

import org.foreload.entry.EntryResult;
import org.foreload.trace.Trace;

/** Reads the profile of an entry. */
final class Profiles {

    private Profiles() {}

    static Trace of(EntryResult entry) {
        return entry.profile().orElseThrow(() -> new IllegalArgumentException("the entry was made without profile"));
    }

    /** Time at a station, s: linear between rows, exact at rows. */
    static double timeAt(Trace profile, double station) {
        return profile.column("time_s").at(profile.column("s_m"), station);
    }
}
