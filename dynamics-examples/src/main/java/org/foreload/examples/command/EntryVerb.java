package org.foreload.examples.command;

import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.gallery.EntryPictures;
import org.foreload.examples.output.Report;
import org.foreload.strategy.Finding;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** One simulated entry with a given release. */
@Command(
        name = "entry",
        sortOptions = false,
        description = {
            "One entry into a corner, simulated: a car with pitch, roll, tyre and brake lags, and a driver who steers, brakes "
                    + "by the plan, eases a wheel that has stopped (--as-told: not), and leaves the corner with the throttle.",
            "",
            "The brake is told by when (--brake-point), how hard (--peak-deceleration, --build-up-time) and how it comes off "
                    + "(--release-…). An entry that fails is an answer, too: ran wide, spun, locked up or "
                    + "stopped, where and why."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the brake point is where the foot comes down; stations are metres along the line, 0 at turn-in, "
                    + "negative before it. The trail share is the part of all slowing that is done after turn-in. In hand is "
                    + "the largest error that the car forgives: the foot comes down so many metres later, or the whole release "
                    + "comes so many metres later, or the peak is 2.5 %% a metre harder. "
                    + "Utilisation (use) is the share of its grip that an axle uses. Above bound: how much longer than the "
                    + "fastest quasi-steady entry takes.",
            "",
            "Example:  foreload entry --demo-corner hairpin --release-shape smooth --release-end 25",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class EntryVerb implements Verb {

    @Mixin
    private ReleaseOptions releaseOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Option(names = "--all", description = "Show every row of the table; json and csv always have them all.")
    private boolean all;

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
        studyOptions.check();
        ReleaseShape shape = releaseOptions.shape();
        return placeOptions.ask(console, studyOptions::study, study -> {
            Braking braking = releaseOptions.braking(study, shape, studyOptions.buildUpTime());
            if (releaseOptions.brakePointGiven()) {
                EntryResult entry = footOptions.simulator(study).run(releaseOptions.given(braking));
                common.picture().draw(() -> EntryPictures.of(study, entry));
                return EntryAnswer.given(study, entry, all);
            }
            Finding finding = study.latest(braking);
            common.picture().draw(() -> EntryPictures.of(study, finding.entry()));
            return EntryAnswer.latest(study, finding, all);
        });
    }
}
