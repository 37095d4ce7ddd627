package org.foreload.advice;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.recording.Estimate;
import org.foreload.study.Proportion;

/**
 * One change to what a driver did in a corner, and what it is worth.
 *
 * @param change what
 * @param amount by how much, in the unit of the change
 * @param plan what the driver would do then; stations from turn-in
 * @param gain predicted, s; positive is quicker
 * @param failed how often that would not make the corner, for a driver who scatters as this one does
 */
public record Advice(Change change, double amount, BrakePlan plan, Estimate gain, Proportion failed) {

    /** The same change to another plan; empty where that leaves no plan. */
    public Optional<BrakePlan> applied(BrakePlan other) {
        return change.made(other, amount);
    }
}
