package org.foreload.collocation;

import java.util.ArrayList;
import java.util.List;

/** Whether the last steps together brought next to nothing: then the search stands where the cost is flat. */
final class Stillness {

    private static final int STEPS = 15;

    /** What these steps must bring together to go on, in units of the cost, here s. */
    private static final double LITTLE = 2e-4;

    private final List<Double> costs = new ArrayList<>();

    /** The cost after one more step. */
    void add(double cost) {
        costs.add(cost);
    }

    boolean holds() {
        int last = costs.size() - 1;
        return last >= STEPS && Math.abs(costs.get(last - STEPS) - costs.get(last)) < LITTLE;
    }
}
