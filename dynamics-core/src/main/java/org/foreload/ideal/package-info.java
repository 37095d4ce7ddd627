/**
 * The fastest quasi-steady entry on a given line: the bound that every simulated entry is compared with.
 *
 * <p><b>Key idea.</b> Two passes over the line. Backward: from which speeds can the rest of the line still be driven?
 * Forward: as fast as that allows. At each place the feasible pairs of speed squared and acceleration form a convex set
 * ({@link org.foreload.grip.LocalGrip}), so the speeds of the backward pass are intervals, their upper ends are all
 * that need be kept, and driving as fast as possible at each step is the fastest overall. The feasible accelerations at
 * a speed can lie wholly on the braking side, so cornering speed alone ("the fastest at which the car can hold the
 * curve") does not answer the question.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.ideal.IdealEntry#solve} makes an {@link org.foreload.ideal.IdealProfile};
 * {@link org.foreload.ideal.IdealOptions} sets the step and the driver's margin. A half-metre step holds closed forms
 * and an independent solution to a few parts in a hundred thousand, in one or two milliseconds per corner.
 *
 * <p><b>Valid when</b> loads, brakes and tyres answer at once. <b>Neglects</b> everything transient, and the yaw
 * impulse at a jump of curvature (there the change of curvature has no gradient; lay a spiral between to feel it).
 * <b>Fails when</b> the bank is steeper than the tyres hold at a standstill: a speed can then be too low, which is not
 * looked for; and where cornering lifts a wheel, the set is not exactly convex: the profile is still feasible, for the
 * forward pass goes back where it meets a dead end, but perhaps not the fastest.
 */
package org.foreload.ideal;
