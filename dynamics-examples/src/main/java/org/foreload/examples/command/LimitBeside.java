package org.foreload.examples.command;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.foreload.collocation.Progress;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.AgainstLimit;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.gap.LossToLimit;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitResult;

/** Perfect hands and feet on the line of a study, beside an entry that a verb finds; solved once. */
final class LimitBeside implements AutoCloseable {

    private final Console console;
    private final EntrySimulator simulator;
    private final double buildUpTime;
    private final FutureTask<LimitResult> solving;
    private volatile boolean closed;

    private LimitBeside(Console console, EntrySimulator simulator, double buildUpTime) {
        this.console = console;
        this.simulator = simulator;
        this.buildUpTime = buildUpTime;
        this.solving = new FutureTask<>(this::solved);
    }

    /** Solves when it is asked, showing progress. */
    static LimitBeside whenAsked(Console console, EntrySimulator simulator, double buildUpTime) {
        return new LimitBeside(console, simulator, buildUpTime);
    }

    /** Begins to solve, without progress, beside what the verb does. */
    static LimitBeside begun(Console console, EntrySimulator simulator, double buildUpTime) {
        LimitBeside limit = new LimitBeside(console.quietly(), simulator, buildUpTime);
        Thread thread = new Thread(limit.solving, "foreload-limit");
        thread.setDaemon(true);
        thread.start();
        return limit;
    }

    /**
     * Compares an entry with them. A stop, or a car that the limit does not know, takes away this answer and no other.
     *
     * @param entry that made the corner, with its profile
     */
    AgainstLimit against(EntryResult entry) {
        solving.run();
        try {
            LimitResult limit = solving.get();
            return limit.converged()
                    ? AgainstLimit.of(LossToLimit.of(simulator.apex(), entry, limit))
                    : AgainstLimit.none("the search for it found no optimum");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return AgainstLimit.none("interrupted");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof ComputationException || e.getCause() instanceof InvalidValueException) {
                return AgainstLimit.none(e.getCause().getMessage());
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /** Ends what was begun and is not asked for any more. */
    @Override
    public void close() {
        closed = true;
    }

    private LimitResult solved() {
        try (ShownProgress progress = console.progress("steps")) {
            LimitOptions options = LimitOptions.STANDARD;
            Hands hands = LossToLimit.hands(simulator.car(), simulator.corner(), simulator.driver(), buildUpTime);
            Progress shown = watcher(progress, options);
            return Limit.solve(
                    simulator.car(), simulator.corner(), LossToLimit.band(), hands, options, (step, residual) -> {
                        if (closed) {
                            throw new ComputationException("not asked for any more");
                        }
                        shown.accept(step, residual);
                    });
        }
    }

    /** Shows the steps of a search, and ends it when somebody wants it to stop. */
    static Progress watcher(ShownProgress progress, LimitOptions options) {
        return (step, residual) -> {
            if (progress.stopped()) {
                throw new ComputationException("stopped after " + step + " steps, before an optimum was found");
            }
            int most = options.mostSteps();
            progress.update(step, step < most ? most : 2 * most); // A second, careful search may take as many.
        };
    }
}
