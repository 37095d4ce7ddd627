/**
 * Force from slip and wheel load.
 *
 * <p><b>Key idea.</b> A tyre is a spring before it is a slider: force grows with slip, then saturates at friction times
 * load. Braking and cornering draw on one friction ellipse, so what braking takes, cornering lacks. Friction falls with
 * load, so an axle whose load is spread unevenly over its wheels grips less. All forces here are against the slip:
 * positive slip, positive number.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.tyre.Tyre} is the interface for a model of your own;
 * {@link org.foreload.tyre.FrictionTyre} is a tyre with load sensitivity, one {@link org.foreload.tyre.SlipCurve} for
 * all directions (linear, brush or magic formula), and a relaxation length. No friction, stiffness or load has a
 * default. {@link org.foreload.tyre.ContactPatch} is the buffer into which a tyre puts all that one wheel has at once.
 *
 * <p><b>Valid when</b> camber is small and the surface is even, dry or evenly wet. <b>Neglects</b> temperature, wear,
 * pressure, camber, self-aligning moment, plysteer and conicity. <b>Fails when</b> slip is so quick that a first-order
 * lag over the relaxation length no longer says how the force builds up.
 */
package org.foreload.tyre;
