package org.foreload.validation;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealProfile;
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

/** Cost of one ideal entry, which a search over brake points, or a study of many cars, asks for again and again. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
@State(Scope.Thread)
public class IdealBenchmark {

    /** Corner by name: braked straight, or braked while turning. */
    @Param({"hairpin", "fast"})
    public String corner;

    private Car car;
    private Corner line;

    /** Builds a road car that keeps all wheels on the road, and the corner. */
    @Setup
    public void prepare() {
        car = new Car(
                "road car",
                new Chassis(1400, 2.6, 1.22, 0.50, 2200, 1.52, 1.52),
                new Suspension(0.55, 0.03, 0.06, Response.RIGID, Response.RIGID),
                new Aerodynamics(0.68, 0.05, 0.10, 1.2, 0),
                0.66,
                new Driveline(180_000, DrivenAxle.REAR),
                new FrictionTyre(new SlipCurve.Brush(), 1.15, 1.10, 0.08, 4000, 0.3, 22, 30),
                new FrictionTyre(new SlipCurve.Brush(), 1.17, 1.12, 0.08, 4000, 0.3, 22, 30));
        line = switch (corner) {
            case "hairpin" -> left(50, 250, 20, 180, 18, 120);
            case "fast" -> left(60, 200, 140, 90, 90, 150);
            default -> throw new IllegalArgumentException(corner);
        };
    }

    /** Straight, spiral, arc, spiral, straight; lengths and radius in m. */
    private Corner left(double speed, double approach, double radius, double degrees, double spiral, double exit) {
        double arc = Math.toRadians(degrees) * radius - spiral;
        return new Corner(
                corner,
                speed,
                SegmentPath.of(
                        approach,
                        List.of(
                                Segment.spiralIn(spiral, radius, Turn.LEFT),
                                Segment.arc(arc, radius, Turn.LEFT),
                                Segment.spiralOut(spiral, radius, Turn.LEFT)),
                        exit,
                        5));
    }

    /** The fastest entry with the default options. */
    @Benchmark
    public IdealProfile fastestEntry() {
        return IdealEntry.solve(car, line);
    }
}
