package org.foreload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.foreload.braking.Release;
import org.foreload.collocation.Progress;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.SampleEntries;
import org.foreload.entry.SimulationSettings;
import org.foreload.lap.Circuit;
import org.foreload.limit.Band;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.path.Corner;
import org.foreload.recording.Channel;
import org.foreload.recording.Recording;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Who hands over null is told which argument it was, where it was handed over: common practice, no source. */
class NullArgumentsTest {

    private static final Car CAR = SampleEntries.ROAD;

    private static final Corner CORNER = SampleEntries.medium(45);

    private static void assertNamed(String name, Executable call) {
        assertEquals(name, assertThrows(NullPointerException.class, call, name).getMessage());
    }

    @Test
    void ofACar() {
        assertNamed("chassis", () -> CAR.with((org.foreload.vehicle.Chassis) null));
        assertNamed("frontTyre", () -> CAR.withTyres(null, CAR.rearTyre()));
        assertNamed("rearTyre", () -> CAR.withTyres(CAR.frontTyre(), null));
    }

    @Test
    void ofAReleaseAndACircuit() {
        assertNamed("shape", () -> new Release(null, 0, 10));
        assertNamed("name", () -> new Circuit(null, List.of(CORNER)));
        assertNamed("corners", () -> new Circuit("x", null));
    }

    @Test
    void ofASimulator() {
        DriverSettings driver = DriverSettings.practised();
        SimulationSettings settings = new SimulationSettings(1e-4, 1);
        SpeedPlan exit = new SpeedPlan(new double[] {0, 100}, new double[] {20, 30});
        assertNamed("car", () -> new EntrySimulator(null, CORNER, driver, exit, settings));
        assertNamed("corner", () -> new EntrySimulator(CAR, null, driver, exit, settings));
        assertNamed("driver", () -> new EntrySimulator(CAR, CORNER, null, exit, settings));
        assertNamed("exit", () -> new EntrySimulator(CAR, CORNER, driver, null, settings));
        assertNamed("settings", () -> new EntrySimulator(CAR, CORNER, driver, exit, null));
    }

    @Test
    void ofASweep() {
        CornerStudy study = CornerStudy.of(CAR, CORNER);
        assertNamed("study", () -> new ReleaseSweep(null, SweepPlan.standard()));
        assertNamed("plan", () -> new ReleaseSweep(study, null));
    }

    @Test
    void ofARecording() {
        assertNamed("columns", () -> Recording.of((Map<Channel, double[]>) null));
    }

    /** A search for the limit does not begin: what watches it is never called. */
    @Test
    void ofTheLimit() {
        Hands hands = Hands.practised(8);
        LimitOptions options = LimitOptions.STANDARD;
        Progress never = (i, r) -> {
            throw new AssertionError("searching");
        };
        assertNamed("car", () -> Limit.solve(null, CORNER, Band.road(), hands, options, never));
        assertNamed("corner", () -> Limit.solve(CAR, null, Band.road(), hands, options, never));
        assertNamed("band", () -> Limit.solve(CAR, CORNER, null, hands, options, never));
        assertNamed("hands", () -> Limit.solve(CAR, CORNER, Band.road(), null, options, never));
        assertNamed("options", () -> Limit.solve(CAR, CORNER, Band.road(), hands, null, never));
        assertNamed("watcher", () -> Limit.solve(CAR, CORNER, Band.road(), hands, options, null));
        assertNamed("band", () -> Limit.solve(CAR, CORNER, null));
        assertNamed("car", () -> Limit.solve(null, CORNER, Band.road()));
    }
}
