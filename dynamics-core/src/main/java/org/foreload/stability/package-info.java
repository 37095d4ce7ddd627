/**
 * Why the rear goes while braking.
 *
 * <p><b>Key idea.</b> Braking takes load off the rear axle and friction off all wheels, just when the rear must hold
 * the car. Along a simulated entry the eigenvalues of the lateral motion show where the car is least stable, and how
 * long before a spin it was lost. Growth rates are in 1/s, positive where a disturbance grows.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.stability.EntryStability} reads a finished entry;
 * {@link org.foreload.stability.DrivenCar} has the motions of a car with its driver's hands in a steady bend.
 *
 * <p><b>Valid when</b> the models of car, tyre and driver hold. <b>Neglects</b> all that they neglect, and along an
 * entry what the driver does about it: the steering is held fixed. <b>Fails when</b> the eigenvalues of a motion that
 * itself changes within a few tenths of a second are read as a forecast: they say what the car would do if the moment
 * lasted.
 */
package org.foreload.stability;
