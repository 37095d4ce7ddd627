/**
 * Who turns the wheel and works the throttle.
 *
 * <p><b>Key idea.</b> A comparison of releases must not turn into a comparison of drivers. So the driver here knows the
 * car by its inverse tyre model, looks ahead, steers by the force that the front axle must give, never past its slip
 * peak, and countersteers when the rear steps out. After the release the driver holds speed, then opens up along a
 * plan, within what engine and driven wheels have left.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.driver.Steering}, {@link org.foreload.driver.Throttle} with its
 * {@link org.foreload.driver.ExitPlan}, and {@link org.foreload.driver.DriverSettings}. The brake foot follows its
 * {@link org.foreload.braking.BrakePlan} and corrects nothing.
 *
 * <p><b>Valid when</b> the driver knows car and line well. <b>Neglects</b> learning, fatigue, noise of the hands, and
 * any change of plan on the way. <b>Fails when</b> the line bends faster than hands can follow: the rate limit then
 * makes the error, not the tyres.
 */
package org.foreload.driver;
