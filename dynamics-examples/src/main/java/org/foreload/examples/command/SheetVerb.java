package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Words;
import org.foreload.examples.gallery.EntryPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.output.WholeFile;
import org.foreload.examples.recording.ChosenLap;
import org.foreload.examples.sheet.OwnEntry;
import org.foreload.examples.sheet.OwnView;
import org.foreload.examples.sheet.Sheet;
import org.foreload.examples.sheet.SheetPage;
import org.foreload.examples.sheet.SheetRequest;
import org.foreload.strategy.SweepPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The corner sheet: one page for the driver. */
@Command(
        name = "sheet",
        sortOptions = false,
        description = {
            "The corner sheet: one HTML file for a driver, about one car in one corner. The plan in words and metres, "
                    + "pictures, numbers, what goes wrong if it is overdone and how that feels, practice steps, cautions.",
            "",
            "The plan is the quickest release, of a sweep and of those beside it on the page, that this driver can repeat "
                    + "within the accepted risk; the quickest of all stands beside it. Two sliders trail the brake deeper or less deep and press it harder or less hard. "
                    + "The file needs nothing else, not even a network, and prints on two pages, with a recording on three. "
                    + "Takes some seconds; Ctrl-C leaves no file."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: where the file is, and the plan in it.",
            "",
            "Example:  foreload sheet --out sheet.html --demo-car road --demo-corner hairpin --driver novice",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class SheetVerb extends ReportVerb implements Driving {

    /** With more of them the sheet would need a third page. */
    private static final int MOST_STEPS = 6;

    private static final String OUT = "--out";

    @Option(
            names = OUT,
            paramLabel = "<file>",
            defaultValue = "sheet.html",
            description = "Where to write the sheet; ends with .html. Default: ${DEFAULT-VALUE}.")
    private Path out;

    @Option(
            names = "--steps",
            paramLabel = "<n>",
            defaultValue = "3",
            description = "Number of practice steps at most, 1 to 6. Default: ${DEFAULT-VALUE}.")
    private int steps;

    @Option(
            names = "--seed",
            paramLabel = "<n>",
            defaultValue = "1",
            description = "Seed of the random draws: the same seed gives the same sheet. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Mixin
    private OwnRunOptions ownRun;

    @Mixin
    private GridOptions gridOptions;

    @Mixin
    private ScatterOptions scatterOptions;

    @Mixin
    private SweepOptions sweepOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return scatterOptions.isBrief();
    }

    @Override
    Report report(Console console) {
        Options.within("--steps", steps, 1, MOST_STEPS, "");
        WholeFile file = WholeFile.at(OUT, out, ".html");
        sweepOptions.check();
        studyOptions.check();
        Optional<ChosenLap> recorded = ownRun.chosen(sweepOptions.threads());
        SweepPlan releases = gridOptions.plan(studyOptions.buildUpTime());
        SheetRequest request = new SheetRequest(
                releases,
                scatterOptions.scatter(),
                scatterOptions.samples(),
                seed,
                steps,
                scatterOptions.accepted(),
                common().units());
        return placeOptions.ask(console, studyOptions::study, study -> {
            Optional<OwnEntry> own = recorded.map(
                    lap -> ownRun.entry(lap, study.simulator().corner().path()));
            Sheet sheet = sweepOptions.whole(
                    console,
                    "entries and releases",
                    (sweep, stages) -> Sheet.of(study, request, sweep, stages),
                    NO_PLAN);
            Optional<OwnView> view = own.map(entry -> OwnView.of(sheet, entry));
            file.write(SheetPage.of(sheet, view, Cautions.FIRST + " " + Cautions.SECOND, Foreload.version())
                    .html());
            EntryResult plan = sheet.plan().entry();
            common().picture()
                    .draw(() ->
                            EntryPictures.of(study, plan).plus(sheet.handover().caption(common().units())));
            Report people = new Report(EntryAnswer.title(study))
                    .headline("The sheet is in " + out + ": " + Words.brake(plan, common().units()) + ".");
            Report report = new Report(EntryAnswer.title(study))
                    .with("file", out.toString())
                    .with("brake_point_m", plan.plan().brakePoint())
                    .with("release", PlanOptions.report(plan.plan()))
                    .with("time_s", plan.time())
                    .with(
                            "gain_s",
                            sheet.straight()
                                    .map(entry -> entry.time() - plan.time())
                                    .orElse(Double.NaN))
                    .withCount("releases_tried", sheet.tried());
            if (own.isPresent()) {
                report = report.with("own", OwnRunOptions.report(own.get(), view.orElseThrow()));
            }
            return report.shownAs(sheet.handover().on(people, common().units()));
        });
    }

    private static final String NO_PLAN =
            "no release that was tried makes this corner with the margin asked for, or the corner needs no brake";
}
