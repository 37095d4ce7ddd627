package org.foreload.examples.command;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** One verb: options in, one answer out. Failures are {@code InputException} and {@link ComputationException}. */
abstract class Verb implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private CommonOptions common;

    private Console console;

    /** Options that every verb has: format, picture, units, debugging. */
    final CommonOptions common() {
        return common;
    }

    /** The options for car and corner, where the verb has them. */
    final Optional<PlaceOptions> place() {
        return spec.mixins().values().stream()
                .map(CommandSpec::userObject)
                .filter(PlaceOptions.class::isInstance)
                .map(PlaceOptions.class::cast)
                .findFirst();
    }

    /** Sets where warnings and progress go. */
    final void on(Console where) {
        this.console = where;
    }

    /** Checks, computes, and prints the answer once it is complete. */
    @Override
    public final Integer call() {
        common.picture().check();
        if (this instanceof Driving run && run.brief()) {
            console.brief();
        }
        out().print(answer(common.quiet() ? console.quietly() : console));
        return Foreload.DONE;
    }

    /** Where the answer goes. */
    final PrintWriter out() {
        return spec.commandLine().getOut();
    }

    /**
     * Computes the answer, as it is printed. Prints nothing itself but warnings and progress.
     *
     * @param where warnings and progress go
     */
    abstract String answer(Console where);
}
