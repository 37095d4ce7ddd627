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
            "The best release is searched for first. Then each number of car, tyres, corner and driver is changed to both "
                    + "sides, and the best release is searched for anew near the known one, with a third as many entries as --evaluations says; each number of the plan is changed "
                    + "with all else kept, and each side told apart: what missing it costs, and what comes of it."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: time change for this change upwards; front and rear margin are shares of each axle's grip that stay "
                    + "unused until the apex. Apart: by how many ms twice the half change differs from the whole one, since "
                    + "another limit takes over, or since searches come only so near the best. --evaluations 360 gives a quick look, with effects a fifth off here and there. A friction scale of 0.01 is 1 %% more grip everywhere; grade (uphill) and banking (left edge lower) are "
                    + "added to those of the line.",
            "",
            "Example:  foreload sensitivity --demo-car road --restarts 0",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class SensitivityVerb implements Verb {

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Mixin
    private CommonOptions common;

    @Override
    public CommonOptions common() {
        return common;
    }

    @Override
    public Report report(Console console) {
        searchOptions.check();
        studyOptions.check();
        return placeOptions.ask(console, studyOptions::study, study -> {
            EntryResult best =
                    Searches.best(Searches.optimum(console, study, searchOptions, studyOptions.buildUpTime()));
            try (ShownProgress progress = console.progress(searchOptions.quiet(), "numbers")) {
                Sensitivity sensitivity = Sensitivity.of(
                        study, best, searchOptions.nearby(), new Sweep(searchOptions.threads(), progress));
                common.picture().draw(() -> SetupPictures.tornado(study, best, sensitivity));
                return SensitivityAnswer.of(study, best, sensitivity);
            }
        });
    }
}
