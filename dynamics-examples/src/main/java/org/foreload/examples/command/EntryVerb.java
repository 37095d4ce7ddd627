package org.foreload.examples.command;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.NoBrakePoint;
import org.foreload.examples.gallery.EntryPictures;
import org.foreload.examples.output.Report;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.InHand;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** One simulated entry with a given release. */
@Command(
        name = "entry",
        sortOptions = false,
        description = {
            "One entry into a corner, simulated: a car with pitch, roll, tyre and brake lags, and a driver who steers, brakes "
                    + "to the plan, eases the brake when a wheel locks (not with --as-told), and picks up the throttle.",
            "",
            "A plan says where to brake (--brake-point), how hard (--peak-deceleration, --build-up-time) and how the brake "
                    + "comes off (--release-…). An entry that fails is an answer, too: ran wide, spun, locked up, "
                    + "stopped or rolled over, where and why."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the brake point is where the foot comes down; stations are metres along the line, 0 at turn-in, "
                    + "negative before it. The trail share is the part of all slowing that is done after turn-in. In hand is "
                    + "the largest error that the car forgives, in metres: braking that much later, easing that much later from "
                    + "release point to brake off, or pressing 2.5 %% harder for each metre. "
                    + "Grip used is the share of its grip that an axle uses. Above bound: how much longer than the "
                    + "fastest quasi-steady entry takes.",
            "",
            "Example:  foreload entry --demo-corner hairpin --release-shape smooth --release-end 25",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class EntryVerb extends ReportVerb implements Driving {

    @Mixin
    private ReleaseOptions releaseOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private MistakeOption mistakeOption;

    @Mixin
    private StudyOptions studyOptions;

    @Option(names = "--all", description = "Show every row of the table; json and csv always have them all.")
    private boolean all;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return true;
    }

    @Override
    Report report(Console console) {
        studyOptions.check();
        ReleaseShape shape = releaseOptions.shape();
        Optional<MistakeOption.Sized> mistake = mistakeOption.mistake();
        return placeOptions.ask(console, studyOptions::study, study -> {
            Braking braking = releaseOptions.braking(study, shape, studyOptions.buildUpTime());
            if (mistake.isPresent()) {
                return mistaken(study, planned(study, braking), mistake.get());
            }
            if (releaseOptions.brakePointGiven()) {
                BrakePlan plan = releaseOptions.given(braking);
                EntryResult entry = footOptions.simulator(study).run(plan);
                Handover handover = handover(study, entry, InHand.of(study.simulator(), plan));
                common().picture().draw(() -> EntryPictures.of(study, entry).plus(handover.caption(common().units())));
                return EntryAnswer.given(study, handover, all, common().units());
            }
            Finding finding = study.latest(braking);
            Handover handover = handover(study, finding.entry(), finding.inHand());
            common().picture()
                    .draw(() -> EntryPictures.of(study, finding.entry()).plus(handover.caption(common().units())));
            return EntryAnswer.latest(study, finding, handover, all, common().units());
        });
    }

    /** The plan that the driver means to keep to. */
    private BrakePlan planned(CornerStudy study, Braking braking) {
        if (releaseOptions.brakePointGiven()) {
            return releaseOptions.given(braking);
        }
        Finding finding = study.latest(braking);
        if (!finding.found()) {
            throw ComputationException.missed(NoBrakePoint.why(study, finding));
        }
        return finding.entry().plan();
    }

    /** With the driver whose failures are counted, but for the scatter: that is how a sheet overdoes its plan. */
    private Report mistaken(CornerStudy study, BrakePlan plan, MistakeOption.Sized mistake) {
        RiskStudy driver = new RiskStudy(study, Scatter.NONE, 1, 1);
        BrakePlan made = mistake.made(plan, study.simulator().corner().path().end());
        EntryResult entry = footOptions.asTold() ? driver.unmoved(made) : driver.asPlanned(made, driver.expected(plan));
        EntryResult planned = study.simulator().run(plan);
        common().picture()
                .draw(() -> EntryPictures.of(study, entry)
                        .plus(Handover.of(entry, Double.NaN).caption(common().units())));
        return EntryAnswer.mistaken(study, entry, mistake.words(), planned, all, common().units());
    }

    /** Failures are counted only where people look. */
    private Handover handover(CornerStudy study, EntryResult entry, double inHand) {
        return common().forPeople()
                ? Handover.practised(study, entry, inHand, Sweep.quiet())
                : Handover.of(entry, inHand);
    }
}
