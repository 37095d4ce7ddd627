package org.foreload.advice;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.recording.Estimate;
import org.foreload.study.Proportion;

/**
 * A change to what a driver did in a corner, and what it is worth; or two that belong together.
 *
 * @param steps one, or two in the order in which to make them: the first by itself is advice too
 * @param plan what the driver would do then; stations from turn-in
 * @param gain predicted, s, of all steps together; positive is quicker
 * @param failed how often that would not make the corner, for a driver who scatters as this one does
 */
public record Advice(List<Step> steps, BrakePlan plan, Estimate gain, Proportion failed) {

    /** Copies the list; null is refused by the component's name. */
    public Advice {
        steps = List.copyOf(Objects.requireNonNull(steps, "steps"));
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(gain, "gain");
        Objects.requireNonNull(failed, "failed");
    }

    /** Whether it is more than one change. */
    public boolean combined() {
        return steps.size() > 1;
    }

    /** The same steps on another plan; empty where that leaves no plan. */
    public Optional<BrakePlan> applied(BrakePlan other) {
        return Step.all(steps, Objects.requireNonNull(other, "other"));
    }
}
