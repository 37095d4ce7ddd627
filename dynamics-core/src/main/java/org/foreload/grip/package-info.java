/**
 * What each axle and the whole car could do at most: the friction circle grown up to two axles and four wheel loads.
 *
 * <p><b>Key idea.</b> At one place of the road, wheel loads, brake force and the lateral force asked of each axle are
 * all linear in speed squared w and deceleration d. What a tyre has left is concave in its load and its longitudinal
 * force. So the pairs (w, d) that the car can drive form a convex set, and every question about it (hardest braking,
 * highest speed, feasible accelerations) is a search along a line that cannot get lost.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.grip.GripLimits}: what a {@link org.foreload.grip.Motion} asks of each
 * axle ({@link org.foreload.grip.GripUse}), and which accelerations are feasible; {@link org.foreload.grip.LocalGrip}
 * and {@link org.foreload.grip.Chord}: the same, fast, for many questions at one place;
 * {@link org.foreload.grip.BrakingGrip}: what braking does to each axle's cornering;
 * {@link org.foreload.grip.GgDiagram}; {@link org.foreload.grip.BrakeDistribution}: straight-line braking;
 * {@link org.foreload.grip.HeldBrakes}: what anti-lock brakes give of what is asked. Utilisation is the friction scale
 * with which an axle just carries its demand: 1 at the limit.
 *
 * <p><b>Valid when</b> steer angles are small (axle forces lie in body axes) and loads have settled. <b>Neglects</b>
 * slip angles and the drag of steered wheels, rolling resistance, engine braking, differential effects, everything
 * transient. <b>Fails when</b> a wheel lifts in cornering: loads stay plausible, but the set is no longer exactly
 * convex.
 */
package org.foreload.grip;
