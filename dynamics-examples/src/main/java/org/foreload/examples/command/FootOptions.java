package org.foreload.examples.command;

import org.foreload.driver.Reaction;
import org.foreload.entry.EntrySimulator;
import org.foreload.strategy.CornerStudy;
import picocli.CommandLine.Option;

/** Whether the foot on the brake reacts to what happens on the way. */
final class FootOptions {

    @Option(
            names = "--as-told",
            description =
                    "Brake exactly to the plan, whatever happens. Without it the foot eases the brake when a wheel locks, "
                            + "after a delay, and keeps more brake on where the car is faster than planned.")
    private boolean asTold;

    /** Whether it carries out the plan unchanged. */
    boolean asTold() {
        return asTold;
    }

    /** How the foot reacts. */
    Reaction reaction() {
        return asTold ? Reaction.NONE : Reaction.practised();
    }

    /** The simulator of a study, with this foot. */
    EntrySimulator simulator(CornerStudy study) {
        EntrySimulator simulator = study.simulator();
        return simulator.with(simulator.driver().with(reaction()));
    }
}
