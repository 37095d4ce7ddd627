package org.foreload.balance;

import java.util.Objects;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.grip.Axle;
import org.foreload.pedal.LockingRamp;
import org.foreload.stability.StabilityEvent;
import org.foreload.study.Proportion;
import org.foreload.vehicle.Car;

/**
 * One value of a balance sweep.
 *
 * @param value of the axis
 * @param car the car with that value
 * @param firstToLock what locks first in a straight line at the approach speed; empty if nothing does
 * @param best the best entry with the car; where none makes the corner, an attempt
 * @param made whether it makes the corner with the margin asked for
 * @param failed how often the entry fails with a small scatter of driver and grip; empty unless made
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
        Optional<Proportion> failed,
        Optional<Outcome> harder,
        Optional<Outcome> later,
        Optional<StabilityEvent> leastStable) {

    /** Refuses null. */
    public BalanceRow {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(firstToLock, "firstToLock");
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(failed, "failed");
        Objects.requireNonNull(harder, "harder");
        Objects.requireNonNull(later, "later");
        Objects.requireNonNull(leastStable, "leastStable");
    }

    /** Time of the best entry, s; NaN where none makes the corner. */
    public double time() {
        return made ? best.time() : Double.NaN;
    }

    /** Whether the rear axle is the one that locks first. */
    public boolean rearLocksFirst() {
        return firstToLock.map(lock -> lock.axle() == Axle.REAR).orElse(false);
    }

    /** Share of the entries that fail with a small scatter; one where none makes the corner. */
    public double failureShare() {
        return failed.map(Proportion::value).orElse(1.0);
    }

    /** Whether no more of them fail than {@link BalanceStudy#ACCEPTED}. */
    public boolean steady() {
        return made && failureShare() <= BalanceStudy.ACCEPTED;
    }
}
