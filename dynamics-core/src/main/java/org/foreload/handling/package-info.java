/**
 * How a car answers a small disturbance while it brakes and corners: whether it settles, oscillates or spins.
 *
 * <p><b>Key idea.</b> Near a steady motion, the trim, the car's lateral motion is a linear system of two states,
 * lateral velocity and yaw rate, whose coefficients come from the slopes of the tyre curves at that trim. Braking takes
 * load off the rear axle and friction off every wheel; both flatten the curves, the rear ones first. The real parts of
 * the eigenvalues say how quickly a disturbance decays; where one is positive, the car turns away from its course by
 * itself.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.handling.Trim} solves for the quasi-steady motion at a speed, a lateral
 * acceleration and a deceleration; {@link org.foreload.handling.LinearHandling} gives understeer gradient, yaw gain,
 * frequency, damping and margins there; {@link org.foreload.handling.LateralModel} linearises about any
 * {@link org.foreload.handling.OperatingPoint}, steady or not. Not here: what the driver does about it.
 *
 * <p><b>Valid when</b> the disturbance is small and the trim changes slowly against the car's own motion.
 * <b>Neglects</b> in the two-state model the lags of tyres and roll, which
 * {@link org.foreload.handling.LinearHandling#laggedEigenvalues} brings in, that of pitch, and engine power. About a
 * trim loads follow the lateral acceleration; about a moment of a run, where they need not have settled, they are held.
 * <b>Fails when</b> a trim does not exist, because an axle lacks the grip or a wheel would lock: then
 * {@link org.foreload.handling.Trim#find} is empty. At a kink of a tyre curve the slope is that of one side.
 */
package org.foreload.handling;
