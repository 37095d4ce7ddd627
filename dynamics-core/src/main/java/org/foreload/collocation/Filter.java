package org.foreload.collocation;

import java.util.ArrayList;
import java.util.List;

/**
 * What a step must not be worse than: a greatest violation, and pairs of violation and objective, of which it has to
 * beat one number of each (A. Wächter, L. T. Biegler, Mathematical Programming 106(1), 2006, section 2.3, from memory).
 */
final class Filter {

    /** Share of a violation by which a step must be better. */
    static final double MARGIN = 1e-5;

    private final List<double[]> corners = new ArrayList<>();

    private double most = Double.POSITIVE_INFINITY;

    /** Sets the greatest violation that passes, for good. */
    void bound(double violation) {
        most = violation;
    }

    void clear() {
        corners.clear();
    }

    /** Keeps later steps from coming back here. */
    void add(double violation, double objective) {
        corners.add(new double[] {(1 - MARGIN) * violation, objective - MARGIN * violation});
    }

    /** Whether a step is better than each pair in one of the two, and breaks no more than it may. */
    boolean passes(double violation, double objective) {
        if (!(violation <= most)) {
            return false;
        }
        for (double[] corner : corners) {
            if (violation >= corner[0] && objective >= corner[1]) {
                return false;
            }
        }
        return true;
    }
}
