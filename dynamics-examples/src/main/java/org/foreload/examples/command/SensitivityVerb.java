package org.foreload.examples.command;

import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.SensitivityAnswer;
import org.foreload.examples.gallery.SetupPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** What one unit of each number is worth. */
@Command(
        name = "sensitivity",
        sortOptions = false,
        description = {
            "What a little more of each number does to the best time and to the margins: mass, CG, grip, brake share, approach "
                    + "speed, brake point and many more, the largest effect first.",
            "",
            "The best release is searched for first. Then each number of car, tyres, corner and driver is moved up and "
                    + "down, and the best release is searched for again near the known one, with an eighth of the --evaluations; each "
                    + "number of the plan is changed with all else kept: what it costs to miss it, either way, and how the entry "
                    + "ends."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: time change is for more of each number; front and rear margin are the shares of each axle's grip "
                    + "left unused up to the apex. Not proportional by: how far twice the effect of half the change is from the "
                    + "effect of the whole, ms, because another limit takes over or because a search only comes so close to the best. "
                    + "A friction scale of 0.01 is 1 %% more grip everywhere; grade (uphill) and banking (left edge lower) are "
                    + "added to those of the line.",
            "",
            "Example:  foreload sensitivity --demo-car road --restarts 0",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class SensitivityVerb extends ReportVerb {

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    Report report(Console console) {
        searchOptions.check();
        studyOptions.check();
        return placeOptions.ask(console, studyOptions::study, study -> {
            EntryResult best =
                    Searches.best(Searches.optimum(console, study, searchOptions, studyOptions.buildUpTime()));
            try (ShownProgress progress = console.progress("numbers")) {
                Sensitivity sensitivity = Sensitivity.of(
                        study, best, searchOptions.nearby(), new Sweep(searchOptions.threads(), progress));
                common().picture().draw(() -> SetupPictures.tornado(study, best, sensitivity));
                return SensitivityAnswer.of(study, best, sensitivity, common().units());
            }
        });
    }
}
