package org.foreload.handling;

/**
 * One natural motion of a linear system: it grows or dies as e^(real·t) and turns at the imaginary part.
 *
 * @param real 1/s, negative when the motion decays
 * @param imaginary rad/s
 */
public record Eigenvalue(double real, double imaginary) {}
