package org.foreload.braking;

/** Rounding to steps that stays smooth, so that an integrator can follow it: x − sin(2πx/q)·q/2π, flat on each step. */
final class Staircase {

    private Staircase() {}

    static double rounded(double value, double step) {
        return step == 0 ? value : value - step / (2 * Math.PI) * Math.sin(2 * Math.PI * value / step);
    }
}
