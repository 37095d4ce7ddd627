package org.foreload.grip;

import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.Gravity;
import org.foreload.load.LoadTransfer;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;

/**
 * What brakes give of what the foot asks for, on a straight and level road with the load settled. Each axle gives its
 * share of what is asked; with anti-lock brakes no more than {@value Car#ANTI_LOCK_SHARE} of what its tyres carry along
 * themselves. So the axle that is held back first lets the other one go on, and a harder foot slows the car by ever
 * less. Brakes without anti-lock give what is asked until a wheel stops, which is not looked at here.
 */
public final class HeldBrakes {

    /** Rounds in which braking and load settle on each other: each leaves μ·h/L of the error, a third or less. */
    private static final int ROUNDS = 14;

    private final Car car;
    private final LoadTransfer transfer;

    /** The brakes of a car. */
    public HeldBrakes(Car car) {
        this.car = Objects.requireNonNull(car, "car");
        this.transfer = LoadTransfer.of(car);
    }

    /**
     * Deceleration, m/s², that the brakes alone give, without drag.
     *
     * @param asked deceleration that the foot asks of them, m/s²
     * @param speedSquared m²/s²
     * @throws org.foreload.conventions.InvalidValueException if one of them is negative or not finite
     */
    public double given(double asked, double speedSquared) {
        Checks.notNegative("asked", asked);
        Checks.notNegative("speed_squared", speedSquared);
        if (!car.antiLock()) {
            return asked;
        }
        double mass = car.chassis().mass();
        double share = car.frontBrakeShare();
        double drag = car.aerodynamics().drag(speedSquared) / mass;
        double front = transfer.frontAxle(Gravity.G, speedSquared);
        double rear = transfer.rearAxle(Gravity.G, speedSquared);
        double speed = Math.sqrt(speedSquared);
        double given = asked;
        for (int i = 0; i < ROUNDS; i++) {
            double moved = transfer.longitudinal(given + drag, speed, 0);
            double onFront = Math.max(0, Math.min(front + rear, front + moved));
            given = (Math.min(share * asked * mass, held(car.frontTyre(), onFront))
                            + Math.min((1 - share) * asked * mass, held(car.rearTyre(), front + rear - onFront)))
                    / mass;
        }
        return given;
    }

    /** Force, N, to which an axle's two wheels are held at a load, N. */
    private static double held(Tyre tyre, double load) {
        return 2 * Car.ANTI_LOCK_SHARE * tyre.peakForceX(Math.max(0, load) / 2);
    }
}
