package org.foreload.examples.command;

import java.nio.file.Path;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.CircuitAnswer;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.gallery.CircuitPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.file.CarFile;
import org.foreload.file.CircuitFile;
import org.foreload.file.InputException;
import org.foreload.lap.Circuit;
import org.foreload.lap.Lap;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a lap gains, corner by corner. */
@Command(
        name = "circuit",
        sortOptions = false,
        description = {
            "A whole lap: how much quicker the best release is in each corner than straight-line braking, where most is to be "
                    + "gained, and the sum.",
            "",
            "A circuit is a list of corners with their approach speeds. A better exit is carried into the next approach. "
                    + "A dozen corners take some twenty seconds on two cores; --restarts 0 is quicker. Ctrl-C stops and "
                    + "shows the corners done so far."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the trail share is the part of all slowing that is done after turn-in.",
            "",
            "Example:  foreload circuit --demo-car road --restarts 0",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class CircuitVerb extends ReportVerb {

    @Option(
            names = "--circuit",
            paramLabel = "<file>",
            description =
                    "The circuit as a JSON file: a name, and corners, a list of corners as in their own files. Default: an "
                            + "embedded one of twelve corners.")
    private Path file;

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private CarOptions carOptions;

    @Override
    Report report(Console console) {
        searchOptions.check();
        studyOptions.check();
        Car car = carOptions.car(console);
        Circuit circuit = console.warned(file == null ? Demos.circuit() : CircuitFile.read(file));
        try (ShownProgress progress = console.progress("parts of corners")) {
            Lap lap = Lap.of(
                    circuit,
                    (i, corner) -> study(car, i, corner),
                    searchOptions.search(studyOptions.buildUpTime()),
                    searchOptions.threads(),
                    progress);
            common().picture().draw(() -> CircuitPictures.of(car, circuit, lap));
            return CircuitAnswer.of(car, circuit, lap);
        }
    }

    /** The study of one corner; what the core refuses is blamed on the car or on that corner. */
    private CornerStudy study(Car car, int number, Corner corner) {
        try {
            return studyOptions.study(car, corner);
        } catch (InvalidValueException e) {
            String source = CarFile.hasField(e.field())
                    ? carOptions.source()
                    : CircuitFile.place(file == null ? Demos.CIRCUIT_SOURCE : file.toString(), number);
            throw InputException.of(source, e.field(), e);
        }
    }
}
