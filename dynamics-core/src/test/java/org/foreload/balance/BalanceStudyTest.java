package org.foreload.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.conventions.InvalidValueException;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.grip.Axle;
import org.foreload.optimum.SampleStudies;
import org.foreload.optimum.ShapeRanking;
import org.foreload.parameter.Parameter;
import org.foreload.path.Corner;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.stability.Scenes;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;

/** The balance study on one car with few values, and its recommendation on made-up rows. */
class BalanceStudyTest {

    private static final BalanceStudy ONE_RELEASE = linear(0.3);

    private static final CornerStudy STUDY = study(Scenes.medium());

    /** From a share that locks the rear first to one that brakes with the front wheels alone. */
    private static final Balance WIDE =
            ONE_RELEASE.run(STUDY, new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.70, 0.82, 0.98)), Sweep.quiet());

    private static BalanceStudy linear(double end) {
        return new BalanceStudy(
                new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.8), List.of(-0.1), List.of(end), 0.25));
    }

    /** In steps ten times as large as usual: what is compared here is driven by the same simulator. */
    private static CornerStudy study(Corner corner) {
        return CornerStudy.of(
                Scenes.frontHeavy(),
                corner,
                DriverSettings.practised(),
                new SimulationSettings(1e-5, 1),
                Allowance.STANDARD);
    }

    /** Nothing follows from values that a stop left out: none is best, and none is said to fail. */
    @Test
    void aSweepThatWasStoppedRecommendsNothing() {
        BalanceAxis axis = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.6, 0.7, 0.8));
        Balance stopped = Balance.of(
                axis,
                0.7,
                List.of(BalanceTest.row(0.6, 17.0, Axle.FRONT, 0), BalanceTest.row(0.7, 17.1, Axle.FRONT, 0)),
                false);
        assertFalse(stopped.complete());
        assertEquals(Optional.empty(), stopped.recommended());
        assertFalse(stopped.interior());
        assertEquals("Stopped after 2 of 3 values: none is recommended.", stopped.reason());
        assertEquals(2, stopped.rows().size(), "what was done is kept");
        Thread.currentThread().interrupt();
        Balance interrupted = ONE_RELEASE.run(STUDY, axis, Sweep.quiet());
        assertTrue(Thread.interrupted(), "the interrupt was swallowed");
        assertFalse(interrupted.complete());
        assertEquals(Optional.empty(), interrupted.recommended());
    }

    /** A stop that comes when each value has its own release keeps these, and recommends none. */
    @Test
    void aSweepThatWasStoppedBeforeNeighboursAreComparedKeepsItsRows() {
        AtomicBoolean stopped = new AtomicBoolean();
        Sweep sweep = new Sweep(2, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                stopped.set(done == 2 && total == 2);
            }

            @Override
            public boolean stopped() {
                return stopped.get();
            }
        });
        Balance balance = ONE_RELEASE.run(
                SampleStudies.coarse(Scenes.frontHeavy(), SampleStudies.shortCorner()),
                new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.7, 0.8)),
                sweep);
        assertEquals(2, balance.rows().size());
        assertFalse(balance.complete());
        assertEquals(Optional.empty(), balance.recommended());
        assertTrue(balance.reason().contains("compared with their neighbours"), balance.reason());
    }

    /** A release with which the car makes the corner is no quicker than the best: so no neighbour's is. */
    @Test
    void noValueIsSlowerThanWithTheReleaseOfItsNeighbour() {
        List<BalanceRow> rows = ONE_RELEASE
                .run(
                        STUDY,
                        new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.78, 0.8, 0.82)),
                        new Sweep(2, Sweep.Progress.SILENT))
                .rows();
        for (int i = 0; i < rows.size(); i++) {
            BalanceRow row = rows.get(i);
            for (BalanceRow other : rows.subList(Math.max(0, i - 1), Math.min(rows.size(), i + 2))) {
                BrakePlan plan = other.best().plan();
                Finding same =
                        STUDY.with(row.car(), STUDY.simulator().driver()).latest(plan.braking(), plan.brakePoint());
                assertTrue(
                        !same.found() || row.time() <= same.entry().time() + 1e-9,
                        row.value() + " takes " + row.time() + ", with the release of " + other.value() + " "
                                + same.entry().time());
            }
        }
    }

    /** One search for all: the car's own value has the release that explore finds for the car, or a quicker one. */
    @Test
    void theOwnValueIsThatOfExplore() {
        ReleaseSweep sweep = new ReleaseSweep(STUDY, ONE_RELEASE.releases());
        EntryResult explored =
                ShapeRanking.explore(sweep, Sweep.quiet()).best().orElseThrow().entry();
        EntryResult own = WIDE.rows().get(1).best();
        assertTrue(own.plan().equals(explored.plan()) || own.time() < explored.time(), own + " and " + explored);
    }

    @Test
    void theBestShareLiesBetweenALooseRearAndAnIdleOne() {
        assertEquals(3, WIDE.rows().size());
        assertTrue(WIDE.complete());
        assertEquals(0.82, WIDE.own());
        BalanceRow loose = WIDE.rows().get(0);
        BalanceRow middle = WIDE.rows().get(1);
        BalanceRow idle = WIDE.rows().get(2);
        assertEquals(Axle.REAR, loose.firstToLock().orElseThrow().axle());
        assertEquals(Axle.FRONT, idle.firstToLock().orElseThrow().axle());
        assertTrue(middle.time() < loose.time());
        assertTrue(middle.time() < idle.time());
        assertEquals(middle, WIDE.recommended().orElseThrow());
        assertTrue(WIDE.interior());
        assertTrue(WIDE.reason().contains("A front brake share of 0.820 is the quickest"), WIDE.reason());
        // More brake behind leaves the rear less to hold the car with.
        double looseGrowth = loose.leastStable().orElseThrow().row().growthRate();
        double idleGrowth = idle.leastStable().orElseThrow().row().growthRate();
        assertTrue(looseGrowth > middle.leastStable().orElseThrow().row().growthRate());
        assertTrue(idleGrowth < middle.leastStable().orElseThrow().row().growthRate());
    }

    /**
     * In an S of 50 and 45 m the brake is for the first bend, and comes off on the way to its apex at 33 m. Shares of
     * the way to the second, at 115 m, would be beyond it. Common practice, no source.
     */
    @Test
    void inAnSTheBrakeIsReleasedIntoTheFirstBend() {
        BalanceRow row = linear(0.8)
                .run(
                        study(SampleStudies.twoBends()),
                        new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.82, 0.9)),
                        Sweep.quiet())
                .rows()
                .get(0);
        assertTrue(row.made());
        double off = row.best().plan().release().end();
        assertTrue(off > 0 && off < 33, "off the brake at " + off);
    }

    /** The light car's own share is a value of its own, between those of a sweep or beyond them, and only once. */
    @Test
    void theCarsOwnValueIsComparedToo() {
        Car car = Scenes.light().withFrontBrakeShare(0.7);
        BalanceAxis around = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.6, 0.8));
        assertEquals(List.of(0.6, 0.7, 0.8), around.withOwn(car).values());
        assertEquals(around.withOwn(car), around.withOwn(car).withOwn(car));
        BalanceAxis above = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.75, 0.8));
        assertEquals(List.of(0.7, 0.75, 0.8), above.withOwn(car).values());
        BalanceAxis rounded = new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.6, 0.1 * 7));
        assertEquals(List.of(0.6, 0.7), rounded.withOwn(car).values());
    }

    /** Values are compared at equal risk: each brakes so early that few of its entries fail. */
    @Test
    void everyValueBrakesEarlyEnoughForASmallScatter() {
        for (BalanceRow row : WIDE.rows()) {
            assertTrue(row.steady(), row.value() + " fails " + row.failureShare());
            CornerStudy own = STUDY.with(row.car(), STUDY.simulator().driver());
            Risk again = new RiskStudy(own, Scatter.EXPERT, 32, 1).of(row.best().plan());
            assertEquals(row.failureShare(), again.failed().value());
        }
    }

    /**
     * Some metres beyond the latest brake point a driver who mends nothing fails more often than accepted: from there a
     * row brakes earlier, metre by metre, and no earlier than that takes.
     */
    @Test
    void whoFailsTooOftenBrakesEarlierByAsMuchAsItTakes() {
        CornerStudy study = SampleStudies.coarse(Scenes.frontHeavy(), SampleStudies.shortCorner())
                .with(Allowance.NO_MARGIN);
        Braking braking = Braking.of(0.8 * study.lockLimit(), 0.25, new Release(ReleaseShapes.LINEAR, -3, 12));
        RiskStudy risks = new RiskStudy(study, Scatter.EXPERT, Reaction.NONE, 32, 1);
        double point = study.search().latest(braking).point();
        while (risks.of(braking.from(point)).failed().value() <= BalanceStudy.ACCEPTED) {
            point++;
        }
        BrakePlan latest = braking.from(point + 1);
        Risk equal = BalanceStudy.atEqualRisk(risks, latest);
        assertTrue(equal.failed().value() <= BalanceStudy.ACCEPTED, "fails " + equal.failed());
        double back = latest.brakePoint() - equal.plan().brakePoint();
        assertEquals(2, back, 1e-9);
        assertEquals(equal.plan(), BalanceStudy.atEqualRisk(risks, equal.plan()).plan(), "who is safe stays");
    }

    /** The law of parameters: a number that was put in is read back, and nothing else changes. */
    @Test
    void everyAxisReadsBackWhatItPutIn() {
        Car car = Scenes.light().with(new Aerodynamics(0.6, 0.3, 0.5, 1.2, 0));
        for (Parameter<Car> one : List.of(
                BalanceAxis.BRAKE_SHARE,
                BalanceAxis.ROLL_STIFFNESS_SHARE,
                BalanceAxis.CG_HEIGHT,
                BalanceAxis.DOWNFORCE_SHARE)) {
            assertEquals(0.44, one.of(one.with(car, 0.44)), 1e-12, one.name());
            assertEquals(one.of(car), one.of(one.with(one.with(car, 0.44), one.of(car))), 1e-12, one.name());
        }
        Aerodynamics moved = BalanceAxis.DOWNFORCE_SHARE.with(car, 0.25).aerodynamics();
        assertEquals(0.8, moved.frontDownforceArea() + moved.rearDownforceArea(), 1e-12);
    }

    /**
     * (b + μ·h)/L for the worked example of sources: a 1.2, b 1.5, h 0.55 has φ = 0.70 at μ = 0.709091. A third of the
     * stretch that is looked at lies below.
     */
    @Test
    void sharesAreTriedAroundTheOneThatLocksBothAxlesAtOnce() {
        Car car = Scenes.frontHeavy().with(new Chassis(1500, 2.7, 1.2, 0.55, 2400, 1.5, 1.5));
        List<Double> shares = BalanceAxis.brakeShares(car, 0.709091, 7).values();
        assertEquals(7, shares.size());
        assertEquals(0.70, shares.get(2), 5e-7);
        for (int i = 1; i < shares.size(); i++) {
            assertEquals(shares.get(2) + 0.04 * (i - 2), shares.get(i), 1e-12);
        }
    }

    @Test
    void valuesThatDoNotRiseAreRefused() {
        assertThrows(InvalidValueException.class, () -> new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.7, 0.6)));
        assertThrows(InvalidValueException.class, () -> new BalanceAxis(BalanceAxis.BRAKE_SHARE, List.of(0.7)));
        assertThrows(
                InvalidValueException.class, () -> BalanceAxis.evenly(BalanceAxis.BRAKE_SHARE, Double.NaN, 0.8, 3));
    }
}
