package org.foreload.validation;

import java.util.concurrent.TimeUnit;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreForce;
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

/** Cost of one tyre force, the innermost work of every simulated step. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Thread)
public class TyreBenchmark {

    /** Slip curve by name. */
    @Param({"linear", "brush", "magic-formula"})
    public String curve;

    /** Tangent of the slip angle; a field, so that the compiler cannot fold the work away. */
    public double lateralSlip = 0.06;

    /** Slip along the wheel. */
    public double longitudinalSlip = 0.03;

    /** Wheel load, N. */
    public double load = 4200;

    private Tyre tyre;

    /** Builds the tyre. */
    @Setup
    public void prepare() {
        SlipCurve shape = switch (curve) {
            case "linear" -> new SlipCurve.Linear();
            case "brush" -> new SlipCurve.Brush();
            case "magic-formula" -> new SlipCurve.MagicFormula(1.4, -0.5);
            default -> throw new IllegalArgumentException(curve);
        };
        tyre = new FrictionTyre(shape, 1.1, 1.05, 0.1, 4000, 0.3, 18, 20);
    }

    /** Force from both slips. */
    @Benchmark
    public TyreForce combinedSlip() {
        return tyre.force(longitudinalSlip, lateralSlip, load);
    }

    /** Lateral force beside an imposed brake force: a search with one unknown. */
    @Benchmark
    public double besideBrakeForce() {
        return tyre.lateralForce(lateralSlip, 0.5 * load, load);
    }
}
