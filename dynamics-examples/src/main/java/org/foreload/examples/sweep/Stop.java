package org.foreload.examples.sweep;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;

/**
 * A wish to stop, as by Ctrl-C. A computation that can stop half-way and still answer says so with {@link #listen};
 * then whoever wishes the program to end can wait for its answer.
 */
public final class Stop {

    private final CountDownLatch answered = new CountDownLatch(1);
    private final AtomicReference<Runnable> lastWords = new AtomicReference<>();
    private volatile boolean listening;
    private volatile boolean requested;

    /** Says that the computation will stop soon after a request, and answer with what it has. */
    public void listen() {
        listening = true;
    }

    /**
     * Says what is to be done at a stop by a computation that answers as it goes: it is not waited for, and has nothing
     * left to show but how far it came.
     */
    public void lastWords(Runnable words) {
        lastWords.set(words);
    }

    /** Whether a stop was asked for. */
    public boolean requested() {
        return requested;
    }

    /** Says that the answer is out. */
    public void answered() {
        answered.countDown();
    }

    /**
     * Asks for a stop; waits for the answer if one is to be expected. Does nothing once that is out.
     *
     * @param seconds longest wait
     */
    public void request(long seconds) {
        if (answered.getCount() == 0) {
            return;
        }
        requested = true;
        Runnable words = lastWords.getAndSet(null);
        if (words != null) {
            words.run();
        } else if (listening) {
            try {
                answered.await(seconds, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
