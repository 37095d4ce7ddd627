package org.foreload.advice;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.ReleaseShapes;
import org.foreload.recording.RecordedCorner;

/**
 * A change by an amount.
 *
 * @param change what
 * @param amount by how much, in the unit of the change
 * @param harder by how much harder the foot presses with it, m/s²; zero but for {@link Change#LATER_AND_HARDER}
 */
public record Step(Change change, double amount, double harder) {

    /** Refuses null by the component's name. */
    public Step {
        Objects.requireNonNull(change, "change");
    }

    /** A step that leaves the force of the foot to the change. */
    public Step(Change change, double amount) {
        this(change, amount, 0);
    }

    /** A plan with this step and nothing else; empty where there is no such plan. */
    public Optional<BrakePlan> made(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return change.made(plan, amount).map(other -> other.withPeakDeceleration(other.peakDeceleration() + harder));
    }

    /** A plan with all of these steps, one after the other; empty where one of them leaves no plan. */
    static Optional<BrakePlan> all(List<Step> steps, BrakePlan plan) {
        Optional<BrakePlan> made = Optional.of(plan);
        for (Step step : steps) {
            made = made.flatMap(step::made);
        }
        return made;
    }

    /**
     * Whether this brings a driver nearer to what another did in the same corner. Not where either is not known.
     *
     * @param did what the driver did
     * @param other what the other did
     */
    boolean towards(RecordedCorner did, RecordedCorner other) {
        if (change == Change.SHAPE) {
            return other.shape().equals(Optional.of(ReleaseShapes.all().get((int) amount)));
        }
        double apart = change.measured(other) - change.measured(did);
        return Math.abs(apart - amount) < Math.abs(apart);
    }

    /** The same change, the same way, by each other amount that is tried. */
    List<Step> otherAmounts() {
        boolean counted = change == Change.SHAPE;
        return counted
                ? List.of()
                : change.amounts().stream()
                        .filter(other -> other != amount && other * amount > 0)
                        .map(other -> new Step(change, other))
                        .toList();
    }
}
