package org.foreload.validation;

import java.util.concurrent.TimeUnit;
import org.foreload.tyre.SlipCurve;
import org.foreload.validation.subject.BrakeAndTurn;
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

/** One open-loop run of three seconds, the same as in the yardstick in C++. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Thread)
public class ManoeuvreBenchmark {

    /** Slip curve by name. */
    @Param({"brush", "magic-formula"})
    public String curve;

    /** Error of each step, in sizes of the states: 1e-5 keeps closer to the solution than the yardstick at 1e-6. */
    @Param({"1e-5"})
    public double tolerance;

    private BrakeAndTurn manoeuvre;

    /** Builds the car. */
    @Setup
    public void prepare() {
        SlipCurve shape = curve.equals("brush") ? new SlipCurve.Brush() : new SlipCurve.MagicFormula(1.4, -0.4);
        manoeuvre = new BrakeAndTurn(shape, tolerance);
    }

    /** The whole run. */
    @Benchmark
    public double run() {
        return manoeuvre.run(BrakeAndTurn.END)[0];
    }
}
