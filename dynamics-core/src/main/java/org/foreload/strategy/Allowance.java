package org.foreload.strategy;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.entry.Outcome;

/**
 * The margin with which a car must make the corner.
 *
 * @param drift farthest that the CG may leave its line, m
 * @param edge least distance that the CG must keep from the edge of the track, m
 * @param front least share of its friction that the front axle must keep on the way in, 0 to 1; see {@link Margins}
 * @param rear the same for the rear axle
 * @param inHand least that the plan must have {@link InHand in hand}, m
 */
public record Allowance(double drift, double edge, double front, double rear, double inHand) {

    /** Half a metre off the line, and no other margin: the quickest of all, on the edge of what the car can do. */
    public static final Allowance NO_MARGIN = new Allowance(0.5, 0, 0, 0, 0);

    /**
     * What a plan keeps that is handed to a driver: half a metre from the line and from the edge, a little of each
     * axle's grip, more at the rear, which gives less warning, and four metres in hand, which is more than two and a
     * half times what a practised driver strays by. Common practice is to keep something; the numbers are invented for
     * want of a source.
     */
    public static final Allowance STANDARD = new Allowance(0.5, 0.5, 0.01, 0.05, 4);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Allowance {
        Checks.positive("drift", drift);
        Checks.notNegative("edge_margin", edge);
        Checks.within("front_margin", front, 0, 1);
        Checks.within("rear_margin", rear, 0, 1);
        Checks.within("in_hand", inHand, 0, InHand.MOST);
    }

    /** Whether an entry made the corner with this margin, whatever the plan has in hand. */
    public boolean met(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        return trial(entry).met();
    }

    /** An entry held against this margin, whatever the plan has in hand. */
    public Trial trial(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        Margins margins = entry.margins();
        Excess excess = entry.made()
                ? new Excess(
                        entry.farthestOffset() / drift - 1,
                        edge - margins.edge(),
                        beyondFront(margins.front()),
                        beyondRear(margins.rear()),
                        -Excess.SHARE_WEIGHT * entry.lockReserve())
                : Excess.NOT_MADE;
        return new Trial(entry.plan().brakePoint(), entry, excess);
    }

    /** What came closest to its limit, the axles to the friction that they must keep. */
    public EntryResult.Limit limit(EntryResult entry) {
        Objects.requireNonNull(entry, "entry");
        boolean fullest = entry.outcome() != Outcome.ROLLED_OVER
                && entry.limit() != EntryResult.Limit.LOCK
                && entry.limit() != EntryResult.Limit.TRACK_EDGE;
        return fullest ? entry.margins().fullest(front, rear) : entry.limit();
    }

    /**
     * How far what the front axle has left, as a share of its friction, goes beyond this margin: see {@link Excess}.
     */
    public double beyondFront(double left) {
        return lack(front, left);
    }

    /** The same for the rear axle. */
    public double beyondRear(double left) {
        return lack(rear, left);
    }

    private static double lack(double asked, double left) {
        return asked > 0 ? Excess.SHARE_WEIGHT * (asked - left) : Double.NEGATIVE_INFINITY;
    }
}
