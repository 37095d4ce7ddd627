package org.foreload.balance;

import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.grip.Axle;
import org.foreload.stability.LockingRamp;
import org.foreload.stability.StabilityEvent;
import org.foreload.vehicle.Car;

/**
 * One value of a balance sweep.
 *
 * @param value of the axis
 * @param car the car with that value
 * @param firstToLock what locks first in a straight line at the approach speed; empty if nothing does
 * @param best the best entry with the car; where none makes the corner, an attempt
 * @param made whether it makes the corner with the margin asked for
 * @param harder outcome of the same entry with the brake pressed 5 % harder; empty unless made
 * @param later outcome of the same entry braked 10 m later; empty unless made
 * @param leastStable the least stable moment of the best entry; empty unless made
 */
public record BalanceRow(
        double value,
        Car car,
        Optional<LockingRamp> firstToLock,
        EntryResult best,
        boolean made,
        Optional<Outcome> harder,
        Optional<Outcome> later,
        Optional<StabilityEvent> leastStable) {

    /** Time of the best entry, s; NaN where none makes the corner. */
    public double time() {
        return made ? best.time() : Double.NaN;
    }

    /** Whether the rear axle is the one that locks first. */
    public boolean rearLocksFirst() {
        return firstToLock.map(lock -> lock.axle() == Axle.REAR).orElse(false);
    }

    /** Whether a harder foot makes the corner, too. */
    public boolean forgivesHarder() {
        return harder.filter(Outcome.MADE_IT::equals).isPresent();
    }

    /** Whether a harder foot makes the car spin. */
    public boolean spinsIfHarder() {
        return harder.filter(Outcome.SPUN::equals).isPresent();
    }
}
