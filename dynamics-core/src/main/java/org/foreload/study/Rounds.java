package org.foreload.study;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/** Several sweeps one after another under one count of evaluations, with one stop for all. */
public final class Rounds {

    private final int threads;
    private final Sweep.Progress progress;
    private final int total;
    private final AtomicInteger done;
    private final AtomicBoolean complete;

    /**
     * @param threads number of threads
     * @param progress hears of the evaluations, and may stop them
     * @param total evaluations that there will be, about
     */
    public Rounds(int threads, Sweep.Progress progress, int total) {
        this(threads, progress, total, new AtomicInteger(), new AtomicBoolean(true));
    }

    private Rounds(int threads, Sweep.Progress progress, int total, AtomicInteger done, AtomicBoolean complete) {
        this.threads = threads;
        this.progress = Objects.requireNonNull(progress, "progress");
        this.total = total;
        this.done = done;
        this.complete = complete;
    }

    /** The same count and the same stop for sweeps that run within one case of a sweep: on its thread. */
    public Rounds within() {
        return new Rounds(1, progress, total, done, complete);
    }

    /** Number of threads. */
    public int threads() {
        return threads;
    }

    /** A sweep on these threads, with this stop, each case of which counts as so many evaluations. */
    public Sweep counting(int each) {
        return new Sweep(threads, new Sweep.Progress() {
            @Override
            public void update(int cases, int of) {
                skip(each);
            }

            @Override
            public boolean stopped() {
                return Rounds.this.stopped();
            }
        });
    }

    /** Runs a computation for each case; what a stop left out is missing from the results. */
    public <A, R> List<R> run(List<A> cases, Function<A, R> computation) {
        return each(cases, computation).stream().flatMap(Optional::stream).toList();
    }

    /** Runs a computation for each case, in their order; what a stop left out is empty. */
    public <A, R> List<Optional<R>> each(List<A> cases, Function<A, R> computation) {
        Objects.requireNonNull(cases, "cases");
        Objects.requireNonNull(computation, "computation");
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
        return results;
    }

    /** Whether to stop, which also makes this incomplete. */
    public boolean stopped() {
        boolean stopped = progress.stopped();
        if (stopped) {
            complete.set(false);
        }
        return stopped;
    }

    /** Whether nothing was left out so far. */
    public boolean complete() {
        return complete.get();
    }

    /** Counts one evaluation. */
    public void count() {
        progress.update(Math.min(total, done.incrementAndGet()), total);
    }

    /** Counts evaluations that will not be needed; after a stop, nothing counts any more. */
    public void skip(int evaluations) {
        if (stopped()) {
            return;
        }
        progress.update(Math.min(total, done.addAndGet(evaluations)), total);
    }
}
