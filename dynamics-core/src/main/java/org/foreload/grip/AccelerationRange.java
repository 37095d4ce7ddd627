package org.foreload.grip;

/**
 * Longitudinal accelerations between two ends, m/s², positive when speeding up. It can lie wholly on the braking side.
 *
 * @param lowest hardest braking (or least driving), m/s²
 * @param highest hardest driving (or least braking), m/s²
 */
public record AccelerationRange(double lowest, double highest) {}
