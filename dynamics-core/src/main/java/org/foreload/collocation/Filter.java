package org.foreload.collocation;

import java.util.ArrayList;
import java.util.List;

/**
 * What a step must not be worse than: pairs of violation and objective, of which it has to beat one number of each (A.
 * Wächter, L. T. Biegler, Mathematical Programming 106(1), 2006, section 2.3, from memory).
 */
final class Filter {

    /** Share of a violation by which a step must be better. */
    static final double MARGIN = 1e-5;

    private final List<double[]> corners = new ArrayList<>();

    void clear() {
        corners.clear();
    }

    /** Keeps later steps from coming back here. */
    void add(double violation, double objective) {
        corners.add(new double[] {(1 - MARGIN) * violation, objective - MARGIN * violation});
    }

    /** Whether a step is better than each pair in one of the two. */
    boolean passes(double violation, double objective) {
        for (double[] corner : corners) {
            if (violation >= corner[0] && objective >= corner[1]) {
                return false;
            }
        }
        return true;
    }
}
