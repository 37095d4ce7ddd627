package org.foreload.examples.command;

import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.AgainstLimit;
import org.foreload.examples.answer.BestAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.SweepPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Optimum;
import org.foreload.optimum.Remainder;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The best release, what it is worth, and what the rest is made of. */
@Command(
        name = "best",
        sortOptions = false,
        description = {
            "The best release of the brake for this car in this corner: brake point, peak, release point, brake off and "
                    + "shape.",
            "",
            "Simple shapes are searched first, as explore does, then free ones, each search from another of the best of "
                    + "these. The spread is between the slowest and the quickest of the searches: where it is large, they "
                    + "end in different valleys, and another may hide a quicker release. The answer is never slower than that "
                    + "of explore with the same margin and line, unless you give explore a finer sweep or shapes of your own. It says how much quicker the release is than straight-line braking, "
                    + "where along the line, and where the entry loses to perfect hands and feet, which are bound by the "
                    + "same lags; with --why, what makes up the time above the ideal bound. --restarts 0 is quicker. Ctrl-C "
                    + "stops the search and shows the best so far."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: stations are metres along the line, 0 at turn-in, negative before it. Above bound: how much longer "
                    + "than the fastest quasi-steady entry takes. The causes of that time (--why) are found by switching them off one after another "
                    + "and searching again; a cause below zero makes the car quicker, or its search came short. The limit: perfect hands and feet within "
                    + "0.15 m of the line, as 'limit' solves for them; where no optimum is found there is no number.",
            "",
            "--no-margin asks for the quickest of all, and the middle of the road is not it: if you name no --line, the "
                    + "plan is for the line near it. Its stations are metres along that line; entry, risk and steps "
                    + "drive it with --line near.",
            "",
            "Example:  foreload best --demo-car road --demo-corner hairpin",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class BestVerb extends ReportVerb implements Driving {

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Option(
            names = "--why",
            negatable = true,
            description =
                    "Also say what makes up the time above the ideal bound: brake build-up, lags of tyres, pitch and roll, "
                            + "exit and driver are switched off one after another, each time with a new search. Takes "
                            + "several times as long. Default: no.")
    private boolean why;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return !why;
    }

    @Override
    Report report(Console console) {
        searchOptions.check();
        studyOptions.check();
        if (studyOptions.noMargin()) {
            placeOptions.unlessNamed(PlaceOptions.Line.NEAR);
        }
        return placeOptions.ask(console, studyOptions::study, study -> answer(console, study));
    }

    private Report answer(Console console, CornerStudy study) {
        try (LimitBeside perfect = perfect(console, study)) {
            Optimum optimum = Searches.optimum(console, study, searchOptions, studyOptions.buildUpTime());
            EntryResult best = Searches.best(optimum);
            Optional<Remainder> remainder =
                    why && optimum.complete() ? Optional.of(remainder(console, study, best)) : Optional.empty();
            double inHand = optimum.best().orElseThrow().inHand();
            Handover handover = common().forPeople()
                    ? Handover.practised(study, best, inHand, new Sweep(searchOptions.threads(), Sweep.Progress.SILENT))
                    : Handover.of(best, inHand);
            AgainstLimit limit =
                    optimum.complete() ? perfect.against(best) : AgainstLimit.none("the search was stopped before");
            common().picture()
                    .draw(() -> SweepPictures.best(study, optimum, remainder.filter(Remainder::complete), limit)
                            .plus(handover.caption(common().units())));
            return new BestAnswer(study, placeOptions.lineWord(), optimum, remainder, limit, common().units())
                    .report(handover);
        }
    }

    /**
     * Beside the search, if the run is short and has more than one thread: alone, the limit leaves all but one idle.
     */
    private LimitBeside perfect(Console console, CornerStudy study) {
        return !why && searchOptions.threads() > 1
                ? LimitBeside.begun(console, study.simulator(), studyOptions.buildUpTime())
                : LimitBeside.whenAsked(console, study.simulator(), studyOptions.buildUpTime());
    }

    private Remainder remainder(Console console, CornerStudy study, EntryResult best) {
        try (ShownProgress progress = console.progress("releases")) {
            return Remainder.ofBest(study, best, searchOptions.each(), searchOptions.threads(), progress);
        }
    }
}
