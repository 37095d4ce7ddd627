package org.foreload.examples.command;

/** A computation that has no answer, or did not reach one; the message says why in one line. */
final class ComputationException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    ComputationException(String message) {
        super(message);
    }
}
