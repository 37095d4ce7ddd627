package org.foreload.examples.command;

import org.foreload.examples.output.Report;

/** A verb that answers with one report, in the format asked for. */
abstract class ReportVerb extends Verb {

    @Override
    String answer(Console where) {
        return common().format().render(placed(report(where)));
    }

    /** The answer, with where turn-in lies if it is about a corner that was measured. */
    final Report placed(Report answer) {
        return place().map(options -> options.placed(answer)).orElse(answer);
    }

    /**
     * Computes the answer. Prints nothing but warnings and progress.
     *
     * @param console where warnings and progress go
     */
    abstract Report report(Console console);
}
