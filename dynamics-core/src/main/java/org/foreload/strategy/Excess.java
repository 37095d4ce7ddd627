package org.foreload.strategy;

/**
 * How far an entry goes beyond what is allowed, limit by limit: zero where a limit is just kept, below zero where
 * something is left, negative infinity where nothing is asked. Each changes about as much with the brake point as the
 * next.
 *
 * @param drift off the line, as a share of the drift allowed
 * @param edge towards the edge of the track, m
 * @param front of the front axle's friction, tenths
 * @param rear of the rear axle's friction, tenths
 */
public record Excess(double drift, double edge, double front, double rear) {

    private static final double NOTHING = Double.NEGATIVE_INFINITY;

    /** That of an entry that does not make the corner: larger than that of any that does. */
    public static final Excess NOT_MADE = new Excess(Double.POSITIVE_INFINITY, NOTHING, NOTHING, NOTHING);

    /** That of an entry of which only the way to the edge of the track counts, m. */
    static Excess ofEdge(double left) {
        return new Excess(NOTHING, -left, NOTHING, NOTHING);
    }

    /** The one that decides; infinite for a corner that was not made. */
    public double largest() {
        return Math.max(Math.max(drift, edge), Math.max(front, rear));
    }

    /**
     * Share of the way to another entry at which the first of the limits is reached, each taken to change evenly; NaN
     * if that cannot be read.
     *
     * @param other beyond a limit that this one keeps
     */
    double shareTo(Excess other) {
        double first = Math.min(
                Math.min(share(drift, other.drift), share(edge, other.edge)),
                Math.min(share(front, other.front), share(rear, other.rear)));
        return first <= 1 ? first : Double.NaN;
    }

    private static double share(double here, double there) {
        return there > 0 && there < Double.POSITIVE_INFINITY && here <= 0 && here > NOTHING
                ? -here / (there - here)
                : Double.POSITIVE_INFINITY;
    }
}
