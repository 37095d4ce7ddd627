package org.foreload.advice;

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
        String cause) {}
