package org.foreload.validation;

import java.util.concurrent.TimeUnit;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.SimulationSettings;
import org.foreload.tyre.SlipCurve;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Cost of one simulated entry, as a search asks for it and with all that is kept of it. Beside each stands what one
 * right-hand side of the equations comes to, the share of steps and watches included; {@link BicycleBenchmark} has the
 * car alone. Allocation: {@code -prof gc}.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 8, time = 1)
@Fork(1)
@State(Scope.Thread)
public class EntryBenchmark {

    /** Brake points that are visited in turn, so that no branch and no search learns a single entry by heart. */
    private static final int PLANS = 50;

    /** Slip curve by name. */
    @Param({"brush", "magic-formula"})
    public String curve;

    private EntrySimulator simulator;
    private final BrakePlan[] plans = new BrakePlan[PLANS];
    private int next;

    /** Counts right-hand sides: the time for one stands beside that for an entry. */
    @AuxCounters(AuxCounters.Type.OPERATIONS)
    @State(Scope.Thread)
    public static class Work {

        /** Evaluations of the equations, looks of the watches included. */
        public long rightHandSides;
    }

    /** A light car with driven rear wheels that trails its brake into a right-angle corner, and makes it. */
    @Setup
    public void prepare() {
        SlipCurve shape = curve.equals("brush") ? new SlipCurve.Brush() : new SlipCurve.MagicFormula(1.4, -0.4);
        SpeedPlan exit = new SpeedPlan(new double[] {104, 334}, new double[] {25, 42});
        simulator = new EntrySimulator(
                Scene.car(shape), Scene.CORNER, DriverSettings.practised(), exit, SimulationSettings.STANDARD);
        for (int i = 0; i < PLANS; i++) {
            plans[i] = Braking.of(9, 0.25, new Release(ReleaseShapes.PROGRESSIVE, -5, 45))
                    .from(-125 - 0.05 * i);
            if (!simulator.probe(plans[i]).made()) {
                throw new IllegalStateException("an entry that fails is none to measure: " + plans[i]);
            }
        }
    }

    /** Only how it ends. */
    @Benchmark
    public EntryResult probe(Work work) {
        next = (next + 1) % PLANS;
        EntryResult result = simulator.probe(plans[next]);
        work.rightHandSides += result.evaluations();
        return result;
    }

    /** The whole run with its profile. */
    @Benchmark
    public EntryResult run(Work work) {
        next = (next + 1) % PLANS;
        EntryResult result = simulator.run(plans[next]);
        work.rightHandSides += result.evaluations();
        return result;
    }
}
