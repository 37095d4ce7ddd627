/**
 * What a car has shown that it can do: friction limits read from recorded accelerations.
 *
 * <p><b>Key idea.</b> Plotted across against along, the accelerations of a driver who works the car fill an ellipse,
 * and its rim is where the tyres end; downforce and drag make it grow with speed. The rim is not the greatest number
 * recorded, which noise made, but a high quantile: the ellipse below which a stated share of all worked moments lies,
 * in every direction and at every speed alike. That is a quantile regression, and laps drawn again at random say how
 * sure it is.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.envelope.FrictionEnvelope} fits the ellipse to the laps of one car, after
 * {@link org.foreload.envelope.EnvelopeSettings}, and gives the limit across and along at a speed, each with its band.
 *
 * <p><b>Valid when</b> the driver goes to the limit often enough to be seen there, in corners and on the brake, and all
 * laps are of one car on one road. <b>Neglects</b> driving: how hard an engine pushes is no friction limit; grade,
 * banking, and the wear of tyres. With brakes that are not shared as the load is, the true limits of braking in a turn
 * lie inside the ellipse. <b>Fails when</b> the driver never reaches the limit: then this is how far the driver went,
 * which is a lower bound of what the car can do, and no band says how much is left.
 */
package org.foreload.envelope;
