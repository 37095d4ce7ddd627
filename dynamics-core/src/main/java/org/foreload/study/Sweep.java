package org.foreload.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/**
 * Runs one computation for many cases on several threads. Results stand in the order of the cases, so they do not
 * depend on the number of threads; what was done when a sweep is stopped is kept.
 */
public final class Sweep {

    private final int threads;
    private final Progress progress;

    /**
     * @param threads number of threads, 1 or more
     * @param progress told of each case that is done
     * @throws org.foreload.conventions.InvalidValueException if there is no thread
     */
    public Sweep(int threads, Progress progress) {
        if (threads < 1) {
            throw new org.foreload.conventions.InvalidValueException("threads", threads, "1 or more");
        }
        this.threads = threads;
        this.progress = Objects.requireNonNull(progress, "progress");
    }

    /** A sweep on all processors, without a progress report. */
    public static Sweep quiet() {
        return new Sweep(Runtime.getRuntime().availableProcessors(), Progress.SILENT);
    }

    /** The same threads and the same stop, without a progress report. */
    public Sweep unreported() {
        return unreported(threads);
    }

    /** The same stop, for sweeps that run within one case of this one: on its thread, and without a report. */
    public Sweep within() {
        return unreported(1);
    }

    private Sweep unreported(int on) {
        return new Sweep(on, new Progress() {
            @Override
            public void update(int done, int total) {
                // Not passed on.
            }

            @Override
            public boolean stopped() {
                return progress.stopped();
            }
        });
    }

    /** Number of threads. */
    public int threads() {
        return threads;
    }

    /** Told of progress, and asked whether to go on; called from many threads. */
    public interface Progress {

        /** Says nothing and never stops. */
        Progress SILENT = (done, total) -> {};

        /** {@code done} of {@code total} cases are finished. */
        void update(int done, int total);

        /** Whether no further case shall be started. */
        default boolean stopped() {
            return false;
        }
    }

    /**
     * Runs the computation for each case. A stop, or an interrupt of the thread that called, keeps further cases from
     * being started; those that have been started are finished, and nothing that was done is lost. A thread that was
     * interrupted still is when this returns. No case runs any longer, and none is reported, when this returns or
     * throws: after a failure, too, those that have been started are waited for.
     *
     * @param <A> case
     * @param <R> result
     * @param cases whatever the computation takes
     * @param computation called from many threads; its result is not null
     * @return results in the order of the cases; empty for a case that a stop or an interrupt kept from being started
     * @throws RuntimeException what a computation throws, as it is: that of the first case, in their order, that throws
     * @throws IllegalStateException if it throws an error; that is the cause
     * @throws NullPointerException if its result is null
     */
    public <A, R> List<Optional<R>> run(List<A> cases, Function<? super A, ? extends R> computation) {
        Objects.requireNonNull(cases, "cases");
        Objects.requireNonNull(computation, "computation");
        AtomicInteger done = new AtomicInteger();
        AtomicBoolean interrupted = new AtomicBoolean();
        AtomicBoolean failed = new AtomicBoolean();
        ExecutorService pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "foreload-sweep");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<Optional<R>>> pending = new ArrayList<>();
            for (A one : cases) {
                Callable<Optional<R>> task = () -> {
                    if (failed.get() || interrupted.get() || progress.stopped()) {
                        return Optional.empty();
                    }
                    R result = Objects.requireNonNull(computation.apply(one), "a case of a sweep came to no result");
                    progress.update(done.incrementAndGet(), cases.size());
                    return Optional.of(result);
                };
                pending.add(pool.submit(task));
            }
            List<Optional<R>> results = new ArrayList<>();
            for (Future<Optional<R>> one : pending) {
                results.add(awaited(one, interrupted));
            }
            return results;
        } catch (ExecutionException failure) {
            failed.set(true);
            throw failure.getCause() instanceof RuntimeException cause
                    ? cause
                    : new IllegalStateException("a case failed", failure.getCause());
        } finally {
            pool.shutdown();
            awaitEnd(pool, interrupted);
            if (interrupted.get()) {
                Thread.currentThread().interrupt();
            }
        }
    }

    /** Until no worker runs, however often the wait for it is interrupted. */
    private static void awaitEnd(ExecutorService pool, AtomicBoolean interrupted) {
        boolean ended = false;
        while (!ended) {
            try {
                ended = pool.awaitTermination(1, TimeUnit.DAYS);
            } catch (InterruptedException stop) {
                interrupted.set(true);
            }
        }
    }

    /** What a case came to, however often the wait for it is interrupted. */
    private static <R> Optional<R> awaited(Future<Optional<R>> one, AtomicBoolean interrupted)
            throws ExecutionException {
        while (true) {
            try {
                return one.get();
            } catch (InterruptedException stop) {
                interrupted.set(true);
            }
        }
    }
}
