package org.foreload.pedal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.FootError;
import org.foreload.braking.FootError.Leg;
import org.foreload.braking.Pedal;
import org.foreload.conventions.Checks;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.foreload.study.Sweep;

/**
 * Pedals compared on the same intended release: the same leg, attempt by attempt, presses each of them. A driver whose
 * foot reacts expects the speeds of the release as intended.
 *
 * @param leg how well the leg reproduces a push
 * @param attempts how many attempts, 2 or more
 * @param seed seed of the draws; the same seed gives the same legs
 */
public record PedalStudy(Leg leg, int attempts, long seed) {

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public PedalStudy {
        Objects.requireNonNull(leg, "leg");
        Checks.within("attempts", attempts, 2, 1_000_000);
    }

    /**
     * What one pedal made of the release.
     *
     * @param pedal the pedal
     * @param brakeScatter root mean square of what the brake demand was off, as a part of the peak, over all attempts,
     *     driven or not, at the peak and on the way down
     * @param outcomes how the attempts that were driven ended; those that did not occur are absent
     * @param meanTime of those that made the corner, s; NaN if none did
     * @param timeDeviation standard deviation of those times, s; NaN for fewer than two
     * @param planned number of attempts in the study; more than were driven after a stop or an interrupt
     */
    public record Result(
            Pedal pedal,
            double brakeScatter,
            Map<Outcome, Integer> outcomes,
            double meanTime,
            double timeDeviation,
            int planned) {

        /** Copies the outcomes, in the order in which they are declared. */
        public Result {
            Objects.requireNonNull(pedal, "pedal");
            Map<Outcome, Integer> ordered = new EnumMap<>(Outcome.class);
            ordered.putAll(Map.copyOf(Objects.requireNonNull(outcomes, "outcomes")));
            outcomes = Collections.unmodifiableMap(ordered);
        }

        /** Number of attempts that were driven. */
        public int driven() {
            return outcomes.values().stream().mapToInt(Integer::intValue).sum();
        }

        /** Whether every attempt was driven; false after a stop or an interrupt that left one out. */
        public boolean complete() {
            return driven() == planned;
        }

        /** Number of attempts that ended so. */
        public int count(Outcome outcome) {
            Objects.requireNonNull(outcome, "outcome");
            return outcomes.getOrDefault(outcome, 0);
        }
    }

    /**
     * Presses each pedal.
     *
     * @param simulator car, corner and driver; the pedal's lag takes the place of the driver's between foot and brake
     * @param plan what is intended
     * @param pedals the pedals
     * @param sweep on how many threads, and who watches the progress; a stop, or an interrupt of the thread that
     *     called, leaves out what was not begun
     */
    public List<Result> run(EntrySimulator simulator, BrakePlan plan, List<Pedal> pedals, Sweep sweep) {
        Objects.requireNonNull(simulator, "simulator");
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(pedals, "pedals");
        Objects.requireNonNull(sweep, "sweep");
        List<EntrySimulator> simulators = pedals.stream()
                .map(pedal -> simulator.with(
                        simulator.driver().with(simulator.driver().leftFoot().withLag(pedal.buildUpLag()))))
                .toList();
        SpeedPlan expected = simulator.expected(plan);
        long[] seeds = new SplittableRandom(seed).longs(attempts).toArray();
        List<int[]> cases = new ArrayList<>();
        for (int pedal = 0; pedal < pedals.size(); pedal++) {
            for (int attempt = 0; attempt < attempts; attempt++) {
                cases.add(new int[] {pedal, attempt});
            }
        }
        List<Optional<EntryResult>> entries = sweep.run(
                cases,
                one -> simulators
                        .get(one[0])
                        .probe(plan.with(FootError.draw(pedals.get(one[0]), leg, seeds[one[1]])), expected));
        List<Result> results = new ArrayList<>();
        for (int pedal = 0; pedal < pedals.size(); pedal++) {
            List<EntryResult> mine = entries.subList(pedal * attempts, (pedal + 1) * attempts).stream()
                    .flatMap(Optional::stream)
                    .toList();
            results.add(result(plan, pedals.get(pedal), seeds, mine));
        }
        return results;
    }

    private Result result(BrakePlan plan, Pedal pedal, long[] seeds, List<EntryResult> entries) {
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        entries.forEach(entry -> outcomes.merge(entry.outcome(), 1, Integer::sum));
        double[] times = entries.stream()
                .filter(EntryResult::made)
                .mapToDouble(EntryResult::time)
                .toArray();
        return new Result(pedal, scatter(plan, pedal, seeds), outcomes, mean(times), deviation(times), attempts);
    }

    /** Over a stretch of time at the peak and on its way down to a tenth of it, evenly. */
    private double scatter(BrakePlan plan, Pedal pedal, long[] seeds) {
        double squares = 0;
        for (long one : seeds) {
            FootError error = FootError.draw(pedal, leg, one);
            for (int i = 0; i < LEVELS; i++) {
                double intended = plan.peakDeceleration() * (1 - 0.9 * i / (LEVELS - 1));
                double delivered = error.delivered(intended, plan.buildUpTime() + i * LEVEL_TIME);
                double off = (delivered - intended) / plan.peakDeceleration();
                squares += off * off;
            }
        }
        return Math.sqrt(squares / (seeds.length * LEVELS));
    }

    /** Levels of the brake at which the scatter is read. */
    private static final int LEVELS = 20;

    /** Time between them, s: together as long as a release takes. */
    private static final double LEVEL_TIME = 0.1;

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElse(Double.NaN);
    }

    private static double deviation(double[] values) {
        double mean = mean(values);
        double squares = Arrays.stream(values)
                .map(value -> (value - mean) * (value - mean))
                .sum();
        return values.length < 2 ? Double.NaN : Math.sqrt(squares / (values.length - 1));
    }
}
