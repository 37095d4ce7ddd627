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
        var s = profile.column("s_m");
        var t = profile.column("time_s");
        int low = 0;
        int high = profile.rows() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (s.at(middle) <= station) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double share = (station - s.at(low)) / (s.at(high) - s.at(low));
        double inside = Math.max(0, Math.min(1, share));
        return t.at(low) * (1 - inside) + t.at(high) * inside;
    }
}
