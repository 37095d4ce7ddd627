package org.foreload.integrate;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.foreload.conventions.Checks;

/**
 * How finely to integrate, and how much work is allowed. Lengths are in the unit of the independent variable. Two with
 * the same numbers are equal.
 *
 * @param tolerances error of one step that is allowed in each component, root mean square over all, in their own units
 * @param firstStep step to begin with, and longest step after a restart
 * @param longestStep no step is longer
 * @param longestLook longest stretch in which a {@link Crossing} could fall and rise again unseen
 * @param crossingAccuracy how closely the place of a crossing is found
 * @param mostEvaluations evaluations of the rates after which an integration gives up
 */
public record Accuracy(
        double[] tolerances,
        double firstStep,
        double longestStep,
        double longestLook,
        double crossingAccuracy,
        long mostEvaluations) {

    /** Checks and copies; throws {@link org.foreload.conventions.InvalidValueException} with the name of the number. */
    public Accuracy {
        tolerances = Objects.requireNonNull(tolerances, "tolerances").clone();
        for (double tolerance : tolerances) {
            Checks.positive("tolerance", tolerance);
        }
        Checks.positive("first_step", firstStep);
        Checks.positive("longest_step", longestStep);
        Checks.positive("longest_look", longestLook);
        Checks.positive("crossing_accuracy", crossingAccuracy);
        Checks.positive("most_evaluations", mostEvaluations);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Accuracy accuracy && values().equals(accuracy.values());
    }

    @Override
    public int hashCode() {
        return values().hashCode();
    }

    private List<Object> values() {
        return List.of(
                Arrays.stream(tolerances).boxed().toList(),
                firstStep,
                longestStep,
                longestLook,
                crossingAccuracy,
                mostEvaluations);
    }

    @Override
    public double[] tolerances() {
        return tolerances.clone();
    }

    /** The same with another longest step. */
    public Accuracy withLongestStep(double longest) {
        return new Accuracy(tolerances, firstStep, longest, longestLook, crossingAccuracy, mostEvaluations);
    }

    /** The same with all tolerances multiplied by a factor. */
    public Accuracy coarsened(double factor) {
        double[] changed = tolerances.clone();
        for (int i = 0; i < changed.length; i++) {
            changed[i] *= factor;
        }
        return new Accuracy(changed, firstStep, longestStep, longestLook, crossingAccuracy, mostEvaluations);
    }
}
