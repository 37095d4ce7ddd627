package org.foreload.validation;

import java.util.concurrent.TimeUnit;
import org.foreload.limit.Band;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitResult;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Car;
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

/** Cost of one limit: near the line, and on the free road. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5)
@Measurement(iterations = 5)
@Fork(1)
@State(Scope.Thread)
public class LimitBenchmark {

    /** How far from the line, m, or the whole road. */
    @Param({"0.15", "track"})
    public String band;

    private Car car;
    private Band where;

    /** Builds the car and the band. */
    @Setup
    public void prepare() {
        car = Scene.car(new SlipCurve.MagicFormula(1.4, -0.4));
        where = band.equals("track") ? Band.road() : Band.within(Double.parseDouble(band));
    }

    /** Solves it. */
    @Benchmark
    public LimitResult limit() {
        return Limit.solve(car, Scene.CORNER, where);
    }
}
