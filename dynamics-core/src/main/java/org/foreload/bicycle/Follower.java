package org.foreload.bicycle;

import org.foreload.vehicle.Suspension.Response;

/**
 * How the sprung mass follows what the forces would hold in the end: ẍ = ω²·(target − x) − 2·ζ·ω·ẋ with ω = 2π·f.
 * Nothing follows where the body is rigid.
 */
final class Follower {

    private final boolean rigid;
    private final double stiffness;
    private final double damping;

    Follower(Response response) {
        rigid = response.rigid();
        double omega = 2 * Math.PI * response.frequency();
        stiffness = omega * omega;
        damping = 2 * response.dampingRatio() * omega;
    }

    boolean rigid() {
        return rigid;
    }

    /** Writes the rates of a value and of its own rate, which stand beside each other. */
    void follow(double[] x, int index, double target, double[] rate) {
        rate[index] = rigid ? 0 : x[index + 1];
        rate[index + 1] = rigid ? 0 : stiffness * (target - x[index]) - damping * x[index + 1];
    }
}
