package org.foreload.load;

import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;

/**
 * Loads between the four wheels and the road, N, perpendicular to the road's plane; never below zero.
 *
 * @param frontLeft N
 * @param frontRight N
 * @param rearLeft N
 * @param rearRight N
 */
public record WheelLoads(double frontLeft, double frontRight, double rearLeft, double rearRight) {

    /** Load on the front axle, N. */
    public double frontAxle() {
        return frontLeft + frontRight;
    }

    /** Load on the rear axle, N. */
    public double rearAxle() {
        return rearLeft + rearRight;
    }

    /** Load on all wheels, N: weight (as the road's plane sees it) plus downforce. */
    public double total() {
        return frontAxle() + rearAxle();
    }

    /** Load on one wheel, N. */
    public double of(Wheel wheel) {
        return switch (Objects.requireNonNull(wheel, "wheel")) {
            case FRONT_LEFT -> frontLeft;
            case FRONT_RIGHT -> frontRight;
            case REAR_LEFT -> rearLeft;
            case REAR_RIGHT -> rearRight;
        };
    }

    /** The wheels that have left the road: those without load. */
    public Set<Wheel> lifted() {
        Set<Wheel> lifted = EnumSet.noneOf(Wheel.class);
        for (Wheel wheel : Wheel.values()) {
            if (!(of(wheel) > 0)) {
                lifted.add(wheel);
            }
        }
        return lifted;
    }
}
