package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.foreload.comparison.Comparison;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.CompareAnswer;
import org.foreload.examples.gallery.ComparePictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.recording.ChosenLap;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.LapAdvice;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.file.CarFile;
import org.foreload.file.InputException;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Two recorded runs, side by side. */
@Command(
        name = "compare",
        sortOptions = false,
        description = {
            "Where a driver loses time to another, or to an earlier self: the gap over distance, by corner and by phase, and "
                    + "what each of them did with the brake. Then what the first driver could change: each corner is driven again in "
                    + "the simulator, with a car that has the limits that the laps show, and single changes to the driver's own "
                    + "release are tried.",
            "",
            "Of each file the quickest lap is taken, unless --lap and --reference-lap say which. Without files it compares "
                    + "two invented drivers of the demo car, one who is off the brake by turn-in and one who trails it in."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the second file is the reference. Gaps are in seconds, positive where the first is slower. The "
                    + "distance axes are aligned bend by bend, by curvature or, where only positions are known, by those; "
                    + "where neither is, by the shape of speed, and then there are no corners. A corner begins where the one before ends, and ends "
                    + "halfway between its bend and where the next is braked for. Each line of advice is one change by itself, or two that "
                    + "gain clearly more together, to be made one at a time; gains "
                    + "do not add up. Low and high hold the true gain nine times in ten; fails is the share of entries that would "
                    + "not make the corner for a driver who scatters as the first does from lap to lap (a practised one's scatter "
                    + "with fewer than three laps).",
            "",
            "Example:  foreload compare mine.csv reference.csv --columns speed=Speed:km/h --lap 3",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class CompareVerb extends ReportVerb implements Driving {

    @Parameters(index = "0", arity = "0..1", paramLabel = "<file>", description = "The run to compare.")
    private Path file;

    @Parameters(index = "1", arity = "0..1", paramLabel = "<file>", description = "The reference.")
    private Path reference;

    @Mixin
    private RecordingOptions recording;

    @Option(
            names = RecordingOptions.REFERENCE_LAP,
            paramLabel = "<number>",
            description = "The reference's lap. Default: its quickest.")
    private Long referenceLap;

    @Option(
            names = "--car",
            paramLabel = "<file>",
            description = "The car that was driven, as a JSON file. Default: one is fitted to the first file's laps.")
    private Path carFile;

    @Mixin
    private RoadFriction road;

    @Option(names = "--no-advice", description = "Compare, and simulate nothing.")
    private boolean noAdvice;

    @Mixin
    private SweepOptions sweepOptions;

    @Spec
    private CommandSpec spec;

    @Override
    public boolean brief() {
        return true;
    }

    @Override
    Report report(Console console) {
        sweepOptions.check();
        if (file != null && reference == null) {
            throw new InputException(null, "<file>", file.toString(), "must be two files: the run and the reference");
        }
        if (file == null) {
            GivenOptions.refuse(spec, "without files", "--columns");
        }
        if (noAdvice) {
            GivenOptions.refuse(spec, "with --no-advice", "--car", RoadFriction.NAME);
        }
        if (carFile == null) {
            GivenOptions.refuse(
                    spec, "without --car: the fitted car has the friction that the laps show", RoadFriction.NAME);
        }
        road.check();
        Sweep sweep = new Sweep(sweepOptions.threads(), Sweep.Progress.SILENT);
        List<RecordedFile> both = sweep.run(sources(), Supplier::get).stream()
                .flatMap(Optional::stream)
                .toList();
        RecordedFile second = both.get(1);
        RecordedFile first = both.get(0).inPlaneOf(second.origin());
        List<RecordedFile> files = List.of(first, second);
        List<ChosenLap> chosen = noAdvice ? ChosenLap.quickest(files, sweep) : ChosenLap.of(files, sweep);
        MeasuredLap mine = chosen.get(0).lap();
        MeasuredLap theirs = chosen.get(1).lap();
        Comparison comparison = compared(first.name(), mine, theirs);
        common().picture().draw(() -> ComparePictures.of(first.name(), mine, second.name(), theirs, comparison));
        Optional<Car> known =
                carFile == null ? Optional.empty() : Optional.of(road.under(console.warned(CarFile.read(carFile))));
        LapAdvice advice = noAdvice || comparison.corners().isEmpty()
                ? LapAdvice.none(chosen.get(0), LapAdvice.NOT_ASKED)
                : sweepOptions.run(console, "steps", shown -> LapAdvice.of(chosen.get(0), known, shown));
        return CompareAnswer.of(first, mine, second, theirs, comparison, advice);
    }

    /** The run and the reference, each read or made when it is asked for. */
    private List<Supplier<RecordedFile>> sources() {
        if (file != null) {
            return List.of(
                    () -> recording.readToCompare(file, !noAdvice),
                    () -> recording.readReference(reference, referenceLap));
        }
        DemoRuns demo = new DemoRuns();
        return List.of(
                () -> recording.cut(demo.file(DemoRuns.Driver.STRAIGHT)),
                () -> recording.cut(demo.file(DemoRuns.Driver.TRAILING), referenceLap));
    }

    private static Comparison compared(String name, MeasuredLap mine, MeasuredLap theirs) {
        try {
            return Comparison.of(mine.run(), mine.corners(), theirs.run(), theirs.corners());
        } catch (InvalidValueException e) {
            throw InputException.of(name, e.field(), e);
        }
    }
}
