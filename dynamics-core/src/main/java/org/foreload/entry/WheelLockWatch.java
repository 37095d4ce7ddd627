package org.foreload.entry;

import java.util.List;
import java.util.Optional;
import org.foreload.bicycle.WheelForces;
import org.foreload.bicycle.WheelLocks;
import org.foreload.conventions.Bounds;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.integrate.Crossing;
import org.foreload.load.Wheel;
import org.foreload.vehicle.Car;

/** Watches the wheels of one run: when one stops or turns again, for how long it stands, and how near it came. */
final class WheelLockWatch {

    /** Changes between rolling and stopped after which a run is given up as locked up. */
    private static final int MOST_CHANGES = 200;

    /** Brake force over mass, m/s², that stops no wheel on any road worth braking on. */
    private static final double NO_BRAKE = 1e-3;

    /** Brake force at a wheel, N, below which its reserve is not asked for: even a wheel in the air is hard to feel. */
    private static final double LEAST_BRAKE_FORCE = 50;

    /**
     * Force, N, within which two wheels change together: as little as a brake that stops not even a wheel in the air.
     */
    private static final double TOGETHER = 1;

    private final Car car;
    private final EntryEquations equations;
    private final List<EntryEvent> events;
    private final WheelForces looked = new WheelForces();
    private final double[] stoppedSince = {Double.NaN, Double.NaN, Double.NaN, Double.NaN};
    private double longest;
    private double reserve = Double.POSITIVE_INFINITY;
    private int changes;

    /** @param events receives what happens */
    WheelLockWatch(Car car, EntryEquations equations, List<EntryEvent> events) {
        this.car = car;
        this.equations = equations;
        this.events = events;
    }

    /** Whether a wheel has stopped at all. */
    boolean any() {
        return changes > 0;
    }

    /**
     * How much harder, as a share, the brake could have been before a wheel stopped, where that was least; zero if one
     * stopped, infinite if there was no braking or none can stop.
     */
    double reserve() {
        return any() ? 0 : reserve;
    }

    /** Longest time, s, for which a wheel has stood in one go up to a time. */
    double longest(double time) {
        for (int wheel = 0; wheel < 4; wheel++) {
            noteStanding(wheel, time);
        }
        return longest;
    }

    /**
     * How far the wheel that comes first is from stopping or turning again.
     *
     * @param joint holds loads and forces at the last joint between steps
     */
    Crossing crossing(WheelForces joint) {
        return new Crossing() {
            @Override
            public double value(double station, double[] state) {
                if (idle(state)) {
                    return 1;
                }
                equations.wheelsAt(station, state, looked);
                return lowest(looked);
            }

            @Override
            public double valueAtJoint(double station, double[] state) {
                return idle(state) ? 1 : lowest(joint);
            }
        };
    }

    private boolean idle(double[] state) {
        return !equations.locks().any() && !(state[EntryState.BRAKE] > NO_BRAKE);
    }

    private static double lowest(WheelForces wheels) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int wheel = 0; wheel < 4; wheel++) {
            lowest = Bounds.smaller(lowest, wheels.lockMargin(wheel));
        }
        return lowest;
    }

    /** Takes in how much more brake each wheel could take; with anti-lock brakes no wheel stops, whatever is asked. */
    void brakes(WheelForces wheels, double brake) {
        if (car.antiLock()) {
            return;
        }
        double whole = car.chassis().mass() * brake;
        double front = whole * car.frontBrakeShare() / 2;
        double rear = whole * (1 - car.frontBrakeShare()) / 2;
        for (int wheel = 0; wheel < 4; wheel++) {
            double force = wheel < 2 ? front : rear;
            if (force > LEAST_BRAKE_FORCE) {
                reserve = Bounds.smaller(reserve, Bounds.larger(wheels.lockMargin(wheel) / force, 0));
            }
        }
    }

    /**
     * Changes the wheel that is farthest over, and with it every other that must change at the same point: on a
     * straight both wheels of an axle stop at once, and an event that is over already would never be seen again. Who
     * changes is settled before any does, since a rigid body moves load as soon as one has stopped; then whether that
     * makes others change.
     *
     * @return the change at which the run is to be given up, if there have been too many
     */
    Optional<Kind> change(double station, double[] state) {
        int changed = 0;
        equations.wheelsAt(station, state, looked);
        int changing = over(looked, changed, true);
        while (changing != 0) {
            for (int wheel = 0; wheel < 4; wheel++) {
                if ((changing >> wheel & 1) != 0) {
                    Kind kind = change(wheel, station, state);
                    if (++changes > MOST_CHANGES) {
                        return Optional.of(kind);
                    }
                }
            }
            changed |= changing;
            equations.wheelsAt(station, state, looked);
            changing = over(looked, changed, false);
        }
        return Optional.empty();
    }

    /**
     * The wheels that must change among those that have not changed here, one bit each.
     *
     * @param farthest whether the one with the lowest margin changes in any case: the event was its own
     */
    private static int over(WheelForces wheels, int changed, boolean farthest) {
        double below = farthest ? Bounds.larger(TOGETHER, Math.nextUp(lowest(wheels))) : TOGETHER;
        int over = 0;
        for (int wheel = 0; wheel < 4; wheel++) {
            if ((changed >> wheel & 1) == 0 && wheels.lockMargin(wheel) < below) {
                over |= 1 << wheel;
            }
        }
        return over;
    }

    private Kind change(int wheel, double station, double[] state) {
        double time = state[EntryState.TIME];
        WheelLocks before = equations.locks();
        boolean stops = !before.locked(wheel);
        equations.locks(stops ? before.with(wheel) : before.without(wheel), time);
        Kind kind = !stops ? Kind.WHEEL_TURNS : Wheel.at(wheel).front() ? Kind.FRONT_LOCKS : Kind.REAR_LOCKS;
        events.add(new EntryEvent(kind, station, time));
        noteStanding(wheel, time);
        stoppedSince[wheel] = stops ? time : Double.NaN;
        return kind;
    }

    /** Takes in how long a wheel has stood in one go. */
    private void noteStanding(int wheel, double time) {
        if (!Double.isNaN(stoppedSince[wheel])) {
            longest = Bounds.larger(longest, time - stoppedSince[wheel]);
        }
    }
}
