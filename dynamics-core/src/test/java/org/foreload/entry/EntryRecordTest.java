package org.foreload.entry;

import static org.foreload.entry.SampleRun.BRAKE_POINT;
import static org.foreload.entry.SampleRun.CAR;
import static org.foreload.entry.SampleRun.CORNER;
import static org.foreload.entry.SampleRun.HEIGHT;
import static org.foreload.entry.SampleRun.MASS;
import static org.foreload.entry.SampleRun.PEAK;
import static org.foreload.entry.SampleRun.PLAN;
import static org.foreload.entry.SampleRun.TO_FRONT;
import static org.foreload.entry.SampleRun.TO_REAR;
import static org.foreload.entry.SampleRun.WEIGHT;
import static org.foreload.entry.SampleRun.WHEELBASE;
import static org.foreload.entry.SampleRun.friction;
import static org.foreload.entry.SampleRun.simulator;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.path.Path;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is recorded of an entry, against kinematics, statics and its own columns, on one run that makes the corner. */
class EntryRecordTest {

    private static final Path PATH = CORNER.path();
    private static final double BRAKE_LAG = 0.04;
    private static final double THROTTLE_LAG = 0.10;

    private EntryResult entry;
    private Trace trace;

    /** Driven for each test anew, so that each notices by itself a simulator that has changed. */
    @BeforeEach
    void drive() {
        entry = simulator(CAR).run(PLAN);
        trace = entry.profile().orElseThrow();
    }

    private double[] column(String name) {
        return trace.column(name).values();
    }

    /** Between two rows neither of which is near a place where something switches. */
    private static boolean smooth(double s) {
        return !(Math.abs(s - BRAKE_POINT) < 10)
                && !(Math.abs(s - 25) < 6)
                && !(Math.abs(s + 10) < 4)
                && !(s > 79 && s < 90);
    }

    @Test
    void theCornerIsMade() {
        assertEquals(Outcome.MADE_IT, entry.outcome());
        assertEquals("on its line to the exit", entry.cause());
        assertTrue(entry.braked());
    }

    /** The same entry driven again is the same value, rows and all. */
    @Test
    void anEntryDrivenAgainIsEqual() {
        EntryResult again = simulator(CAR).run(PLAN);
        assertEquals(entry, again);
        assertEquals(entry.hashCode(), again.hashCode());
        assertEquals(simulator(CAR).probe(PLAN), simulator(CAR).probe(PLAN));
    }

    @Test
    void theStationsOfThePlanAndTheLineAreEvents() {
        assertEquals(BRAKE_POINT, entry.event(Kind.BRAKE_ON).orElseThrow().station(), 1e-5);
        assertEquals(-10, entry.event(Kind.RELEASE_START).orElseThrow().station(), 1e-5);
        assertEquals(0, entry.event(Kind.TURN_IN).orElseThrow().station(), 1e-5);
        assertEquals(25, entry.event(Kind.RELEASE_END).orElseThrow().station(), 1e-5);
        // The middle of an arc of 75 m after a spiral of 30 m, up to the samples in which it is sought.
        assertEquals(67.5, entry.event(Kind.APEX).orElseThrow().station(), 0.3);
        assertEquals(67.5, simulator(CAR).apex(), 0.3);
        List<Double> stations = entry.events().stream().map(EntryEvent::station).toList();
        assertEquals(stations.stream().sorted().toList(), stations);
    }

    /** A row at each metre, and each place where something switches; the run from end to end. */
    @Test
    void thereIsARowAtEachMetre() {
        double[] s = column("s_m");
        assertEquals(-200, s[0]);
        assertEquals(PATH.end(), s[s.length - 1]);
        int metres = 0;
        for (int i = 0; i < s.length; i++) {
            metres += Math.abs(s[i] - Math.rint(s[i])) < 1e-9 ? 1 : 0;
            assertTrue(i == 0 || s[i] > s[i - 1] && s[i] <= s[i - 1] + 1 + 1e-9, "row at " + s[i]);
        }
        assertEquals(Math.floor(PATH.end()) + 201, metres);
    }

    /** Speed is way over time; along a bend the way of a car that is n to the inside is 1 − nκ of the line's. */
    @Test
    void speedIsWayOverTime() {
        double[] s = column("s_m");
        double[] t = column("time_s");
        double[] v = column("speed_mps");
        double[] n = column("offset_m");
        assertEquals(0, t[0]);
        assertEquals(entry.time(), t[t.length - 1]);
        for (int i = 1; i < s.length; i++) {
            double middle = (s[i] + s[i - 1]) / 2;
            double way = (s[i] - s[i - 1]) * (1 - (n[i] + n[i - 1]) / 2 * PATH.curvature(middle));
            assertEquals(way, (v[i] + v[i - 1]) / 2 * (t[i] - t[i - 1]), 2e-3 * way + 1e-6, "at " + middle);
        }
    }

    /** Along the course a car slows as its speed falls; across, it turns with yaw rate and sideslip: v·(r + dβ/dt). */
    @Test
    void accelerationsAreThoseOfTheCourse() {
        double[] s = column("s_m");
        double[] t = column("time_s");
        double[] v = column("speed_mps");
        double[] slowing = column("deceleration_mps2");
        double[] lateral = column("lateral_acceleration_mps2");
        double[] yaw = column("yaw_rate_rad_per_s");
        double[] beta = column("sideslip_deg");
        int checked = 0;
        for (int i = 1; i + 1 < s.length; i++) {
            if (smooth(s[i]) && s[i] > -195) {
                double dt = t[i + 1] - t[i - 1];
                assertEquals(-(v[i + 1] - v[i - 1]) / dt, slowing[i], 0.06, "slowing at " + s[i]);
                double turn = yaw[i] + Math.toRadians(beta[i + 1] - beta[i - 1]) / dt;
                assertEquals(v[i] * turn, lateral[i], 0.06, "lateral at " + s[i]);
                checked++;
            }
        }
        assertTrue(checked > 300);
        assertTrue(lateral[at(60)] > 7);
    }

    private int at(double station) {
        double[] s = column("s_m");
        int i = 0;
        while (s[i] < station) {
            i++;
        }
        return i;
    }

    /** Axle loads with m·d·h/L (R. N. Jazar, Vehicle Dynamics, ch. 2); the four wheels carry the weight. */
    @Test
    void loadsAreThoseOfTheStatics() {
        double[] s = column("s_m");
        double[] front = column("front_axle_load_n");
        double[] rear = column("rear_axle_load_n");
        double[] brake = column("brake_mps2");
        double[] drive = column("drive_mps2");
        for (int i = 0; i < s.length; i++) {
            assertEquals(front[i], column("front_left_load_n")[i] + column("front_right_load_n")[i], 1e-6);
            assertEquals(rear[i], column("rear_left_load_n")[i] + column("rear_right_load_n")[i], 1e-6);
            assertEquals(WEIGHT, front[i] + rear[i], 1e-6);
            if (s[i] < -20) {
                double speed = column("speed_mps")[i];
                double drag = 0.5 * 1.2 * 0.65 * speed * speed;
                double transfer = (MASS * (brake[i] - drive[i]) + drag) * HEIGHT / WHEELBASE;
                assertEquals(WEIGHT * TO_REAR / WHEELBASE + transfer, front[i], 1);
            }
        }
        int apex = at(67);
        assertTrue(column("front_right_load_n")[apex] > column("front_left_load_n")[apex] + 1000);
        assertTrue(column("rear_right_load_n")[apex] > column("rear_left_load_n")[apex] + 1000);
    }

    /** The foot comes down at once; the brake follows with its lag as 1 − e^(−t/τ), and the engine dies as e^(−t/τ). */
    @Test
    void theFeetActWithTheirLags() {
        double on = entry.event(Kind.BRAKE_ON).orElseThrow().time();
        double[] s = column("s_m");
        double[] drive = column("drive_mps2");
        double before = drive[at(BRAKE_POINT)];
        double speed = column("speed_mps")[at(BRAKE_POINT)];
        assertEquals(110e3 / speed / MASS, before, 0.01);
        for (int i = at(BRAKE_POINT) + 1; s[i] < -11; i++) {
            double since = column("time_s")[i] - on;
            assertEquals(PEAK * -Math.expm1(-since / BRAKE_LAG), column("brake_mps2")[i], 2e-3, "brake at " + s[i]);
            assertEquals(before * Math.exp(-since / THROTTLE_LAG), drive[i], 2e-3, "drive at " + s[i]);
        }
    }

    /** On the straight an axle's use is its brake force over its friction, each wheel's sensitive to its load. */
    @Test
    void useOfAnAxleIsForceOverFriction() {
        int i = at(-60);
        double front = column("front_axle_load_n")[i] / 2;
        double rear = column("rear_axle_load_n")[i] / 2;
        double brake = MASS * column("brake_mps2")[i] / 2;
        assertEquals(0.78 * brake / (front * friction(1.05, front)), column("front_utilisation")[i], 1e-6);
        assertEquals(0.22 * brake / (rear * friction(1.08, rear)), column("rear_utilisation")[i], 1e-6);
        int arc = at(75);
        double[] wheels = {
            column("front_left_load_n")[arc],
            column("front_right_load_n")[arc],
            column("rear_left_load_n")[arc],
            column("rear_right_load_n")[arc]
        };
        double lateral = MASS * column("lateral_acceleration_mps2")[arc];
        double frontMost = wheels[0] * friction(1, wheels[0]) + wheels[1] * friction(1, wheels[1]);
        double rearMost = wheels[2] * friction(1.04, wheels[2]) + wheels[3] * friction(1.04, wheels[3]);
        assertEquals(lateral * TO_REAR / WHEELBASE / frontMost, column("front_utilisation")[arc], 0.05);
        assertEquals(lateral * TO_FRONT / WHEELBASE / rearMost, column("rear_utilisation")[arc], 0.03);
    }

    /** Slip is the direction in which an axle moves; that of the front, against its steered wheels. */
    @Test
    void slipsAreThoseOfTheMotion() {
        for (int i = 0; i < trace.rows(); i++) {
            double v = column("speed_mps")[i];
            double beta = Math.toRadians(column("sideslip_deg")[i]);
            double yaw = column("yaw_rate_rad_per_s")[i];
            double steer = Math.toRadians(column("steer_deg")[i]);
            double front = Math.atan2(v * Math.sin(beta) + TO_FRONT * yaw, v * Math.cos(beta)) - steer;
            double rear = Math.atan2(v * Math.sin(beta) - TO_REAR * yaw, v * Math.cos(beta));
            assertEquals(Math.tan(front), column("front_slip")[i], 1e-9);
            assertEquals(Math.tan(rear), column("rear_slip")[i], 1e-9);
            assertEquals(0, column("locked_wheels")[i]);
        }
    }

    /** Speeds, share and margins as anybody would read them off the profile. */
    @Test
    void theFiguresAreThoseOfTheProfile() {
        double[] s = column("s_m");
        double[] v = column("speed_mps");
        double[] n = column("offset_m");
        double top = 0;
        double least = Double.POSITIVE_INFINITY;
        double leastAt = 0;
        double farthest = 0;
        double edge = Double.POSITIVE_INFINITY;
        for (int i = 0; i < s.length; i++) {
            top = s[i] <= BRAKE_POINT ? Math.max(top, v[i]) : top;
            if (s[i] > BRAKE_POINT && v[i] < least) {
                least = v[i];
                leastAt = s[i];
            }
            farthest = Math.max(farthest, Math.abs(n[i]));
            edge = Math.min(edge, 4.5 - Math.abs(n[i]));
        }
        double frontMost = 0;
        double rearMost = 0;
        double wayIn = Math.min(entry.pickUp(), Math.max(67.5, leastAt));
        assertTrue(wayIn < 60, "the throttle comes before the apex");
        for (int i = 0; i < s.length; i++) {
            if (s[i] >= BRAKE_POINT && s[i] <= wayIn) {
                frontMost = Math.max(frontMost, column("front_utilisation")[i]);
                rearMost = Math.max(rearMost, column("rear_utilisation")[i]);
            }
        }
        assertEquals(top, entry.topSpeed(), 1e-9);
        assertEquals(v[at(0)], entry.turnInSpeed(), 1e-9);
        // Rows are a metre apart: where coasting turns into driving, the dip between two of them is a little deeper.
        assertTrue(entry.minimumSpeed() <= least + 1e-9);
        assertEquals(least, entry.minimumSpeed(), 0.01);
        assertEquals(leastAt, entry.minimumSpeedAt(), 1);
        assertEquals(
                entry.minimumSpeedAt(),
                entry.event(Kind.MINIMUM_SPEED).orElseThrow().station());
        assertEquals(
                column("time_s")[at(leastAt)],
                entry.event(Kind.MINIMUM_SPEED).orElseThrow().time(),
                0.05);
        assertEquals((v[at(0)] - least) / (v[at(BRAKE_POINT)] - least), entry.trailShare(), 1e-3);
        assertEquals(farthest, entry.farthestOffset(), 2e-3);
        EntryResult.Margins margins = entry.margins();
        // Margins are read at the ends of steps, rows stand a metre apart: both miss the summit by a little.
        assertEquals(1 - frontMost, margins.front(), 1e-3);
        assertEquals(1 - rearMost, margins.rear(), 1e-3);
        assertEquals(edge, margins.edge(), 2e-3);
        assertEquals(EntryResult.Limit.FRONT_AXLE, entry.limit());
        assertFalse(entry.withoutProfile().profile().isPresent());
        assertEquals(entry.time(), entry.withoutProfile().time());
    }
}
