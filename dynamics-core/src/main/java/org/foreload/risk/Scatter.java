package org.foreload.risk;

import java.util.List;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * How far a driver strays from a plan, and how far the grip strays from what was expected. All normal deviations about
 * the plan, independent of each other.
 *
 * @param name for reports
 * @param brakePoint standard deviation of the brake point, m
 * @param peak standard deviation of the peak deceleration, as a share of it
 * @param releaseTiming standard deviation of the whole release along the line, m
 * @param ripple how unsteadily the foot presses: standard deviation of the demand over entries and time, as a share of
 *     it; for scale, a leg that pushes wanders by 0.027 (P. Kudzia et al., Scientific Reports 12, 4935, 2022)
 * @param grip standard deviation of the friction of all tyres, as a share of it
 */
public record Scatter(String name, double brakePoint, double peak, double releaseTiming, double ripple, double grip) {

    /** A driver who does exactly what was planned, on exactly the grip expected. */
    public static final Scatter NONE = new Scatter("none", 0, 0, 0, 0, 0);

    /** A beginner. Invented for want of a source. */
    public static final Scatter NOVICE = new Scatter("novice", 4, 0.08, 4, 0.08, 0.015);

    /** A practised driver. Invented for want of a source. */
    public static final Scatter PRACTISED = new Scatter("practised", 1.5, 0.04, 1.5, 0.04, 0.01);

    /** An expert. Invented for want of a source. */
    public static final Scatter EXPERT = new Scatter("expert", 0.7, 0.02, 0.7, 0.02, 0.005);

    /** The invented drivers. */
    public static final List<Scatter> PRESETS = List.of(NOVICE, PRACTISED, EXPERT);

    /** Checks the numbers; throws {@link InvalidValueException} with the field's name. */
    public Scatter {
        Objects.requireNonNull(name, "name");
        Checks.notNegative("brake_point_scatter_m", brakePoint);
        Checks.within("peak_scatter", peak, 0, 1);
        Checks.notNegative("release_scatter_m", releaseTiming);
        Checks.within("pedal_ripple", ripple, 0, 1);
        Checks.within("grip_scatter", grip, 0, 1);
    }

    /**
     * The invented driver of that name.
     *
     * @throws InvalidValueException if there is none; it lists the names
     */
    public static Scatter named(String name) {
        Objects.requireNonNull(name, "name");
        return PRESETS.stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new InvalidValueException(
                        "driver",
                        name,
                        "one of "
                                + String.join(
                                        ", ",
                                        PRESETS.stream().map(Scatter::name).toList())));
    }

    /** The same kind of driver with every deviation this many times as large. */
    public Scatter times(double factor) {
        return new Scatter(
                name,
                brakePoint * factor,
                Math.min(1, peak * factor),
                releaseTiming * factor,
                Math.min(1, ripple * factor),
                Math.min(1, grip * factor));
    }
}
