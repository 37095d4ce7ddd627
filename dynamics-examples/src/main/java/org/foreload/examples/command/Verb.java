package org.foreload.examples.command;

import org.foreload.examples.output.Report;

/** One verb: options in, one report out. Failures are {@code InputException} and {@link ComputationException}. */
interface Verb {

    /** Format and debugging. */
    CommonOptions common();

    /**
     * Computes the answer. Prints nothing but warnings and progress.
     *
     * @param console where warnings and progress go
     */
    Report report(Console console);

    /** The answer as it is printed. */
    default String answer(Console console) {
        return common().format().render(report(console));
    }
}
