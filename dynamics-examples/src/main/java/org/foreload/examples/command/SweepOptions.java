package org.foreload.examples.command;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.study.Sweep;
import picocli.CommandLine.Option;

/** How a sweep is run and shown. */
final class SweepOptions {

    private static final int MOST_THREADS = 1024;

    @Option(
            names = "--threads",
            paramLabel = "<n>",
            description = "Threads to use; the answer is the same with any number. Default: one for each processor.")
    private Integer threads;

    /** Refuses what cannot be, before anything is computed. */
    void check() {
        Options.within("--threads", threads(), 1, MOST_THREADS, "");
    }

    /** How much is computed at once. */
    int threads() {
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    /**
     * Runs a computation with a sweep that shows its progress.
     *
     * @param cases what is counted, in the plural
     */
    <T> T run(Console console, String cases, Function<Sweep, T> computation) {
        try (ShownProgress progress = console.progress(cases)) {
            return computation.apply(new Sweep(threads(), progress));
        }
    }

    /**
     * Runs a computation of several stages that has nothing to show for half the work.
     *
     * @param cases what is counted, in the plural
     * @param computation takes the sweep, and who wants to hear the name of each stage when it begins
     * @throws ComputationException if it was stopped, or has no answer: then with the words for that
     */
    <T> T whole(
            Console console, String cases, BiFunction<Sweep, Consumer<String>, Optional<T>> computation, String none) {
        try (ShownProgress progress = console.progress(cases)) {
            Optional<T> answer = computation.apply(new Sweep(threads(), progress), progress::stage);
            if (progress.stopped()) {
                throw new ComputationException("stopped before the end; nothing was written");
            }
            return answer.orElseThrow(() -> ComputationException.missed(none));
        }
    }
}
