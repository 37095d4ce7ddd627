package org.foreload.integrate;

/**
 * Where an {@link Integration} stood between two of its steps, with all that it needs to go on from there as if it had
 * come from its beginning. Integrations with the same beginning and different ends take the same steps until an end
 * comes near; so one that has gone on far enough can lend its steps to others.
 */
public final class Mark {

    final double t;
    final double[] state;
    final double step;
    private final double nearestEnd;

    Mark(double t, double[] state, double step, double nearestEnd) {
        this.t = t;
        this.state = state.clone();
        this.step = step;
        this.nearestEnd = nearestEnd;
    }

    /** Where it stood. */
    public double at() {
        return t;
    }

    /** Whether an integration to this end would have come by here, with the same steps; never where a crossing fell. */
    public boolean servesEnd(double end) {
        return end >= nearestEnd;
    }
}
