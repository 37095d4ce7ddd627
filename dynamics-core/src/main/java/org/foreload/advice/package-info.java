/**
 * Advice from a recorded run: one change to what this driver did, what it is worth, and how often it would fail.
 *
 * <p><b>Key idea.</b> What a change is worth is seen by driving it. The line that was recorded and the limits that were
 * recorded make a corner and a car that can be simulated; the driver's own release, driven there, must give the
 * recorded speeds again. Only then is a release with one change worth driving, and the difference of two simulated
 * times is the predicted gain: what the car is wrong by is mostly in both. How often the change would fail is counted
 * with a driver who scatters as this one does from lap to lap.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.advice.Adviser} gives {@link org.foreload.advice.CornerAdvice} for a
 * corner of a {@link org.foreload.recording.Run}: its {@link org.foreload.advice.Likeness}, and each
 * {@link org.foreload.advice.Advice} a {@link org.foreload.advice.Change} with gain, interval and failure probability,
 * or why there is none. {@link org.foreload.advice.DriverScatter} measures the scatter over laps; a
 * {@link org.foreload.advice.Habit} is that and how far the driver waits for a car at its limit.
 *
 * <p><b>Valid when</b> the recorded run is reproduced within what {@link org.foreload.advice.AdviceSettings} allow, and
 * the changes are small. <b>Neglects</b> the edges of the road, which no recording shows, its slopes, and what a fitted
 * car has by guess: wheelbase, stiffnesses, brake balance; braking in a turn is therefore kept within what the driver
 * has shown. <b>Fails when</b> the driver never came near the limits: then the car is taken for weaker than it is, and
 * gains are missed.
 */
package org.foreload.advice;
