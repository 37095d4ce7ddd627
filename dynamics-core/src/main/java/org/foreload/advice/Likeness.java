package org.foreload.advice;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;

/**
 * How well the simulator drives again what was recorded.
 *
 * @param plan the driver's plan as it was fitted; stations from turn-in
 * @param friction factor on the friction of the car that was begun with
 * @param exitUse share of the friction with which the driver leaves the corner
 * @param speedError root mean square difference of speed over the line, m/s
 * @param timeError time of the simulated run less that of the recorded one, s
 * @param made whether the simulated run made the corner
 * @param cause how it ended
 */
public record Likeness(
        BrakePlan plan,
        double friction,
        double exitUse,
        double speedError,
        double timeError,
        boolean made,
        String cause) {

    /** Refuses null by the component's name. */
    public Likeness {
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(cause, "cause");
    }

    /** Why the simulated run is not taken for the recorded one; empty where it is. */
    Optional<String> unlike(AdviceSettings settings) {
        if (!made) {
            return Optional.of("the fitted car does not make the corner as it was driven: " + cause);
        }
        boolean like = speedError <= settings.speedError() && Math.abs(timeError) <= settings.timeError();
        return like
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "the simulated run is not like the recorded one: %.2f m/s and %.2f s off, %.2f m/s and %.2f s allowed",
                        speedError,
                        timeError,
                        settings.speedError(),
                        settings.timeError()));
    }
}
