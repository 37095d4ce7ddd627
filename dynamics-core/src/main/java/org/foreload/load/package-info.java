/**
 * How load moves between axles and wheels.
 *
 * <p><b>Key idea.</b> A car that brakes stands on its nose, a car that corners stands on its outer wheels, and the sum
 * does not change: braking by d moves m·d·h/L from the rear to the front axle, cornering by a moves load across each
 * axle in proportion to that axle's share of the roll stiffness and to its roll-centre height. Every transfer is linear
 * in speed squared, deceleration and lateral acceleration, until a wheel leaves the road.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.load.LoadTransfer} gives each part by itself and assembles
 * {@link org.foreload.load.WheelLoads} from them; {@link org.foreload.load.RoadPlane} resolves gravity and cornering on
 * a sloping, banked road. Not here: how fast the transfers build up (the transient model holds them as states).
 *
 * <p><b>Valid when</b> pitch and roll angles are small and steady. <b>Neglects</b> the shift of the centre of gravity
 * as the body rolls, jacking, anti-dive geometry (which changes the attitude, not the steady load), vertical curvature
 * of the road, unsprung masses by themselves. <b>Fails when</b> a wheel has been lifted: then its deficit is passed to
 * the other wheel of the axle, which keeps the sum but not the balance of moments;
 * {@link org.foreload.load.WheelLoads#lifted()} names them.
 */
package org.foreload.load;
