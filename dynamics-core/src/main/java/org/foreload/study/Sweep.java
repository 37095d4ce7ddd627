package org.foreload.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
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
     */
    public Sweep(int threads, Progress progress) {
        if (threads < 1) {
            throw new org.foreload.conventions.InvalidValueException("threads", threads, "1 or more");
        }
        this.threads = threads;
        this.progress = progress;
    }

    /** A sweep on all processors, without a progress report. */
    public static Sweep quiet() {
        return new Sweep(Runtime.getRuntime().availableProcessors(), Progress.SILENT);
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
     * Runs the computation for each case.
     *
     * @param <A> case
     * @param <R> result
     * @return results in the order of the cases; empty for a case that a stop or an interrupt kept from being started
     * @throws IllegalStateException if a computation throws; its cause is what it threw
     */
    public <A, R> List<Optional<R>> run(List<A> cases, Function<? super A, ? extends R> computation) {
        AtomicInteger done = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "foreload-sweep");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<Optional<R>>> pending = new ArrayList<>();
            for (A one : cases) {
                Callable<Optional<R>> task = () -> {
                    if (progress.stopped() || Thread.currentThread().isInterrupted()) {
                        return Optional.empty();
                    }
                    R result = computation.apply(one);
                    progress.update(done.incrementAndGet(), cases.size());
                    return Optional.of(result);
                };
                pending.add(pool.submit(task));
            }
            List<Optional<R>> results = new ArrayList<>();
            for (Future<Optional<R>> one : pending) {
                results.add(one.get());
            }
            return results;
        } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the sweep was interrupted", stop);
        } catch (ExecutionException failure) {
            throw failure.getCause() instanceof RuntimeException cause
                    ? cause
                    : new IllegalStateException("a case failed", failure.getCause());
        } finally {
            pool.shutdownNow();
        }
    }
}
