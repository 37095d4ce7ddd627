package org.foreload.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.entry.MadeUpEntry;
import org.foreload.entry.Outcome;
import org.foreload.grip.Axle;
import org.foreload.pedal.LockingRamp;
import org.foreload.stability.Scenes;
import org.foreload.study.Proportion;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;

/** What is recommended of rows that are made up, and in which words. */
class BalanceTest {

    /** A row of whose 32 entries with a small scatter so many fail. */
    static BalanceRow row(double share, double time, Axle axle, int failed) {
        return row(share, time, Optional.of(new LockingRamp(axle, 9, 9)), failed);
    }

    private static BalanceRow row(double share, double time, Optional<LockingRamp> lock, int failed) {
        Car car = Scenes.light().withFrontBrakeShare(share);
        EntryResult entry = MadeUpEntry.of(Outcome.MADE_IT, 0, time, EntryResult.Limit.REAR_AXLE, List.of());
        return new BalanceRow(
                share,
                car,
                lock,
                entry,
                true,
                Optional.of(new Proportion(failed, 32)),
                Optional.of(Outcome.SPUN),
                Optional.of(Outcome.RAN_WIDE),
                Optional.empty());
    }

    private static Balance balance(BalanceRow... rows) {
        BalanceAxis axis = new BalanceAxis(
                BalanceAxis.BRAKE_SHARE,
                List.of(rows).stream().map(BalanceRow::value).toList());
        return Balance.of(axis, 0.7, List.of(rows), true);
    }

    @Test
    void aQuickerShareWhoseRearLocksFirstIsNotRecommended() {
        Balance balance =
                balance(row(0.6, 16.8, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 2), row(0.8, 17.3, Axle.FRONT, 0));
        assertEquals(0.7, balance.recommended().orElseThrow().value());
        assertTrue(balance.interior());
        assertEquals(
                "Keep what you have. A front brake share of 0.700 is the quickest that locks the front axle first and fails"
                        + " at most one time in ten with a small scatter (2 of 32 fail); 0.60 would be 0.3 s quicker, but its"
                        + " rear axle locks first; braked 10 m later it runs wide.",
                balance.reason());
    }

    @Test
    void aQuickerShareThatFailsTooOftenIsNotRecommended() {
        Balance balance =
                balance(row(0.7, 17.1, Axle.FRONT, 4), row(0.8, 17.3, Axle.FRONT, 3), row(0.9, 17.4, Axle.FRONT, 0));
        assertEquals(0.8, balance.recommended().orElseThrow().value());
        assertTrue(
                balance.reason().contains("0.700 would be 0.2 s quicker, but 13 % fail with a small scatter"),
                balance.reason());
    }

    /** No wheel of a car with anti-lock brakes locks (decision 0040), so neither axle is said to lock first. */
    @Test
    void whereNoWheelLocksNoAxleIsSaidToLockFirst() {
        Balance balance = balance(
                row(0.6, 17.3, Optional.empty(), 0),
                row(0.7, 17.1, Optional.empty(), 0),
                row(0.8, 17.3, Optional.empty(), 0));
        assertEquals(
                "Keep what you have. A front brake share of 0.700 is the quickest that fails at most one time in ten with a"
                        + " small scatter (0 of 32 fail); braked 10 m later it runs wide.",
                balance.reason());
    }

    /** A value stands with its unit behind it; the trade writes CG (ISO 8855). */
    @Test
    void aValueIsNamedWithItsUnit() {
        BalanceAxis height = new BalanceAxis(BalanceAxis.CG_HEIGHT, List.of(0.3, 0.4));
        Balance balance =
                Balance.of(height, 0.4, List.of(row(0.3, 17.3, Axle.FRONT, 0), row(0.4, 17.0, Axle.REAR, 0)), true);
        assertTrue(balance.reason().startsWith("A CG height of 0.30 m is the quickest"), balance.reason());
        assertTrue(balance.reason().contains("; 0.400 m would be 0.3 s quicker"), balance.reason());
    }

    /** By definition: those not farther from the recommended time than the accuracy, quicker or slower. */
    @Test
    void valuesNearerThanTheAccuracyAreEquallyQuick() {
        double near = 17.1 + 0.9 * Balance.ACCURACY;
        double far = 17.1 + 1.1 * Balance.ACCURACY;
        Balance balance =
                balance(row(0.6, 17.05, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 0), row(0.8, near, Axle.FRONT, 0));
        assertEquals(2, balance.equallyQuick());
        assertEquals(
                0,
                balance(row(0.7, 17.1, Axle.FRONT, 0), row(0.8, far, Axle.FRONT, 0))
                        .equallyQuick());
    }

    /** Nobody turns a screw for less than the search shows; for more, or for the front axle to lock first, one does. */
    @Test
    void whatTheCarHasIsKeptWhereNothingIsQuickerByMoreThanTheSearchShows() {
        double near = 17.1 + 0.9 * Balance.ACCURACY;
        Balance kept =
                balance(row(0.6, 17.3, Axle.FRONT, 0), row(0.7, near, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0));
        assertEquals(0.7, kept.recommended().orElseThrow().value());
        assertTrue(
                kept.reason()
                        .startsWith("Keep what you have. A front brake share of 0.700 is as quick, as far as the search"
                                + " shows, as any that locks the front axle first"),
                kept.reason());
        assertFalse(kept.interior(), "0.8 is no worse");
        assertTrue(kept.reason().contains("no optimum inside"), kept.reason());
        double far = 17.1 + 1.1 * Balance.ACCURACY;
        Balance changed =
                balance(row(0.6, 17.3, Axle.FRONT, 0), row(0.7, far, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0));
        assertEquals(0.8, changed.recommended().orElseThrow().value());
        assertTrue(changed.reason().startsWith("A front brake share of 0.80 is the quickest"), changed.reason());
        assertTrue(changed.reason().contains("the 0.700 that you have is 0.11 s slower, hardly"), changed.reason());
        Balance clear = balance(row(0.7, 17.1 + 2.1 * Balance.ACCURACY, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0));
        assertFalse(clear.reason().contains("tie"), clear.reason());
        assertEquals(
                0.8,
                balance(row(0.7, near, Axle.REAR, 0), row(0.8, 17.1, Axle.FRONT, 0))
                        .recommended()
                        .orElseThrow()
                        .value());
    }

    /** What is said of a value at the end is what the rows show, and nothing of why. */
    @Test
    void anOptimumAtTheEndIsSaidToBeNone() {
        Balance alone = balance(row(0.7, 17.1, Axle.FRONT, 0), row(0.8, 17.3, Axle.FRONT, 0));
        assertFalse(alone.interior());
        assertTrue(
                alone.reason()
                        .endsWith(
                                "It is the lower end of the sweep, which shows no optimum inside: none there is quicker."),
                alone.reason());
        Balance kept =
                balance(row(0.7, 17.15, Axle.FRONT, 0), row(0.8, 17.1, Axle.FRONT, 0), row(0.9, 17.26, Axle.FRONT, 0));
        assertFalse(kept.interior());
        assertTrue(
                kept.reason()
                        .endsWith(
                                "It is the lower end of the sweep; 0.80 is 0.050 s quicker, less than the search shows,"
                                        + " so that an optimum inside stays open."),
                kept.reason());
        Balance near = balance(row(0.6, 17.02, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 0));
        assertTrue(
                near.reason()
                        .endsWith(
                                "0.60 is 0.080 s quicker, less than the search shows, and its rear axle locks first, so"
                                        + " that an optimum inside stays open."),
                near.reason());
        Balance loose = balance(row(0.6, 16.8, Axle.REAR, 0), row(0.7, 17.1, Axle.FRONT, 0));
        assertTrue(loose.reason().contains("0.60 would be 0.3 s quicker, but its rear axle"), loose.reason());
        assertTrue(
                loose.reason().endsWith("It is the upper end of the sweep, which shows no optimum inside."),
                loose.reason());
    }

    @Test
    void whereEveryShareFailsTooOftenTheOneThatFailsLeastIsGivenWithThatWord() {
        Balance balance = balance(row(0.6, 17.0, Axle.REAR, 9), row(0.7, 17.1, Axle.FRONT, 8));
        assertEquals(0.7, balance.recommended().orElseThrow().value());
        assertTrue(balance.reason().contains("fails least often with a small scatter"), balance.reason());
        Balance loose = balance(row(0.6, 17.0, Axle.REAR, 1), row(0.7, 17.1, Axle.FRONT, 8));
        assertEquals(0.6, loose.recommended().orElseThrow().value());
        assertTrue(loose.reason().contains("though the rear axle locks first"), loose.reason());
    }
}
