package org.foreload.strategy;

import java.util.Optional;
import org.foreload.braking.Braking;

/**
 * What a sweep already knows of its releases, and learns as it goes on: with it, an interrupted sweep is taken up
 * again. Only the outcome of the search is kept; the entry itself is driven again from it, and so comes out the same to
 * the last bit. Called from many threads at once.
 */
public interface SweepMemory {

    /** Knows nothing and keeps nothing. */
    SweepMemory NONE = new SweepMemory() {
        @Override
        public Optional<Found> recall(Braking release) {
            return Optional.empty();
        }

        @Override
        public void keep(Braking release, Found found) {}
    };

    /**
     * What an earlier run of the same sweep found for a release.
     *
     * @param release the release
     */
    Optional<Found> recall(Braking release);

    /** Told what was found for a release that was not recalled. */
    void keep(Braking release, Found found);

    /**
     * What the search for one release came to.
     *
     * @param brakePoint the latest brake point, m; that of the closest attempt if there is none
     * @param found whether a brake point makes the corner with the margin asked for
     */
    record Found(double brakePoint, boolean found) {}
}
