package org.foreload.examples.sheet;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.strategy.Finding;
import org.foreload.study.Sweep;

/**
 * A plan and the releases around it, of which none is much quicker and yet within what the driver accepts: one that is
 * takes the plan's place, with its own around it.
 *
 * @param chosen the plan
 * @param ladder the releases around it
 * @param risks how often the driver fails with those of them that are quicker, by their index; where the plan itself is
 *     not within what the driver accepts, with all that make the corner
 * @param tried releases of all ladders but their middles
 */
record Surroundings(DriverPlan chosen, Ladder ladder, Map<Integer, Risk> risks, int tried) {

    /** A release that is quicker by less, s, is no reason to plan anew: the page shows hundredths. */
    static final double QUICKER = 0.01;

    Surroundings {
        risks = Map.copyOf(risks);
    }

    /**
     * The plan of a sweep, or what is better near it.
     *
     * @return empty after a stop
     */
    static Optional<Surroundings> of(RiskStudy risks, DriverPlan first, double accepted, Sweep sweep) {
        DriverPlan chosen = first;
        int tried = 0;
        while (true) {
            Optional<Ladder> ladder = Ladder.around(risks.study(), chosen.plan(), sweep);
            if (ladder.isEmpty()) {
                return Optional.empty();
            }
            List<Finding> rungs = ladder.get().rungs();
            tried += rungs.size() - 1;
            Map<Integer, Risk> counted = new HashMap<>();
            for (int index : worthCounting(ladder.get(), chosen)) {
                Optional<Risk> risk = risks.of(rungs.get(index).entry().plan(), sweep);
                if (risk.isEmpty()) {
                    return Optional.empty();
                }
                counted.put(index, risk.get());
            }
            DriverPlan before = chosen;
            for (Map.Entry<Integer, Risk> one : counted.entrySet()) {
                chosen = chosen.orQuickest(rungs.get(one.getKey()), one.getValue());
            }
            DriverPlan known = chosen;
            Optional<DriverPlan> better = counted.entrySet().stream()
                    .filter(one -> one.getValue().failed().value() <= accepted)
                    .map(one -> known.instead(rungs.get(one.getKey()), one.getValue()))
                    .filter(one -> !before.accepted() || before.time() - one.time() >= QUICKER)
                    .min(Comparator.comparingDouble(DriverPlan::time));
            if (better.isEmpty()) {
                return Optional.of(new Surroundings(chosen, ladder.get(), counted, tried));
            }
            chosen = better.get();
        }
    }

    private static List<Integer> worthCounting(Ladder ladder, DriverPlan chosen) {
        List<Finding> rungs = ladder.rungs();
        return IntStream.range(0, rungs.size())
                .filter(i -> i != ladder.middle() && rungs.get(i).found())
                .filter(i -> !chosen.accepted() || rungs.get(i).entry().time() < chosen.time())
                .boxed()
                .toList();
    }
}
