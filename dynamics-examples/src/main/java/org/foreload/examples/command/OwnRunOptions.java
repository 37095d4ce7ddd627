package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.foreload.examples.output.Report;
import org.foreload.examples.recording.ChosenLap;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.sheet.OwnEntry;
import org.foreload.examples.sheet.OwnView;
import org.foreload.file.InputException;
import org.foreload.study.Sweep;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** A recorded run of the driver for whom a sheet is made. */
final class OwnRunOptions {

    private static final String RECORDED_CORNER = "--recorded-corner";

    @Option(
            names = "--recording",
            paramLabel = "<file>",
            description =
                    "A recorded run of this driver, CSV or GPX: the page shows the driver's own release beside the "
                            + "plan, on the corner's axis. Of several laps the quickest is taken, unless --lap says which.")
    private Path file;

    @Option(
            names = "--demo-recording",
            description = "The same with a made run: an invented driver of the demo car who brakes in a straight line.")
    private boolean demo;

    @Option(
            names = RECORDED_CORNER,
            paramLabel = "<n>",
            description =
                    "Which corner of the lap is the sheet's, counted from 1. Default: the one that is most like it.")
    private Integer corner;

    @Mixin
    private RecordingOptions recording;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    private String name = "";

    /** The driver's laps, measured, if a recording is named. */
    Optional<ChosenLap> chosen(int threads) {
        if (demo && file != null) {
            throw new InputException(null, "--demo-recording", null, "cannot be combined with --recording");
        }
        if (!demo && file == null) {
            GivenOptions.refuse(verb, "without --recording", RECORDED_CORNER, "--columns", "--from", "--to", "--lap");
            return Optional.empty();
        }
        if (demo) {
            GivenOptions.refuse(verb, "with --demo-recording, whose columns are known", "--columns");
        }
        RecordedFile read = demo ? recording.cut(new DemoRuns().file(DemoRuns.Driver.STRAIGHT)) : recording.read(file);
        name = read.name();
        return Optional.of(ChosenLap.of(List.of(read), new Sweep(threads, Sweep.Progress.SILENT))
                .get(0));
    }

    /** The corner of these laps that is the sheet's. */
    OwnEntry entry(ChosenLap lap, org.foreload.path.Path line) {
        return OwnEntry.of(name, lap, line, corner == null ? OptionalInt.empty() : OptionalInt.of(corner));
    }

    /** What programs read of it. */
    static Report report(OwnEntry own, OwnView view) {
        List<Report> rows = view.rows().stream()
                .filter(row -> Double.isFinite(row.ownValue()))
                .map(row -> new Report()
                        .with("measure", row.field())
                        .with("own", row.ownValue())
                        .with("plan", row.planValue()))
                .toList();
        return new Report()
                .with("file", own.file())
                .withCount("lap", own.lap().number())
                .withCount("corner", own.corner().bend().number())
                .with("turn_in_m", own.turnIn())
                .with("unlike_share", own.unlike())
                .with("rows", "", rows);
    }
}
