package org.foreload.examples.command;

import org.foreload.examples.output.Report;

/** A verb that answers with one report, in the format asked for. */
abstract class ReportVerb extends Verb {

    @Override
    String answer(Console where) {
        return common().format().render(report(where));
    }

    /**
     * Computes the answer. Prints nothing but warnings and progress.
     *
     * @param console where warnings and progress go
     */
    abstract Report report(Console console);
}
