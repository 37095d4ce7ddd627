package org.foreload.entry;

import static org.foreload.entry.SampleRun.CAR;
import static org.foreload.entry.SampleRun.CORNER;
import static org.foreload.entry.SampleRun.EXIT;
import static org.foreload.entry.SampleRun.HEIGHT;
import static org.foreload.entry.SampleRun.MASS;
import static org.foreload.entry.SampleRun.PLAN;
import static org.foreload.entry.SampleRun.TO_FRONT;
import static org.foreload.entry.SampleRun.TO_REAR;
import static org.foreload.entry.SampleRun.WEIGHT;
import static org.foreload.entry.SampleRun.WHEELBASE;
import static org.foreload.entry.SampleRun.friction;
import static org.foreload.entry.SampleRun.simulator;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The same entry with one thing changed: the car, the side of the corner, the brake, or what is kept of it. */
class EntryVariationTest {

    private static final Path PATH = CORNER.path();

    /** A foot that does as it means to, and yet one of its own. */
    private static final PedalDisturbance STEADY = new PedalDisturbance() {
        @Override
        public double delivered(double intended, double time) {
            return intended;
        }

        @Override
        public double shortestPeriod() {
            return Double.POSITIVE_INFINITY;
        }
    };

    private EntryResult entry;

    /** Driven for each test anew, so that each notices by itself a simulator that has changed. */
    @BeforeEach
    void drive() {
        entry = simulator(CAR).run(PLAN);
    }

    @Test
    void aSimulatorTellsWhatItWasGiven() {
        EntrySimulator simulator = simulator(CAR);
        assertSame(CAR, simulator.car());
        assertSame(CORNER, simulator.corner());
        assertEquals(DriverSettings.practised(), simulator.driver());
        assertEquals(80, simulator.exit().opening());
        assertSame(SimulationSettings.STANDARD, simulator.settings());
    }

    /** A car with a rear axle that brakes too much is fullest there. */
    @Test
    void tooMuchRearBrakeFillsTheRearAxle() {
        EntryResult rear = simulator(CAR.withFrontBrakeShare(0.49)).run(PLAN);
        EntryResult.Margins margins = rear.margins();
        assertEquals(Outcome.MADE_IT, rear.outcome());
        assertTrue(margins.rear() < margins.front(), margins.toString());
        assertEquals(EntryResult.Limit.REAR_AXLE, rear.limit());
    }

    /** To the other side all is the same but the signs. */
    @Test
    void aMirroredCornerMirrorsTheRecord() {
        Corner right = new Corner("right", 45, PATH.mirrored());
        EntryResult mirrored = simulator(CAR, right).run(PLAN);
        assertEquals(entry.time(), mirrored.time(), 1e-6);
        assertEquals(entry.margins().edge(), mirrored.margins().edge(), 1e-5);
        assertEquals(entry.minimumSpeed(), mirrored.minimumSpeed(), 1e-5);
        Trace rows = entry.profile().orElseThrow();
        int row = 350;
        assertEquals(
                rows.column("offset_m").at(row),
                -mirrored.profile().orElseThrow().column("offset_m").at(row),
                1e-5);
    }

    /** On springs, too, the car sets off with its load settled under drag and drive force. */
    @Test
    void theCarSetsOffWithItsLoadSettled() {
        Trace soft = simulator(SampleEntries.ROAD).run(PLAN).profile().orElseThrow();
        double drag = 0.5 * 1.2 * 0.65 * 45 * 45;
        double drive = 110e3 / 45;
        double front = WEIGHT * TO_REAR / WHEELBASE + (drag - drive) * HEIGHT / WHEELBASE;
        assertEquals(front, soft.column("front_axle_load_n").at(0), 0.01);
        assertEquals(drive / MASS, soft.column("drive_mps2").at(0), 1e-6);
        assertEquals(front, soft.column("front_axle_load_n").at(20), 15);
    }

    /** Where speed is lowest inside a stretch, the car neither slows nor gains there. */
    @Test
    void speedIsLowestWhereNothingSlowsTheCar() {
        // Rows so close that deceleration is straight between two of them, though the throttle answers in 0.1 s.
        EntryResult early = new EntrySimulator(
                        CAR, CORNER, DriverSettings.practised(), EXIT, new SimulationSettings(1e-6, 0.1))
                .run(Braking.of(6, 0, new Release(ReleaseShapes.LINEAR, -30, 60))
                        .from(-150));
        double lowestAt = early.minimumSpeedAt();
        Trace rows = early.profile().orElseThrow();
        assertTrue(lowestAt > 30 && lowestAt < 67, "lowest at " + lowestAt);
        for (int i = 0; i + 1 < rows.rows(); i++) {
            double v = rows.column("speed_mps").at(i);
            assertTrue(v >= early.minimumSpeed() - 1e-9 || rows.column("s_m").at(i) < -150);
            if (rows.column("s_m").at(i) <= lowestAt && rows.column("s_m").at(i + 1) > lowestAt) {
                double part = (lowestAt - rows.column("s_m").at(i))
                        / (rows.column("s_m").at(i + 1) - rows.column("s_m").at(i));
                double a = rows.column("deceleration_mps2").at(i);
                double b = rows.column("deceleration_mps2").at(i + 1);
                assertEquals(0, a + part * (b - a), 0.02);
            }
        }
        EntryResult fine = new EntrySimulator(
                        CAR, CORNER, DriverSettings.practised(), EXIT, new SimulationSettings(1e-10, 1))
                .run(early.plan());
        assertEquals(fine.minimumSpeedAt(), lowestAt, 0.02);
    }

    /**
     * In a straight line, rigid, the wheels that first would stop are the front ones: µ(F)·F over 0.78·m·d/2, with the
     * load of the hardest braking. The recorder adds 1 N, the brake that stops not even a wheel in the air.
     */
    @Test
    void theReserveIsWhatTheFrontWheelsStillCarry() {
        BrakePlan straight =
                Braking.of(8, 0, new Release(ReleaseShapes.LINEAR, -90, -40)).from(-170);
        EntryResult braked = simulator(CAR).run(straight);
        Trace trace = braked.profile().orElseThrow();
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < trace.rows(); i++) {
            double brake = trace.column("brake_mps2").at(i);
            double load = trace.column("front_axle_load_n").at(i) / 2;
            double force = 0.78 * MASS * brake / 2;
            if (force > 50 && trace.column("s_m").at(i) < -40) {
                least = Math.min(least, (load * friction(1.05, load) + 1) / force - 1);
            }
        }
        assertTrue(least > 0.02);
        assertEquals(least, braked.lockReserve(), 2e-3);
    }

    /** A probe is the same run with a coarser tolerance, of which nothing but the ending is kept. */
    @Test
    void aProbeEndsAsTheRunDoes() {
        EntryResult probe = simulator(CAR).probe(PLAN);
        assertEquals(entry.outcome(), probe.outcome());
        assertEquals(entry.time(), probe.time(), 1e-3);
        assertEquals(entry.trailShare(), probe.trailShare(), 1e-3);
        assertTrue(probe.profile().isEmpty());
        assertEquals(entry.margins().front(), probe.margins().front(), 0.01);
        assertEquals(entry.margins().rear(), probe.margins().rear(), 0.01);
        assertEquals(entry.margins().edge(), probe.margins().edge(), 0.01);
        assertTrue(probe.evaluations() < entry.evaluations());
        assertTrue(probe.evaluations() > 300 && entry.evaluations() < 5000, "right-hand sides");
    }

    /** A tyre with a relaxation length comes to the same slip where the car is steady. */
    @Test
    void slipsOfTyresWithALagSettleToThoseOfTheMotion() {
        Trace trace = simulator(SampleEntries.ROAD).run(PLAN).profile().orElseThrow();
        var s = trace.column("s_m");
        for (int i = 0; i < trace.rows(); i++) {
            if (s.at(i) > 85 && s.at(i) < 95) {
                double v = trace.column("speed_mps").at(i);
                double beta = Math.toRadians(trace.column("sideslip_deg").at(i));
                double yaw = trace.column("yaw_rate_rad_per_s").at(i);
                double steer = Math.toRadians(trace.column("steer_deg").at(i));
                assertEquals(
                        beta + TO_FRONT * yaw / v - steer,
                        trace.column("front_slip").at(i),
                        4e-3);
                assertEquals(beta - TO_REAR * yaw / v, trace.column("rear_slip").at(i), 4e-3);
                assertTrue(trace.column("rear_slip").at(i) < -0.02);
            }
        }
    }

    /**
     * Probes take over the approach that all have in common; one with a foot of its own drives it, to the same bits.
     */
    @Test
    void anEntryThatTakesOverTheApproachIsTheSameToTheBit() {
        EntrySimulator simulator = simulator(CAR);
        for (double point = PATH.start() + 0.3; point < -60; point += 7.3) {
            BrakePlan plan = PLAN.withBrakePoint(point);
            EntryResult taken = simulator.probe(plan);
            EntryResult driven = simulator.probe(plan.with(STEADY));
            assertTrue(taken.evaluations() <= driven.evaluations(), taken.evaluations() + " at " + point);
            assertEquals(driven.outcome(), taken.outcome());
            assertEquals(driven.events(), taken.events());
            assertEquals(driven.margins(), taken.margins());
            assertEquals(driven.time(), taken.time(), 0);
            assertEquals(driven.topSpeed(), taken.topSpeed(), 0);
            assertEquals(driven.farthestOffset(), taken.farthestOffset(), 0);
        }
        BrakePlan late = PLAN.withBrakePoint(-100);
        double saved = 1
                - (double) simulator.probe(late).evaluations()
                        / simulator.probe(late.with(STEADY)).evaluations();
        assertTrue(saved > 0.03, "saved " + saved);
    }

    /** A car that slides off a banked straight before it brakes does so in either. */
    @Test
    void whoRunsWideOnTheApproachDoesSoWhereverHeTakesItUp() {
        Path narrow = SegmentPath.of(300, List.of(Segment.arc(60, 60, Turn.LEFT)), 200, 0.05)
                .withBanking(0.3);
        EntrySimulator simulator = simulator(CAR, new Corner("narrow", 45, narrow));
        BrakePlan late = PLAN.withBrakePoint(-60);
        EntryResult driven = simulator.probe(late.with(STEADY));
        assertEquals(Outcome.RAN_WIDE, driven.outcome());
        assertTrue(driven.events().get(driven.events().size() - 1).station() < -60, driven.events()::toString);
        EntryResult taken = simulator.probe(late);
        assertEquals(Outcome.RAN_WIDE, taken.outcome());
        assertEquals(driven.events(), taken.events());
        assertEquals(driven.margins(), taken.margins());
    }
}
