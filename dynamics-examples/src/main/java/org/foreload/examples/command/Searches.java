package org.foreload.examples.command;

import org.foreload.entry.EntryResult;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Optimum;
import org.foreload.strategy.CornerStudy;

/** The search for the best release, as several verbs begin with it. */
final class Searches {

    private Searches() {}

    /** Searches, showing progress. */
    static Optimum optimum(Console console, CornerStudy study, SearchOptions options, double buildUpTime) {
        try (ShownProgress progress = console.progress("releases")) {
            return options.search(buildUpTime).find(study, options.threads(), progress);
        }
    }

    /**
     * The best entry of a search.
     *
     * @throws ComputationException if no release makes the corner
     */
    static EntryResult best(Optimum optimum) {
        return optimum.entry()
                .orElseThrow(() -> optimum.complete()
                        ? ComputationException.missed(
                                "no release that was tried makes this corner with the margin asked for")
                        : new ComputationException("stopped before a release was found that makes this corner"));
    }
}
