/**
 * Axes, signs, and guards at the border.
 *
 * <p><b>Key idea.</b> Inside the library every number is a double in SI units, with angles in radians; names of fields
 * in files carry the unit ({@code mass_kg}). Axes follow ISO 8855: x forward, y left, z up; yaw, steer and curvature
 * are positive to the left. Deceleration is positive when slowing. A station is distance along the line in metres, zero
 * where the line starts to turn (turn-in), negative on the approach.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.conventions.Checks} guards the numbers that enter a model;
 * {@link org.foreload.conventions.InvalidValueException} says which field, what value, and what is allowed;
 * {@link org.foreload.conventions.Bounds} keeps numbers between bounds in the equations of motion, where it must be
 * quick; {@link org.foreload.conventions.Gravity} is the one physical constant.
 *
 * <p><b>Valid when</b> gravity may be taken as 9.81 m/s² wherever the road is. <b>Neglects</b> its change with latitude
 * and height, at most 0.3 % between equator and pole. <b>Fails when</b> a guard is written so that NaN slips through;
 * those here are not.
 */
package org.foreload.conventions;
