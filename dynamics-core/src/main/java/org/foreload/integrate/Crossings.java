package org.foreload.integrate;

/** Watches the crossings of one integration: which of them are above zero, and where the first one falls. */
final class Crossings {

    /** Rounds of the search, of which every third halves: enough for any stretch and accuracy. */
    private static final int MOST_ROUNDS = 150;

    private final Crossing[] watched;
    private final double[] before;
    private final double[] after;
    private final double[] state;
    private boolean armed;
    private int crossed = -1;

    Crossings(int size, Crossing[] watched) {
        this.watched = watched.clone();
        before = new double[watched.length];
        after = new double[watched.length];
        state = new double[size];
    }

    /** Forgets what was above zero. */
    void forget() {
        armed = false;
    }

    /** Which fell in the last search; −1 for none. */
    int crossed() {
        return crossed;
    }

    /** Notes what is above zero at the start; what is not may rise, and fall later. */
    void arm(double t, double[] y) {
        crossed = -1;
        if (!armed) {
            for (int i = 0; i < watched.length; i++) {
                before[i] = watched[i].valueAtJoint(t, y);
            }
            armed = true;
        }
    }

    /**
     * Looks through a step, from one point to the next.
     *
     * @param atEnd the state at the step's end
     * @return where the first crossing has just fallen, if {@link #crossed()} says that one has
     */
    double search(Step step, double[] atEnd, Accuracy accuracy) {
        crossed = -1;
        if (watched.length == 0) {
            return Double.NaN;
        }
        double length = step.end() - step.start();
        int looks = (int) Math.ceil(length / accuracy.longestLook());
        double from = step.start();
        for (int look = 1; look <= looks; look++) {
            double to = look == looks ? step.end() : step.start() + length * look / looks;
            if (look < looks) {
                step.state(to, state);
            }
            double first = Double.POSITIVE_INFINITY;
            for (int i = 0; i < watched.length; i++) {
                after[i] = look < looks ? watched[i].value(to, state) : watched[i].valueAtJoint(to, atEnd);
            }
            for (int i = 0; i < watched.length; i++) {
                if (before[i] > 0 && !(after[i] > 0)) {
                    double at = locate(step, i, from, to, accuracy.crossingAccuracy());
                    if (at < first) {
                        first = at;
                        crossed = i;
                    }
                }
            }
            if (crossed >= 0) {
                armed = false;
                return first;
            }
            System.arraycopy(after, 0, before, 0, after.length);
            from = to;
        }
        return Double.NaN;
    }

    /**
     * Where a value that falls between two points has just fallen: by the secant, with the weight of an end that stays
     * halved (M. Dowell, P. Jarratt, BIT 11 (1971), the Illinois rule, from memory), and by halving every third time.
     */
    private double locate(Step step, int i, double from, double to, double accuracy) {
        double low = from;
        double high = to;
        double above = before[i];
        double below = after[i];
        boolean highStayed = false;
        boolean lowStayed = false;
        for (int round = 1; round <= MOST_ROUNDS && high - low > accuracy; round++) {
            double secant = low + (high - low) * above / (above - below);
            boolean halve = round % 3 == 0 || !(secant > low && secant < high);
            double at = halve ? (low + high) / 2 : secant;
            step.state(at, state);
            double value = watched[i].value(at, state);
            if (value > 0) {
                low = at;
                above = value;
                below = highStayed ? below / 2 : below;
                highStayed = true;
                lowStayed = false;
            } else {
                high = at;
                below = value;
                above = lowStayed ? above / 2 : above;
                lowStayed = true;
                highStayed = false;
            }
        }
        return high;
    }
}
