package org.foreload.optimum;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.foreload.study.Sweep;

/** Several sweeps one after another under one count of evaluations, with one stop for all. */
final class Rounds {

    private final int threads;
    private final Sweep.Progress progress;
    private final int total;
    private final AtomicInteger done;
    private final AtomicBoolean complete;

    Rounds(int threads, Sweep.Progress progress, int total) {
        this(threads, progress, total, new AtomicInteger(), new AtomicBoolean(true));
    }

    private Rounds(int threads, Sweep.Progress progress, int total, AtomicInteger done, AtomicBoolean complete) {
        this.threads = threads;
        this.progress = progress;
        this.total = total;
        this.done = done;
        this.complete = complete;
    }

    /** The same count and the same stop for sweeps that run within one case of a sweep: on its thread. */
    Rounds within() {
        return new Rounds(1, progress, total, done, complete);
    }

    /** Runs a computation for each case; what a stop left out is missing from the results. */
    <A, R> List<R> run(List<A> cases, Function<A, R> computation) {
        if (cases.isEmpty()) {
            return List.of();
        }
        List<Optional<R>> results = new Sweep(threads, new Sweep.Progress() {
                    @Override
                    public void update(int cases, int of) {
                        // Evaluations are counted instead, one by one.
                    }

                    @Override
                    public boolean stopped() {
                        return Rounds.this.stopped();
                    }
                })
                .run(cases, computation);
        if (!results.stream().allMatch(Optional::isPresent)) {
            complete.set(false);
        }
        return results.stream().flatMap(Optional::stream).toList();
    }

    boolean stopped() {
        boolean stopped = progress.stopped();
        if (stopped) {
            complete.set(false);
        }
        return stopped;
    }

    boolean complete() {
        return complete.get();
    }

    void count() {
        progress.update(Math.min(total, done.incrementAndGet()), total);
    }

    /** Counts evaluations that will not be needed; after a stop, nothing counts any more. */
    void skip(int evaluations) {
        if (stopped()) {
            return;
        }
        progress.update(Math.min(total, done.addAndGet(evaluations)), total);
    }

    ToDoubleFunction<double[]> counting(ToDoubleFunction<double[]> cost) {
        return point -> {
            double value = cost.applyAsDouble(point);
            count();
            return value;
        };
    }
}
