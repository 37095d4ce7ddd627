package org.foreload.bicycle;

import org.foreload.conventions.Bounds;
import org.foreload.load.LoadTransfer;
import org.foreload.tyre.ContactPatch;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/** Loads and forces of the two wheels of one axle, which share a slip and get equal shares of brake and drive. */
final class AxleForces {

    /**
     * A stopped wheel turns again when the brake asks for less than this share of the road's pull on it: the gap to one
     * keeps a wheel at its limit from stopping and turning without end, and stands for the torque that spins it up.
     */
    private static final double UNLOCK_SHARE = 0.9;

    /** Brake force, N, too small to stop even a wheel in the air. */
    private static final double IDLE_FORCE = 1;

    private final Tyre tyre;
    private final int left;
    private final double brakeShare;
    private final double driveShare;
    private final double relaxationLength;
    private final boolean antiLock;

    /**
     * @param tyre each of the two tyres
     * @param left index of the left wheel; that of the right one follows
     * @param brakeShare share of the whole brake force that one wheel gets
     * @param driveShare share of the whole drive force that one wheel gets
     * @param antiLock whether the wheels are kept from stopping
     */
    AxleForces(Tyre tyre, int left, double brakeShare, double driveShare, boolean antiLock) {
        this.tyre = tyre;
        this.left = left;
        this.brakeShare = brakeShare;
        this.driveShare = driveShare;
        this.antiLock = antiLock;
        this.relaxationLength = tyre.relaxationLength();
    }

    /**
     * The slip that the tyres feel, from the entry of the state that holds it, or holds its lag behind the true one.
     */
    double felt(double entry, double slip, boolean lag) {
        if (!(relaxationLength > 0)) {
            return slip;
        }
        return lag ? entry + slip : entry;
    }

    /** Brake force, N, that the two wheels put on the road with the forces that were found. */
    double brakeOnRoad(Inputs inputs, WheelForces wheels) {
        return brakeOnRoad(left, inputs, wheels) + brakeOnRoad(left + 1, inputs, wheels);
    }

    private double brakeOnRoad(int wheel, Inputs inputs, WheelForces wheels) {
        double slowing = inputs.driveForce * driveShare - wheels.longitudinal[wheel];
        return Bounds.clamp(0, slowing, inputs.brakeForce * brakeShare);
    }

    /** Most lateral force, N, that the friction ellipse leaves them beside it; a stopped wheel has none. */
    double besideBrake(Inputs inputs, WheelForces wheels) {
        return besideBrake(left, inputs, wheels) + besideBrake(left + 1, inputs, wheels);
    }

    private double besideBrake(int wheel, Inputs inputs, WheelForces wheels) {
        return inputs.locks.locked(wheel)
                ? 0
                : tyre.peakForceYBeside(brakeOnRoad(wheel, inputs, wheels), wheels.load[wheel]);
    }

    /** Rate, 1/s, of the slip that the tyres feel. */
    double slipRate(double speed, double slip, double felt) {
        return relaxationLength > 0 ? speed / relaxationLength * (slip - felt) : 0;
    }

    /**
     * Fills in the two wheels.
     *
     * @param load of the axle, N
     * @param lateral load that moves from the left to the right wheel, N
     * @param felt slip that the tyres feel
     * @param slip the true one, with which a stopped wheel slides
     */
    void forces(double load, double lateral, double felt, double slip, Inputs inputs, WheelForces wheels) {
        double brake = inputs.brakeForce * brakeShare;
        double asked = inputs.driveForce * driveShare - brake;
        double leftLoad = LoadTransfer.wheel(load, -lateral);
        double rightLoad = LoadTransfer.wheel(load, lateral);
        WheelLocks locks = inputs.locks;
        if (!antiLock && !locks.locked(left) && !locks.locked(left + 1)) {
            tyre.rollAxle(felt, asked, leftLoad, rightLoad, wheels.patch, wheels.otherPatch);
            double held = Bounds.smaller(asked, -brake);
            rolls(left, leftLoad, held, wheels.patch, wheels);
            rolls(left + 1, rightLoad, held, wheels.otherPatch, wheels);
        } else {
            wheel(left, leftLoad, felt, slip, brake, asked, locks, wheels);
            wheel(left + 1, rightLoad, felt, slip, brake, asked, locks, wheels);
        }
    }

    private void wheel(
            int wheel,
            double load,
            double felt,
            double slip,
            double brake,
            double asked,
            WheelLocks locks,
            WheelForces wheels) {
        ContactPatch patch = wheels.patch;
        if (locks.locked(wheel)) {
            tyre.slide(slip, load, patch);
            wheels.longitudinal[wheel] = -patch.longitudinal();
            wheels.lockMargin[wheel] = brake - UNLOCK_SHARE * patch.longitudinal() - IDLE_FORCE;
            shared(wheel, load, patch, wheels);
        } else {
            double hardest =
                    antiLock ? -Car.ANTI_LOCK_SHARE * tyre.rollingForceLimit(felt, load) : Double.NEGATIVE_INFINITY;
            tyre.roll(felt, Bounds.larger(hardest, asked), load, patch);
            rolls(wheel, load, Bounds.larger(hardest, Bounds.smaller(asked, -brake)), patch, wheels);
        }
    }

    /** Takes up a wheel that rolls, and how much more than {@code held} along itself it could hold. */
    private static void rolls(int wheel, double load, double held, ContactPatch patch, WheelForces wheels) {
        wheels.longitudinal[wheel] = patch.longitudinal();
        wheels.lockMargin[wheel] = patch.limit() + held + IDLE_FORCE;
        shared(wheel, load, patch, wheels);
    }

    private static void shared(int wheel, double load, ContactPatch patch, WheelForces wheels) {
        wheels.load[wheel] = load;
        wheels.lateral[wheel] = -patch.lateral();
        wheels.peakX[wheel] = patch.peakX();
        wheels.peakY[wheel] = patch.peakY();
    }
}
