package org.foreload.advice;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import org.foreload.recording.RecordedCorner;

/**
 * What to change in one corner.
 *
 * @param number of the corner
 * @param scatter of the driver in this corner
 * @param likeness how well the simulator drives again what was recorded; empty where it could not be tried
 * @param items what surely gains most first, see {@link #towards}; gains of two do not add up. At most one is two
 *     changes together
 * @param withheld why there is no advice, or, where the search was stopped, no more of it; empty where all was tried,
 *     whether or not something gained
 */
public record CornerAdvice(
        int number, DriverScatter scatter, Optional<Likeness> likeness, List<Advice> items, Optional<String> withheld) {

    /** Copies the list; null is refused by the component's name. */
    public CornerAdvice {
        Objects.requireNonNull(scatter, "scatter");
        Objects.requireNonNull(likeness, "likeness");
        items = List.copyOf(Objects.requireNonNull(items, "items"));
        Objects.requireNonNull(withheld, "withheld");
    }

    /** The most that an item gains, s; zero if there is none. */
    public double best() {
        return items.stream().mapToDouble(one -> one.gain().value()).max().orElse(0);
    }

    /**
     * The same in another order: of two that are worth the same within their uncertainty, what comes nearer to a
     * quicker lap stands first.
     *
     * @param did what the driver did in this corner
     * @param quicker what was done there in the quicker lap
     */
    public CornerAdvice towards(RecordedCorner did, RecordedCorner quicker) {
        Objects.requireNonNull(did, "did");
        Objects.requireNonNull(quicker, "quicker");
        return ordered(one -> one.steps().stream().allMatch(step -> step.towards(did, quicker)));
    }

    /**
     * By the low end of the interval, and by the high end where the item is preferred: so a preferred one stands before
     * each other that its interval reaches, and behind each that surely gains more.
     */
    CornerAdvice ordered(Predicate<Advice> preferred) {
        Comparator<Advice> most = Comparator.comparingDouble(
                one -> preferred.test(one) ? one.gain().high() : one.gain().low());
        return new CornerAdvice(
                number,
                scatter,
                likeness,
                items.stream().sorted(most.reversed()).toList(),
                withheld);
    }
}
