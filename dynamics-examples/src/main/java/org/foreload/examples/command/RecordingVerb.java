package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.RecordingAnswer;
import org.foreload.examples.gallery.RecordingPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.file.InputException;
import org.foreload.recording.Cleaning;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What one recorded run did. */
@Command(
        name = "recording",
        sortOptions = false,
        description = {
            "What a driver did in a recorded run: corner by corner the brake point, release point and brake off, the release "
                    + "shape, how much speed was shed after turn-in, and the slowest point. Each number comes with the interval "
                    + "that holds the true one nine times in ten.",
            "",
            "Reads tables of text as loggers write them (CSV; separators, decimal commas, units and encodings are found) and "
                    + "GPX. Without a file it measures a run of the demo car in three demo corners, made with sensor noise."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: stations are metres along the lap; tables show places as metres from turn-in. Turn-in is where "
                    + "the course starts to bend. The trail share is the part of all slowing that is done after turn-in. "
                    + "Combined use is the mean acceleration, along and across together, between turn-in and apex, over the "
                    + "most that this driver reaches.",
            "",
            "Example:  foreload recording run.csv --columns speed=Speed:km/h,brake=P:bar --lap 3",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class RecordingVerb extends ReportVerb {

    @Parameters(arity = "0..1", paramLabel = "<file>", description = "The recorded run. Default: a made one.")
    private Path file;

    @Mixin
    private RecordingOptions recording;

    @Spec
    private CommandSpec spec;

    @Override
    Report report(Console console) {
        if (file == null) {
            GivenOptions.refuse(spec, "without a file", "--columns");
        }
        RecordedFile read =
                file == null ? recording.cut(new DemoRuns().file(DemoRuns.Driver.TRAILING)) : recording.read(file);
        List<MeasuredLap> laps = measured(read);
        common().picture().draw(() -> RecordingPictures.of(read.name(), laps));
        return RecordingAnswer.of(read, laps);
    }

    /** Measures every lap; what the core refuses is blamed on the file. */
    static List<MeasuredLap> measured(RecordedFile read) {
        List<MeasuredLap> laps = new ArrayList<>();
        for (RecordedFile.Lap lap : read.laps()) {
            laps.add(measured(read, lap, Cleaning.STANDARD));
        }
        return laps;
    }

    /** Measures one lap. */
    static MeasuredLap measured(RecordedFile read, RecordedFile.Lap lap, Cleaning cleaning) {
        try {
            return MeasuredLap.of(lap, cleaning);
        } catch (InvalidValueException e) {
            throw InputException.of(read.name(), "lap " + lap.number() + ", " + e.field(), e);
        }
    }
}
