package org.foreload.strategy;

import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Margins;

/**
 * The margin with which a car must make the corner.
 *
 * @param drift farthest that the CG may leave its line, m
 * @param edge least distance that the CG must keep from the edge of the track, m
 * @param front least share of its friction that the front axle must keep until the apex, 0 to 1
 * @param rear the same for the rear axle
 */
public record Allowance(double drift, double edge, double front, double rear) {

    /** Half a metre off the line, no other margin: a car at its limit on a line that is still recognisable. */
    public static final Allowance STANDARD = new Allowance(0.5, 0, 0, 0);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Allowance {
        Checks.positive("drift", drift);
        Checks.notNegative("edge_margin", edge);
        Checks.within("front_margin", front, 0, 1);
        Checks.within("rear_margin", rear, 0, 1);
    }

    /** Whether only the outcome and the drift have to be looked at. */
    boolean onlyDrift() {
        return edge == 0 && front == 0 && rear == 0;
    }

    /** Whether an entry made the corner with this margin. */
    public boolean met(EntryResult entry) {
        if (!entry.made() || entry.farthestOffset() > drift) {
            return false;
        }
        if (onlyDrift()) {
            return true;
        }
        Margins margins = entry.margins().orElseThrow();
        return margins.edge() >= edge && margins.front() >= front && margins.rear() >= rear;
    }
}
