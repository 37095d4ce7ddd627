/**
 * How the brake goes on and comes off.
 *
 * <p><b>Key idea.</b> A brake plan is three independent answers: <i>when</i> (the brake point), <i>how hard</i> (the
 * peak deceleration and the time to reach it), and <i>how it comes off</i> (a {@link org.foreload.braking.Release}: a
 * shape between two stations). The foot goes on in time and comes off over distance: pressing is a movement as quick as
 * the leg allows, releasing follows the line. What is asked for is the product of the two, so a release may begin
 * before the peak is reached.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.braking.BrakePlan}; {@link org.foreload.braking.ReleaseShapes} with
 * linear, progressive, held, circle, smooth, two-stage and abrupt; {@link org.foreload.braking.TabulatedRelease} for
 * any other shape. {@link org.foreload.braking.PedalDisturbance} is what foot and pedal make of a plan over time: a
 * hesitation, a ripple, or a {@link org.foreload.braking.FootError} felt through a {@link org.foreload.braking.Pedal}
 * that senses force or travel. A plan is a wish: what the tyres and the brakes make of it is not here.
 *
 * <p><b>Valid when</b> one foot presses once and comes off once. <b>Neglects</b> a second stab, brake fade, and
 * anti-lock control; an unsteady foot only where a plan is given one. <b>Fails when</b> the car stops before the
 * release has started: stations no longer pass, and the plan keeps asking.
 */
package org.foreload.braking;
