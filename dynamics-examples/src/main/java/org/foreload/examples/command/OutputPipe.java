package org.foreload.examples.command;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;

/** Standard output that remembers why it could not be written. */
final class OutputPipe extends OutputStream {

    private final OutputStream target;
    private IOException failure;

    OutputPipe(OutputStream target) {
        this.target = target;
    }

    @Override
    public void write(int b) {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) {
        if (failure == null) {
            try {
                target.write(bytes, offset, length);
            } catch (IOException e) {
                failure = e;
            }
        }
    }

    @Override
    public void flush() {
        if (failure == null) {
            try {
                target.flush();
            } catch (IOException e) {
                failure = e;
            }
        }
    }

    /**
     * Throws if something could not be written; a reader that has gone away ({@code | head}) has what it wants, and is
     * no failure.
     */
    void check() {
        if (failure != null
                && !String.valueOf(failure.getMessage())
                        .toLowerCase(Locale.ROOT)
                        .contains("pipe")) {
            throw new ComputationException("standard output cannot be written: " + failure.getMessage());
        }
    }
}
