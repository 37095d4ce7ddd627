package org.foreload.examples.command;

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

/** Perfect hands and feet beside an entry that a verb found. */
final class LimitBeside {

    private LimitBeside() {}

    /**
     * Solves for them on the entry's own line, and compares. A stop, or a car that the limit does not know, takes away
     * this answer and no other.
     *
     * @param entry that made the corner, with its profile
     */
    static AgainstLimit of(
            Console console, EntrySimulator simulator, EntryResult entry, double buildUpTime, boolean quiet) {
        try (ShownProgress progress = console.progress(quiet, "steps")) {
            LimitOptions options = LimitOptions.STANDARD;
            Hands hands = LossToLimit.hands(simulator.car(), simulator.corner(), simulator.driver(), buildUpTime);
            LimitResult limit = Limit.solve(
                    simulator.car(),
                    simulator.corner(),
                    LossToLimit.band(),
                    hands,
                    options,
                    watcher(progress, options));
            return limit.converged()
                    ? AgainstLimit.of(LossToLimit.of(simulator.apex(), entry, limit))
                    : AgainstLimit.none("the search for it found no optimum");
        } catch (ComputationException stopped) {
            return AgainstLimit.none(stopped.getMessage());
        } catch (InvalidValueException unknown) {
            return AgainstLimit.none(unknown.getMessage());
        }
    }

    /** Shows the steps of a search, and ends it when somebody wants it to stop. */
    static Progress watcher(ShownProgress progress, LimitOptions options) {
        return (step, residual) -> {
            if (progress.stopped()) {
                throw new ComputationException("stopped after " + step + " steps, before an optimum was found");
            }
            progress.update(step, options.mostSteps());
        };
    }
}
