package org.foreload.risk;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.Outcome;
import org.foreload.study.Proportion;

/**
 * How a plan turns out for a driver who scatters.
 *
 * @param plan the plan
 * @param failed probability that the car does not make the corner
 * @param outcomes the same for each way to fail
 * @param meanTime mean time of the entries that made it, s; NaN if none did
 * @param timeDeviation their standard deviation, s; NaN with fewer than two
 */
public record Risk(
        BrakePlan plan, Proportion failed, Map<Outcome, Proportion> outcomes, double meanTime, double timeDeviation) {

    /** Copies the map, in the order in which outcomes are declared. */
    public Risk {
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(failed, "failed");
        Map<Outcome, Proportion> ordered = new EnumMap<>(Outcome.class);
        ordered.putAll(Map.copyOf(Objects.requireNonNull(outcomes, "outcomes")));
        outcomes = Collections.unmodifiableMap(ordered);
    }

    /** Probability of one outcome. */
    public Proportion of(Outcome outcome) {
        Objects.requireNonNull(outcome, "outcome");
        return outcomes.get(outcome);
    }

    /**
     * Expected time where a failure costs this much more than a mean entry, s; NaN if none made it.
     *
     * @param seconds lost by a failure
     */
    public double expectedTime(double seconds) {
        return meanTime + failed.value() * seconds;
    }

    /** Counts entries: the outcome of each and the time of those that made it. */
    static Risk of(BrakePlan plan, List<Outcome> ended, double[] times) {
        Map<Outcome, Proportion> outcomes = new EnumMap<>(Outcome.class);
        for (Outcome outcome : Outcome.values()) {
            int count = (int) ended.stream().filter(one -> one == outcome).count();
            outcomes.put(outcome, new Proportion(count, ended.size()));
        }
        int made = times.length;
        double mean = 0;
        for (double time : times) {
            mean += time / made;
        }
        double square = 0;
        for (double time : times) {
            square += (time - mean) * (time - mean);
        }
        return new Risk(
                plan,
                new Proportion(ended.size() - made, ended.size()),
                outcomes,
                made > 0 ? mean : Double.NaN,
                made > 1 ? Math.sqrt(square / (made - 1)) : Double.NaN);
    }
}
