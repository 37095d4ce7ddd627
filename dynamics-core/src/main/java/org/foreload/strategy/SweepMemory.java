package org.foreload.strategy;

import java.util.Optional;
import org.foreload.braking.BrakePlan;

/**
 * What a sweep already knows of its releases, and learns as it goes on: with it, an interrupted sweep is taken up
 * again. Only the outcome of the search is kept; the entry itself is driven again from it, and so comes out the same to
 * the last bit. Called from many threads at once.
 */
public interface SweepMemory {

    /** Knows nothing and keeps nothing. */
    SweepMemory NONE = new SweepMemory() {
        @Override
        public Optional<Found> recall(BrakePlan release) {
            return Optional.empty();
        }

        @Override
        public void keep(BrakePlan release, Found found) {}
    };

    /**
     * What an earlier run of the same sweep found for a release.
     *
     * @param release the release; its brake point is open and does not matter
     */
    Optional<Found> recall(BrakePlan release);

    /** Takes what was found for a release that was not recalled. */
    void keep(BrakePlan release, Found found);

    /**
     * What the search for one release came to.
     *
     * @param brakePoint the latest brake point, m; that of the closest attempt if there is none
     * @param found whether a brake point makes the corner with the margin asked for
     * @param inHand how much later, m, the foot could come down before the car does not make the corner; NaN if not
     *     found
     */
    record Found(double brakePoint, boolean found, double inHand) {}
}
