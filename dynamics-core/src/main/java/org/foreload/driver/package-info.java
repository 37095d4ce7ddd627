/**
 * Who turns the wheel and works brake and throttle.
 *
 * <p><b>Key idea.</b> A comparison of releases must not turn into a comparison of drivers. So the driver here knows the
 * car by its inverse tyre model, looks ahead, steers by the force that the front axle must give, never past its slip
 * peak, and countersteers when the rear steps out. After the release the driver holds speed, then opens up along a
 * plan, within what engine and driven wheels have left.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.driver.Steering}, {@link org.foreload.driver.Throttle} with its
 * {@link org.foreload.driver.SpeedPlan}, {@link org.foreload.driver.BrakeFoot}, and
 * {@link org.foreload.driver.DriverSettings}. The left foot carries out its {@link org.foreload.braking.BrakePlan} as
 * planned, or, with a {@link org.foreload.driver.Reaction}, eases a stopped wheel and brakes more where the car is
 * faster than the plan led to expect.
 *
 * <p><b>Valid when</b> the driver knows car and line well. <b>Neglects</b> learning, fatigue, noise of the hands, and
 * any change of plan on the way but for that reaction. <b>Fails when</b> the line bends faster than hands can follow:
 * the rate limit then makes the error, not the tyres.
 */
package org.foreload.driver;
