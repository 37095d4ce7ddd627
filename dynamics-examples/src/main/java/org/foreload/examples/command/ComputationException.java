package org.foreload.examples.command;

/** A computation that has no answer, or did not reach one; the message says why in one line. */
final class ComputationException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final boolean missed;

    ComputationException(String message) {
        this(message, false);
    }

    private ComputationException(String message, boolean missed) {
        super(message);
        this.missed = missed;
    }

    /** Where nothing that was tried makes the corner. */
    static ComputationException missed(String message) {
        return new ComputationException(message, true);
    }

    /** Whether nothing that was tried makes the corner. */
    boolean missed() {
        return missed;
    }
}
