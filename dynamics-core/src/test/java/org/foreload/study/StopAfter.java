package org.foreload.study;

/** Stops after so many cases, and counts them; for a sweep on one thread. */
public final class StopAfter implements Sweep.Progress {

    private final int most;
    private int cases;
    private int total;

    /** Stops after so many. */
    public StopAfter(int most) {
        this.most = most;
    }

    /** How many cases were finished. */
    public int cases() {
        return cases;
    }

    /** How many were announced. */
    public int total() {
        return total;
    }

    @Override
    public synchronized void update(int done, int total) {
        this.total = total;
        cases++;
    }

    @Override
    public synchronized boolean stopped() {
        return cases >= most;
    }
}
