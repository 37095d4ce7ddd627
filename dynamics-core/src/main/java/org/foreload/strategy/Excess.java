package org.foreload.strategy;

import java.util.function.DoubleBinaryOperator;
import org.foreload.entry.EntryResult;

/**
 * How far an entry goes beyond what is allowed, limit by limit: zero where a limit is just kept, below zero where
 * something is left, negative infinity where nothing is asked. Each changes about as much with the brake point as the
 * next.
 *
 * @param drift off the line, as a share of the drift allowed
 * @param edge towards the edge of the track, m
 * @param front of the front axle's friction, tenths
 * @param rear of the rear axle's friction, tenths
 * @param lock towards a wheel that stops, tenths of the brake force; never above zero, since a wheel that stops for
 *     long ends the entry
 */
public record Excess(double drift, double edge, double front, double rear, double lock) {

    private static final double NOTHING = Double.NEGATIVE_INFINITY;

    /** That of an entry that does not make the corner: larger than that of any that does. */
    public static final Excess NOT_MADE = new Excess(Double.POSITIVE_INFINITY, NOTHING, NOTHING, NOTHING, NOTHING);

    /** A tenth of the brake force, or of an axle's friction, counts as much as the whole drift that is allowed. */
    public static final double SHARE_WEIGHT = 10;

    /** That of an entry that must make the corner and no more. */
    static Excess ofEdge(EntryResult entry) {
        return new Excess(NOTHING, -entry.margins().edge(), NOTHING, NOTHING, -SHARE_WEIGHT * entry.lockReserve());
    }

    /** The one that decides; infinite for a corner that was not made. */
    public double largest() {
        return Math.max(lock, Math.max(Math.max(drift, edge), Math.max(front, rear)));
    }

    /**
     * Share of the way to another entry at which the first of the limits is reached, each taken to change evenly; NaN
     * if that cannot be read.
     *
     * @param other beyond a limit that this one keeps
     */
    double shareTo(Excess other) {
        double first = first(
                other,
                (here, there) -> there > 0 && there < Double.POSITIVE_INFINITY && here <= 0 && here > NOTHING
                        ? -here / (there - here)
                        : Double.POSITIVE_INFINITY);
        return first <= 1 ? first : Double.NaN;
    }

    /**
     * How many steps more, each as long as the one from another entry to this, until the first of the limits is
     * reached; infinite if this one comes nearer to none.
     *
     * @param before keeps all limits, as this one does
     */
    double stepsToGo(Excess before) {
        return first(
                before,
                (here, there) -> here > there && there > NOTHING
                        ? Math.max(0, -here) / (here - there)
                        : Double.POSITIVE_INFINITY);
    }

    /**
     * How many steps more, each as long as the one from another entry to this, until all limits are kept; NaN if one of
     * them comes no nearer.
     *
     * @param before goes beyond limits, as this one does
     */
    double stepsBack(Excess before) {
        double last = -first(
                before,
                (here, there) -> here <= 0 ? 0 : there > here ? -here / (there - here) : Double.NEGATIVE_INFINITY);
        return last < Double.POSITIVE_INFINITY ? last : Double.NaN;
    }

    /** The least of a measure of each limit, here and in another entry. */
    private double first(Excess other, DoubleBinaryOperator measure) {
        double ofGrip = Math.min(measure.applyAsDouble(front, other.front), measure.applyAsDouble(rear, other.rear));
        double ofPlace = Math.min(measure.applyAsDouble(drift, other.drift), measure.applyAsDouble(edge, other.edge));
        return Math.min(Math.min(ofGrip, ofPlace), measure.applyAsDouble(lock, other.lock));
    }
}
