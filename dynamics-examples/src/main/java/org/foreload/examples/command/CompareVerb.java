package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.List;
import org.foreload.comparison.Comparison;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.CompareAnswer;
import org.foreload.examples.gallery.ComparePictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.file.InputException;
import org.foreload.recording.Cleaning;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Two recorded runs, side by side. */
@Command(
        name = "compare",
        sortOptions = false,
        description = {
            "Where a driver loses time to another, or to an earlier self: the gap over distance, by corner and by phase, and "
                    + "what each of them did with the brake.",
            "",
            "Of each file the quickest lap is taken, unless --lap and --reference-lap say which. Without files it compares "
                    + "two invented drivers of the demo car, one who is off the brake by turn-in and one who trails it in."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the second file is the reference. Gaps are in seconds, positive where the first is slower. The "
                    + "distance axes are aligned bend by bend. A corner begins where the one before ends, and ends "
                    + "halfway between its bend and where the next is braked for.",
            "",
            "Example:  foreload compare mine.csv reference.csv --columns speed=Speed:km/h --lap 3",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class CompareVerb extends Verb {

    @Parameters(index = "0", arity = "0..1", paramLabel = "<file>", description = "The run to compare.")
    private Path file;

    @Parameters(index = "1", arity = "0..1", paramLabel = "<file>", description = "The reference.")
    private Path reference;

    @Mixin
    private RecordingOptions recording;

    @Option(
            names = "--reference-lap",
            paramLabel = "<number>",
            description = "The reference's lap. Default: its quickest.")
    private Long referenceLap;

    @Override
    Report report(Console console) {
        if (file != null && reference == null) {
            throw new InputException(null, "<file>", file.toString(), "must be two files: the run and the reference");
        }
        RecordedFile second;
        RecordedFile first;
        if (file == null) {
            DemoRuns demo = new DemoRuns();
            second = recording.cut(demo.file(DemoRuns.Driver.TRAILING), referenceLap);
            first = recording.cut(demo.file(DemoRuns.Driver.STRAIGHT));
        } else {
            second = recording.read(reference, referenceLap, null);
            first = recording.read(file, second.origin());
        }
        MeasuredLap mine = quickest(first);
        MeasuredLap theirs = quickest(second);
        Comparison comparison = compared(first.name(), mine, theirs);
        common().picture().draw(() -> ComparePictures.of(first.name(), mine, second.name(), theirs, comparison));
        return CompareAnswer.of(first, mine, second, theirs, comparison);
    }

    private static Comparison compared(String name, MeasuredLap mine, MeasuredLap theirs) {
        try {
            return Comparison.of(mine.run(), mine.corners(), theirs.run(), theirs.corners());
        } catch (InvalidValueException e) {
            throw InputException.of(name, e.field(), e);
        }
    }

    /** The lap of the least time among those that are as long as the longest, but for a hundredth. */
    private static MeasuredLap quickest(RecordedFile read) {
        List<RecordedFile.Lap> laps = read.laps();
        if (laps.size() == 1) {
            return RecordingVerb.measured(read, laps.get(0), Cleaning.STANDARD);
        }
        List<MeasuredLap> all = laps.stream()
                .map(lap -> RecordingVerb.measured(read, lap, Cleaning.STANDARD.withoutResamples()))
                .toList();
        double longest = all.stream().mapToDouble(CompareVerb::length).max().orElse(0);
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < all.size(); i++) {
            double time = time(all.get(i));
            if (length(all.get(i)) > WHOLE * longest && time < least) {
                least = time;
                best = i;
            }
        }
        return RecordingVerb.measured(read, laps.get(best), Cleaning.STANDARD);
    }

    /** A lap shorter than this share of the longest is no whole lap: out of the pits, or cut off. */
    private static final double WHOLE = 0.98;

    private static double length(MeasuredLap lap) {
        return lap.run().last() - lap.run().first();
    }

    private static double time(MeasuredLap lap) {
        return lap.run().timeAt(lap.run().last()) - lap.run().timeAt(lap.run().first());
    }
}
