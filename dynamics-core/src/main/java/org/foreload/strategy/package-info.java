/**
 * How late to brake, which release is quickest, and what it gains over braking in a straight line.
 *
 * <p><b>The key idea.</b> Releases are only comparable when each brakes as late as it can. So every release gets its
 * own latest brake point, the last one from which the car still makes the corner with the margin asked for, and then
 * the times between the same two markers are compared.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.strategy.CornerStudy} puts a car, a corner and a driver together: start
 * there; {@link org.foreload.strategy.BrakePointSearch} is the one search for brake points;
 * {@link org.foreload.strategy.ReleaseSweep} tries the releases of a {@link org.foreload.strategy.SweepPlan};
 * {@link org.foreload.strategy.Allowance} is the margin asked for.
 *
 * <p><b>Valid when</b> the corner is one the car must slow down for, and has a straight after it that is worth exit
 * speed. <b>Neglects</b> traffic, the next corner, and what a driver can repeat. <b>Fails when</b> the approach is so
 * short that the brake point would lie before it: then no brake point is found, and the finding says so.
 */
package org.foreload.strategy;
