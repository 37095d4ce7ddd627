/**
 * What the car is.
 *
 * <p><b>Key idea.</b> A car is measured numbers and nothing else, grouped by what they belong to; what they do is said
 * in higher packages. Every number is given by the car's owner: there is no default mass, height or friction. Change is
 * by copy, so a car can be swept and shared between threads.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.vehicle.Car} of {@link org.foreload.vehicle.Chassis},
 * {@link org.foreload.vehicle.Suspension}, {@link org.foreload.vehicle.Aerodynamics},
 * {@link org.foreload.vehicle.Driveline}, brake share and tyres. What may be absent has a name:
 * {@link org.foreload.vehicle.Aerodynamics#NONE}, {@link org.foreload.vehicle.Suspension.Response#RIGID}.
 *
 * <p><b>Valid when</b> the car has two axles, the same tyre on both wheels of an axle, and its CG on the centre line.
 * <b>Neglects</b> suspension kinematics and travel, differentials, unsprung mass, and any change of downforce with
 * height or pitch. <b>Fails when</b> brake force is shared by more than a fixed share between front and rear.
 */
package org.foreload.vehicle;
