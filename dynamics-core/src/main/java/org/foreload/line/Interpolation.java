package org.foreload.line;

import java.util.Arrays;

/** Reads between given places. */
final class Interpolation {

    private Interpolation() {}

    /** Straight between the places, and kept beyond the ends. */
    static double straight(double at, double[] from, double[] to) {
        int i = Arrays.binarySearch(from, at);
        i = Math.max(0, Math.min(i >= 0 ? i : -i - 2, from.length - 2));
        double share = Math.max(0, Math.min(1, (at - from[i]) / (from[i + 1] - from[i])));
        return to[i] + share * (to[i + 1] - to[i]);
    }
}
