package org.foreload.examples.command;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.ShortApproach;
import org.foreload.examples.answer.TurnIn;
import org.foreload.examples.answer.WhyMissed;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.line.LineRun;
import org.foreload.line.LineStudy;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which car, in which corner, on which line. */
final class PlaceOptions {

    /** Lines through a corner. */
    enum Line {
        /** That of the corner. */
        GIVEN,
        /** The one that perfect hands and feet take within 0.15 m of it. */
        NEAR,
        /** The one that they find for this car anywhere on the road. */
        QUICKEST
    }

    @Mixin
    private CarOptions carOptions;

    @Mixin
    private CornerOptions cornerOptions;

    @Option(
            names = "--line",
            completionCandidates = Candidates.Lines.class,
            paramLabel = "<name>",
            defaultValue = "given",
            description =
                    "The line to drive: given, that of the corner; near, the one that perfect hands and feet take within 0.15 m "
                            + "of it; or quickest, the one that they find for this car anywhere on the road. The latter two take "
                            + "some seconds more; 'limit --line-out' keeps them in a file. Default: ${DEFAULT-VALUE}.")
    private Line line;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    /** Where turn-in lies on a measured line, once the question is asked. */
    private Optional<TurnIn> turnIn = Optional.empty();

    /** An answer that says where turn-in lies, if its corner was measured. */
    Report placed(Report answer) {
        return turnIn.map(place -> place.on(answer)).orElse(answer);
    }

    /** Takes this line where the user names none. */
    void unlessNamed(Line other) {
        if (!GivenOptions.has(verb, "--line")) {
            line = other;
        }
    }

    /** The line that is driven, as {@code --line} names it. */
    String lineWord() {
        return Choices.word(line);
    }

    /**
     * Reads car and corner, prints their warnings, and asks; what the core refuses is blamed on what the user wrote.
     *
     * @param question about a car and a corner
     */
    <T> T ask(Console console, BiFunction<Car, Corner, T> question) {
        Car car = carOptions.car(console);
        Corner corner = cornerOptions.corner(console);
        turnIn = TurnIn.of(corner);
        return new Blame(carOptions, cornerOptions).compute(() -> {
            try {
                return question.apply(car, line == Line.GIVEN ? corner : found(console, car, corner));
            } catch (InvalidValueException e) {
                throw ShortApproach.explained(e, car, corner);
            }
        });
    }

    /**
     * The same for a question about a study.
     *
     * @param made the study of a car and a corner
     * @param question about that study
     */
    <T> T ask(Console console, BiFunction<Car, Corner, CornerStudy> made, Function<CornerStudy, T> question) {
        return ask(console, (car, corner) -> {
            CornerStudy study = made.apply(car, corner);
            try {
                return question.apply(study);
            } catch (ComputationException e) {
                throw e.missed()
                        ? WhyMissed.of(study)
                                .map(why -> new ComputationException(e.getMessage() + ". " + why))
                                .orElse(e)
                        : e;
            }
        });
    }

    /** The line of perfect hands and feet as a corner of its own, with its own stations. */
    private Corner found(Console console, Car car, Corner corner) {
        LimitOptions options = LimitOptions.STANDARD;
        try (ShownProgress progress = console.progress("steps")) {
            LineStudy study = new LineStudy(
                    car,
                    corner,
                    Hands.practised(Limit.peakDeceleration(car, corner)),
                    options,
                    LimitBeside.watcher(progress, options));
            LineRun run = line == Line.NEAR ? study.given() : study.quickest();
            String name = Choices.word(line) + " line";
            if (!run.converged()) {
                throw new ComputationException(
                        "no " + name + " was found for this car on this road: the search for it did not converge");
            }
            turnIn = TurnIn.of(corner, run);
            return new Corner(
                    corner.name() + ", " + name,
                    corner.approachSpeed(),
                    run.corner().path());
        }
    }
}
