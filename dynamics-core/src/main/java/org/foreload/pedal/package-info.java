/**
 * What the driver's foot makes of the brake pedal.
 *
 * <p><b>Key idea.</b> What the foot does with the pedal (a hesitation, a ripple, an error) rings through the pitch of
 * the body into the front load, and so into the grip that the corner is entered with.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.pedal.LockingRamp} finds which axle locks first in a straight line;
 * {@link org.foreload.pedal.PitchResponse} shakes the brake there; {@link org.foreload.pedal.Smoothness} compares a
 * disturbed pedal with a calm one, and {@link org.foreload.pedal.PedalStudy} a pedal that senses force with one that
 * senses travel.
 *
 * <p><b>Valid when</b> the models below hold, and a foot's errors are small beside what it does. <b>Neglects</b> all
 * that they neglect, and that feet learn. <b>Fails when</b> suspension hits its stops, or one attempt is taken for the
 * foot.
 */
package org.foreload.pedal;
