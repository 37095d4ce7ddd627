package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.braking.TabulatedRelease;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.LeftFoot;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.path.Corner;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.junit.jupiter.api.Test;

/**
 * How an entry ends: each event lies where the profile crosses its threshold, and the cause tells the first of them.
 */
class EntryEndingTest {

    private static final Car RIGID = SampleEntries.withoutLags(SampleEntries.ROAD);
    private static final Corner CORNER = SampleEntries.medium(45);

    private static EntryResult run(Car car, DriverSettings driver, BrakePlan plan) {
        SpeedPlan exit = new SpeedPlan(new double[] {80, 285}, new double[] {22.5, 32});
        return new EntrySimulator(car, CORNER, driver, exit, SimulationSettings.STANDARD).run(plan);
    }

    private static EntryResult run(Car car, BrakePlan plan) {
        return run(car, DriverSettings.practised(), plan);
    }

    private static BrakePlan plan(double brakePoint, double peak, double start, double end) {
        return Braking.of(peak, 0, new Release(ReleaseShapes.LINEAR, start, end))
                .from(brakePoint);
    }

    private static EntryEvent event(EntryResult entry, Kind kind) {
        return entry.event(kind).orElseThrow();
    }

    /** Value of a column at a station, between the rows around it. */
    private static double read(EntryResult entry, String column, double station) {
        Trace trace = entry.profile().orElseThrow();
        double[] s = trace.column("s_m").values();
        double[] y = trace.column(column).values();
        int i = 1;
        while (i + 1 < s.length && s[i] < station) {
            i++;
        }
        return y[i - 1] + (station - s[i - 1]) / (s[i] - s[i - 1]) * (y[i] - y[i - 1]);
    }

    /** Much too fast, without a brake: full at the front, then over the outer edge, four and a half metres out. */
    @Test
    void withoutABrakeTheCarRunsOverTheOuterEdge() {
        EntryResult entry = run(RIGID, plan(-100, 6, -160, -120));
        assertEquals(Outcome.RAN_WIDE, entry.outcome());
        assertFalse(entry.braked());
        assertFalse(entry.made());
        assertTrue(Double.isNaN(entry.time()));
        assertTrue(Double.isNaN(entry.trailShare()));
        assertEquals(Double.POSITIVE_INFINITY, entry.lockReserve());
        EntryEvent edge = event(entry, Kind.TRACK_EDGE);
        assertEquals(-4.5, read(entry, "offset_m", edge.station()), 0.03);
        assertEquals(4.5, entry.farthestOffset(), 1e-3);
        assertEquals(EntryResult.Limit.TRACK_EDGE, entry.limit());
        EntryEvent full = event(entry, Kind.FRONT_SATURATES);
        assertEquals(0.98, read(entry, "front_utilisation", full.station()), 0.02);
        assertEquals(
                String.format(
                        Locale.ROOT,
                        "front axle saturates at %.1f m, then the car leaves the track at %.1f m",
                        full.station(),
                        edge.station()),
                entry.cause());
    }

    /** To the other side it is the left edge. */
    @Test
    void inARightTurnTheOuterEdgeIsTheLeftOne() {
        Corner right = new Corner("right", 45, CORNER.path().mirrored());
        SpeedPlan exit = new SpeedPlan(new double[] {80, 285}, new double[] {22.5, 32});
        EntryResult entry = new EntrySimulator(
                        RIGID, right, DriverSettings.practised(), exit, SimulationSettings.STANDARD)
                .run(plan(-100, 6, -160, -120));
        assertEquals(Outcome.RAN_WIDE, entry.outcome());
        assertEquals(4.5, read(entry, "offset_m", event(entry, Kind.TRACK_EDGE).station()), 0.03);
        assertEquals(4.5, entry.farthestOffset(), 1e-3);
    }

    /** A soft brake held on the straight to the end: the car stops at walking pace with its wheels turning. */
    @Test
    void aSoftBrakeToTheEndStopsTheCar() {
        EntryResult entry = run(RIGID, plan(-190, 7, -20, -10));
        assertEquals(Outcome.STOPPED, entry.outcome());
        EntryEvent stopped = event(entry, Kind.STOPPED);
        // 7 m/s² and the drag from 45 m/s: v²/2d is 145 m without drag.
        assertTrue(stopped.station() > -60 && stopped.station() < -40, "stopped at " + stopped.station());
        assertEquals(1.5, Math.min(1.8, entry.minimumSpeed()), 0.01);
        assertEquals(
                String.format(Locale.ROOT, "the car stops %.1f m before turn-in", -stopped.station()), entry.cause());
        assertTrue(entry.events().stream().noneMatch(one -> one.kind() == Kind.TURN_IN));
        assertTrue(Double.isNaN(entry.turnInSpeed()));
        assertTrue(entry.lockReserve() > 0 && entry.lockReserve() < 1);
    }

    /** The driver who does not brake below a speed eases off from twice that speed on, by 3x² − 2x³. */
    @Test
    void aDriverWhoDoesNotBrakeToAStopEasesOff() {
        double slowest = 0.4 * 22.5;
        DriverSettings driver =
                DriverSettings.practised().with(LeftFoot.practised().withSlowestBraking(0.4));
        EntryResult entry = run(RIGID, driver, plan(-190, 7, -20, -10));
        assertFalse(entry.event(Kind.STOPPED).isPresent());
        Trace trace = entry.profile().orElseThrow();
        int checked = 0;
        for (int i = 0; i < trace.rows(); i++) {
            double s = trace.column("s_m").at(i);
            if (s > -180 && s < -21) {
                double x = Math.max(0, Math.min(1, trace.column("speed_mps").at(i) / slowest - 1));
                assertEquals(7 * x * x * (3 - 2 * x), trace.column("brake_mps2").at(i), 0.35, "at " + s);
                checked += x > 0.1 && x < 0.9 ? 1 : 0;
            }
        }
        assertTrue(checked > 3);
    }

    /** A pulse of brake beyond what the front can carry: its wheels stop, turn again, and the time is told. */
    @Test
    void aStoppedWheelTurnsAgainWhenTheBrakeIsEased() {
        EntryResult entry = run(RIGID.withFrontBrakeShare(0.85), plan(-170, 12, -168, -20));
        List<EntryEvent> stops = entry.events().stream()
                .filter(one -> one.kind() == Kind.FRONT_LOCKS)
                .toList();
        List<EntryEvent> turns = entry.events().stream()
                .filter(one -> one.kind() == Kind.WHEEL_TURNS)
                .toList();
        assertEquals(2, stops.size());
        assertEquals(2, turns.size());
        assertEquals(Outcome.LOCKED_UP, entry.outcome());
        assertEquals(0, entry.lockReserve());
        assertEquals(EntryResult.Limit.LOCK, entry.limit());
        double locked = turns.get(1).time() - stops.get(0).time();
        assertTrue(locked > 0.3);
        assertEquals(
                String.format(
                        Locale.ROOT,
                        "front wheel locks %.1f m before turn-in, wheels stopped for %.2f s",
                        -stops.get(0).station(),
                        locked),
                entry.cause());
        assertEquals(0, read(entry, "locked_wheels", stops.get(0).station() - 2));
        assertEquals(
                3,
                read(
                        entry,
                        "locked_wheels",
                        (stops.get(1).station() + turns.get(0).station()) / 2));
        assertEquals(0, read(entry, "locked_wheels", turns.get(1).station() + 2));
    }

    /** The same for less than a tenth of a second is a chirp, and the corner is made. */
    @Test
    void aChirpIsNoLockUp() {
        TabulatedRelease jab = new TabulatedRelease("jab", new double[] {0, 0.015, 1}, new double[] {1, 0.42, 0});
        BrakePlan chirp = Braking.of(18, 0, new Release(jab, -190, 0)).from(-190);
        EntryResult entry = run(RIGID.withFrontBrakeShare(0.85), chirp);
        double locked = event(entry, Kind.WHEEL_TURNS).time()
                - event(entry, Kind.FRONT_LOCKS).time();
        assertTrue(locked < 0.1, "locked for " + locked);
        assertEquals(Outcome.MADE_IT, entry.outcome());
        assertEquals(0, entry.lockReserve());
    }

    @Test
    void outcomesAndLimitsHaveWords() {
        assertEquals("ran wide", Outcome.RAN_WIDE.words());
        assertEquals("made it", Outcome.MADE_IT.words());
        assertEquals("track edge", EntryResult.Limit.TRACK_EDGE.words());
    }

    /**
     * A tall car that comes too fast: it leaves its inner wheels where the moment of the lateral force, m·a·h, is that
     * of the loads about the outer wheels, Σ F·t/2 (statics; R. N. Jazar, Vehicle Dynamics, from memory). The same car
     * with the CG as low as it was does not.
     */
    @Test
    void aTallCarRollsOver() {
        Chassis low = RIGID.chassis();
        Car tall = tall(RIGID, 1.1);
        BrakePlan plan = plan(-90, 6, -20, -1);
        EntryResult entry = run(tall, plan);
        assertEquals(Outcome.ROLLED_OVER, entry.outcome(), entry.cause());
        assertEquals(EntryResult.Limit.ROLL_OVER, entry.limit());
        double at = event(entry, Kind.ROLL_OVER).station();
        double holds = read(entry, "front_axle_load_n", at) * low.frontTrack() / 2
                + read(entry, "rear_axle_load_n", at) * low.rearTrack() / 2;
        double tips = low.mass() * 1.1 * Math.abs(read(entry, "lateral_acceleration_mps2", at));
        assertEquals(holds, tips, 0.02 * holds);
        assertTrue(entry.cause().startsWith("the inner wheels leave the road at "), entry.cause());
        assertTrue(run(RIGID, plan).outcome() != Outcome.ROLLED_OVER);
    }

    private static Car tall(Car car, double height) {
        Chassis low = car.chassis();
        return car.with(new Chassis(
                low.mass(),
                low.wheelbase(),
                low.cgToFrontAxle(),
                height,
                low.yawInertia(),
                low.frontTrack(),
                low.rearTrack()));
    }

    /**
     * Such a car on grippy tyres, slow enough to make it: what it keeps to a roll-over follows from the same balance of
     * moments, and that limits it. The low car is never as near to it as to sliding.
     */
    @Test
    void aTallCarThatMakesItIsLimitedByRollingOver() {
        BrakePlan plan = plan(-160, 5, -20, 5);
        Car grippy = RIGID.withTyres(
                RIGID.frontTyre().withFriction(1.3), RIGID.rearTyre().withFriction(1.3));
        EntryResult entry = run(tall(grippy, 0.85), plan);
        assertEquals(Outcome.MADE_IT, entry.outcome(), entry.cause());
        assertEquals(EntryResult.Limit.ROLL_OVER, entry.limit());
        double front = RIGID.chassis().frontTrack();
        double rear = RIGID.chassis().rearTrack();
        Trace trace = entry.profile().orElseThrow();
        double least = 1;
        double wayIn = Math.max(entry.minimumSpeedAt(), event(entry, Kind.APEX).station());
        for (int i = 0; i < trace.rows() && trace.column("s_m").at(i) <= wayIn; i++) {
            double holds = front / 2 * trace.column("front_axle_load_n").at(i)
                    + rear / 2 * trace.column("rear_axle_load_n").at(i);
            double tips = RIGID.chassis().mass()
                    * 0.85
                    * Math.abs(trace.column("lateral_acceleration_mps2").at(i));
            least = Math.min(least, 1 - tips / holds);
        }
        assertEquals(least, entry.margins().rollOver(), 0.01);
        EntryResult low = run(grippy, plan);
        assertTrue(low.made());
        assertTrue(low.limit() != EntryResult.Limit.ROLL_OVER);
        assertTrue(Double.isNaN(low.margins().rollOver()), low.margins().toString());
    }

    /** Of what is left, the least names the limit; what must be kept of an axle is not left. From the words alone. */
    @Test
    void theFullestIsNamed() {
        EntryResult.Margins margins = new EntryResult.Margins(0.3, 0.2, 0.17, 3);
        assertEquals(EntryResult.Limit.ROLL_OVER, margins.fullest(0, 0));
        assertEquals(EntryResult.Limit.REAR_AXLE, margins.fullest(0.01, 0.05));
        EntryResult.Margins never = new EntryResult.Margins(0.2, 0.2, Double.NaN, 3);
        assertEquals(EntryResult.Limit.FRONT_AXLE, never.fullest(0, 0));
        assertEquals(EntryResult.Limit.REAR_AXLE, never.fullest(0.01, 0.05));
    }

    /** Stopped rear wheels in the turn: the tail comes round, and beyond 0.6 rad of sideslip it is called a spin. */
    @Test
    void stoppedRearWheelsSpinTheCar() {
        EntryResult entry = run(RIGID.withFrontBrakeShare(0.45), plan(-110, 8, 30, 50));
        assertEquals(Outcome.SPUN, entry.outcome());
        EntryEvent spin = event(entry, Kind.SPIN);
        assertEquals(0.6, Math.abs(Math.toRadians(read(entry, "sideslip_deg", spin.station()))), 0.08);
        EntryEvent locks = event(entry, Kind.REAR_LOCKS);
        assertTrue(locks.station() < spin.station());
        assertTrue(entry.cause().startsWith("rear wheel locks "), entry.cause());
        assertTrue(entry.cause().contains(", then the car spins at "), entry.cause());
    }
}
