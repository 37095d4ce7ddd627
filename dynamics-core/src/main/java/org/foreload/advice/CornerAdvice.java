package org.foreload.advice;

import java.util.List;
import java.util.Optional;
import org.foreload.risk.Scatter;

/**
 * What to change in one corner.
 *
 * @param number of the corner
 * @param scatter of the driver in this corner
 * @param likeness how well the simulator drives again what was recorded; empty where it could not be tried
 * @param items the most to be gained first; gains of two do not add up. At most one is two changes together
 * @param withheld why there is no advice, or, where the search was stopped, no more of it; empty where all was tried,
 *     whether or not something gained
 */
public record CornerAdvice(
        int number, Scatter scatter, Optional<Likeness> likeness, List<Advice> items, Optional<String> withheld) {

    /** Copies the list. */
    public CornerAdvice {
        items = List.copyOf(items);
    }

    /** The most that an item gains, s; zero if there is none. */
    public double best() {
        return items.isEmpty() ? 0 : items.get(0).gain().value();
    }
}
