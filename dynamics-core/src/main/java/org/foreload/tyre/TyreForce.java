package org.foreload.tyre;

/**
 * Force of one tyre against its slip.
 *
 * @param longitudinal newtons, positive when braking
 * @param lateral newtons, positive for positive lateral slip
 */
public record TyreForce(double longitudinal, double lateral) {

    /** No force. */
    public static final TyreForce NONE = new TyreForce(0, 0);
}
