/**
 * What the car is.
 *
 * <p><b>Key idea.</b> A car is measured numbers and nothing else, grouped by what they belong to; the equations are in
 * other packages. Every number must be given: there is no default mass, height or friction. All values are in SI units
 * and immutable, so a car can be varied by copies and shared between threads.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.vehicle.Car} of {@link org.foreload.vehicle.Chassis},
 * {@link org.foreload.vehicle.Suspension}, {@link org.foreload.vehicle.Aerodynamics},
 * {@link org.foreload.vehicle.Driveline}, brake share and tyres. What may be absent has a name:
 * {@link org.foreload.vehicle.Aerodynamics#NONE}, {@link org.foreload.vehicle.Suspension.Response#RIGID}.
 *
 * <p><b>Valid when</b> the car has two axles, the same tyre on both wheels of an axle, and its CG on the centre line.
 * <b>Neglects</b> suspension kinematics and travel, differentials, unsprung mass, and any change of downforce with
 * height or pitch. <b>Fails when</b> the front share of the brake force changes with pressure or load, other than by
 * anti-lock brakes.
 */
package org.foreload.vehicle;
