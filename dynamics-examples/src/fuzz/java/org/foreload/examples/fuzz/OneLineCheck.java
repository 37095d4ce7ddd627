package org.foreload.examples.fuzz;

import org.foreload.file.InputException;

/** A refusal is one line. */
final class OneLineCheck {

    private OneLineCheck() {}

    static void of(InputException refused) {
        if (refused.line().isBlank() || refused.line().lines().count() != 1) {
            throw new IllegalStateException("not one line: " + refused.line());
        }
    }
}
