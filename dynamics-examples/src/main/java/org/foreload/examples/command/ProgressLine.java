package org.foreload.examples.command;

import org.foreload.study.Sweep;

/** Tells on standard error how far a sweep has come, where a person watches: on a terminal. */
final class ProgressLine implements Sweep.Progress {

    private final Console console;
    private final String what;
    private final boolean watched = System.console() != null;
    private int tenths;

    ProgressLine(Console console, String what) {
        this.console = console;
        this.what = what;
    }

    @Override
    public synchronized void update(int done, int total) {
        int now = 10 * done / total;
        if (watched && now > tenths) {
            tenths = now;
            console.line(what + ": " + done + " of " + total);
        }
    }

    /** A sweep on all processors that tells its progress here. */
    Sweep sweep() {
        return new Sweep(Runtime.getRuntime().availableProcessors(), this);
    }
}
