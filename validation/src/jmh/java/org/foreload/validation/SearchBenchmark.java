package org.foreload.validation;

import java.util.concurrent.TimeUnit;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.optimum.BestRelease;
import org.foreload.optimum.Optimum;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepPlan;
import org.foreload.strategy.Trial;
import org.foreload.study.Sweep;
import org.foreload.tyre.SlipCurve;
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
 * Cost of the searches: one latest brake point, the sweep with its refined shapes, the best release; one core and two.
 */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2)
@Measurement(iterations = 3)
@Fork(1)
@State(Scope.Thread)
public class SearchBenchmark {

    /** Threads of the sweep and of the search. */
    @Param({"1", "2"})
    public int threads;

    private CornerStudy study;
    private Braking braking;

    /** Builds the study. */
    @Setup
    public void prepare() {
        study = CornerStudy.of(Scene.car(new SlipCurve.MagicFormula(1.4, -0.4)), Scene.CORNER);
        double apex = study.simulator().apex();
        Release release = new Release(ReleaseShapes.LINEAR, 0, 0.7 * apex);
        braking = Braking.of(0.75 * study.lockLimit(), BestRelease.STANDARD.buildUpTime(), release);
    }

    /** The latest brake point of one release, coarsely. */
    @Benchmark
    public Trial latestBrakePoint() {
        return study.search().latest(braking);
    }

    /** The standard sweep and the best of each shape. */
    @Benchmark
    public Exploration explore() {
        Sweep sweep = new Sweep(threads, Sweep.Progress.SILENT);
        ReleaseSweep releases = new ReleaseSweep(study, SweepPlan.standard());
        return ShapeRanking.refine(releases, releases.coarse(sweep, SweepMemory.NONE), sweep);
    }

    /** The best release of any shape. */
    @Benchmark
    public Optimum best() {
        return BestRelease.STANDARD.find(study, threads, Sweep.Progress.SILENT);
    }
}
