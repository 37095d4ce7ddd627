/**
 * The same physics, written a second time.
 *
 * <p><b>Key idea.</b> A program agrees with itself however wrong it is. What is here was written from the equations of
 * the theory, not from the library's code, and uses none of it but the records that say what a car is: another
 * formulation (one convex program over the whole line instead of a recursion along it), another independent variable
 * (time instead of distance), another integrator (fixed steps of the classic fourth-order method).
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.validation.reference.ReferenceBound}, the ideal entry as a nonlinear
 * program; {@link org.foreload.validation.reference.ReferenceCar}, the transient car on a flat road, driven open loop.
 *
 * <p><b>Valid when</b> the road is flat and no wheel is lifted by cornering. <b>Neglects</b> banking, grade, stopped
 * wheels, and the driver: it takes steering, brake and throttle as they were recorded. <b>Fails when</b> asked for any
 * of these; it says so.
 */
package org.foreload.validation.reference;
