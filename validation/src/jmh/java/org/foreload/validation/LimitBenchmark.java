package org.foreload.validation;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.foreload.limit.Band;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
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
    private Corner corner;
    private Band where;

    /** Builds a light car, a medium corner and the band. */
    @Setup
    public void prepare() {
        SlipCurve curve = new SlipCurve.MagicFormula(1.4, -0.4);
        car = new Car(
                "light car",
                new Chassis(780, 2.4, 1.25, 0.45, 980, 1.42, 1.44),
                new Suspension(0.6, 0.03, 0.07, new Response(1.8, 0.4), new Response(1.8, 0.4)),
                new Aerodynamics(0.6, 0, 0, 1.2, 0),
                0.725,
                new Driveline(130e3, DrivenAxle.REAR),
                new FrictionTyre(curve, 1.2, 1.15, 0.08, 1900, 0.36, 17, 21),
                new FrictionTyre(curve, 1.2, 1.2, 0.08, 1900, 0.36, 20, 21));
        corner = new Corner(
                "medium",
                50,
                SegmentPath.of(
                        300,
                        List.of(
                                Segment.spiralIn(30, 60, Turn.LEFT),
                                Segment.arc(74.7, 60, Turn.LEFT),
                                Segment.spiralOut(30, 60, Turn.LEFT)),
                        200,
                        5));
        where = band.equals("track") ? Band.road() : Band.within(Double.parseDouble(band));
    }

    /** Solves it. */
    @Benchmark
    public LimitResult limit() {
        return Limit.solve(car, corner, where);
    }
}
