package org.foreload.handling;

/**
 * One natural motion of a linear system: its amplitude goes as e^(real·t), and it oscillates at the imaginary part.
 *
 * @param real 1/s, negative when the motion decays
 * @param imaginary rad/s; zero for a motion that does not oscillate
 */
public record Eigenvalue(double real, double imaginary) {}
