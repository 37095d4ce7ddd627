/**
 * Why the rear goes while braking, and what the driver's foot makes of it.
 *
 * <p><b>Key idea.</b> Braking takes load off the rear axle and friction off all wheels, just when the rear must hold
 * the car. Along a simulated entry the eigenvalues of the lateral motion show where the car is least stable and how
 * long before a spin it was lost. What the foot does with the pedal (a hesitation, a ripple, an error) rings through
 * the pitch of the body into the front load.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.stability.EntryStability} reads a finished entry;
 * {@link org.foreload.stability.LockingRamp} finds which axle locks first in a straight line;
 * {@link org.foreload.stability.PitchResponse} shakes the brake there; {@link org.foreload.stability.Smoothness}
 * compares a disturbed pedal with a calm one, and {@link org.foreload.stability.PedalStudy} a pedal that senses force
 * with one that senses travel.
 *
 * <p><b>Valid when</b> the models below hold. <b>Neglects</b> all that they neglect, and the driver's fear. <b>Fails
 * when</b> the eigenvalues of a motion that itself changes within a few tenths of a second are taken for a prophecy:
 * they say what the car would do if the moment lasted.
 */
package org.foreload.stability;
