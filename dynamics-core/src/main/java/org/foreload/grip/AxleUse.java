package org.foreload.grip;

/**
 * What is asked of one axle, and what it has.
 *
 * @param load N
 * @param longitudinalForce N, positive when braking, negative when driving; half on each wheel
 * @param lateralDemand N, positive to the left
 * @param lateralCapacity N, what the longitudinal force leaves: the sum over both wheels of peak·√(1 − (F/peak)²); a
 *     wheel asked for more longitudinal force than it has counts nothing
 * @param utilisation the smallest factor on all friction with which the axle just carries its demand: 1 at the limit,
 *     above 1 over it; infinite where a wheel without load is asked for force. With anti-lock brakes never more than
 *     that of both axles together, which then brake as hard as each can
 */
public record AxleUse(
        double load, double longitudinalForce, double lateralDemand, double lateralCapacity, double utilisation) {

    /**
     * Adhesion that the axle uses: force in the road's plane over load. In a straight line this is the adhesion
     * utilisation f = T/N of UN Regulation 13-H, Annex 5 (from memory), infinite for force without load.
     */
    public double adhesion() {
        double force = Math.hypot(longitudinalForce, lateralDemand);
        return force == 0 ? 0 : force / load;
    }
}
