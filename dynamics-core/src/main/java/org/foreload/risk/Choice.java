package org.foreload.risk;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.Checks;

/**
 * Plans weighed by time and risk.
 *
 * @param tried every plan that was driven, with its risk
 * @param complete whether all were; false after a stop
 */
public record Choice(List<Risk> tried, boolean complete) {

    /** Copies the list. */
    public Choice {
        tried = List.copyOf(Objects.requireNonNull(tried, "tried"));
    }

    /** The quickest plan on average, whatever its risk. */
    public Optional<Risk> reckless() {
        return quickest(1);
    }

    /**
     * The quickest plan on average whose counted probability of failure is at most {@code most}.
     *
     * @param most 0 to 1
     */
    public Optional<Risk> quickest(double most) {
        Checks.within("failure_probability", most, 0, 1);
        return tried.stream()
                .filter(risk -> risk.failed().value() <= most && !Double.isNaN(risk.meanTime()))
                .min(Comparator.comparingDouble(Risk::meanTime));
    }

    /**
     * The plan with the least expected time where a failure costs this much.
     *
     * @param seconds lost by a failure
     */
    public Optional<Risk> cheapest(double seconds) {
        Checks.notNegative("failure_cost_s", seconds);
        return tried.stream()
                .filter(risk -> !Double.isNaN(risk.meanTime()))
                .min(Comparator.comparingDouble(risk -> risk.expectedTime(seconds)));
    }

    /** The curve of time against risk: plans that no other beats in both, safest and slowest first. */
    public List<Risk> curve() {
        return tried.stream()
                .filter(risk -> !Double.isNaN(risk.meanTime()) && tried.stream().noneMatch(other -> beats(other, risk)))
                .sorted(Comparator.comparingDouble(risk -> risk.failed().value()))
                .toList();
    }

    private static boolean beats(Risk a, Risk b) {
        double p = a.failed().value() - b.failed().value();
        double t = a.meanTime() - b.meanTime();
        return p <= 0 && t <= 0 && (p < 0 || t < 0);
    }
}
