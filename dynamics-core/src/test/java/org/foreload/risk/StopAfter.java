package org.foreload.risk;

import org.foreload.study.Sweep;

/** Stops after so many cases, and counts them; for a sweep on one thread. */
final class StopAfter implements Sweep.Progress {

    private final int most;
    private int cases;

    StopAfter(int most) {
        this.most = most;
    }

    /** How many cases were finished. */
    int cases() {
        return cases;
    }

    @Override
    public synchronized void update(int done, int total) {
        cases++;
    }

    @Override
    public synchronized boolean stopped() {
        return cases >= most;
    }
}
