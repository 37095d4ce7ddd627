package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.ReleaseShape;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.NoBrakePoint;
import org.foreload.examples.answer.RiskAnswer;
import org.foreload.examples.gallery.RiskPictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.optimum.Optimum;
import org.foreload.risk.Choice;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.risk.SensibleRelease;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.InHand;
import org.foreload.study.Sweep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How sure a release is for a driver who scatters. */
@Command(
        name = "risk",
        sortOptions = false,
        description = {
            "How often a release fails, and how, for a driver who is not a machine: brake point, peak, release and grip vary "
                    + "a little in each of many simulated entries.",
            "",
            "The release is the best one, found first, or with --given the one that --brake-point and --release-… describe. "
                    + "With --curve it is also compared with gentler and earlier ones: the quickest for this driver at each risk. "
                    + "The drivers are invented; give your own numbers where you have them."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: low and high are the ends of the 95 %% interval that this number of entries allows. Mean and "
                    + "deviation of time are those of the entries that made the corner. Expected time adds the cost of each "
                    + "failure.",
            "",
            "Example:  foreload risk --driver novice --restarts 0 --curve --samples 64",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class RiskVerb extends ReportVerb implements Driving {

    @Mixin
    private ScatterOptions scatterOptions;

    @Option(
            names = "--failure-cost",
            paramLabel = "<s>",
            defaultValue = "10",
            description = "What a failure costs, s. Default: ${DEFAULT-VALUE}.")
    private double cost;

    @Option(names = "--curve", description = "Compare gentler and earlier releases too; takes some seconds.")
    private boolean curve;

    @Option(names = "--given", description = "Take the release of the options below instead of the best one.")
    private boolean given;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private ReleaseOptions releaseOptions;

    @Mixin
    private SearchOptions searchOptions;

    @Mixin
    private StudyOptions studyOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Spec
    private CommandSpec spec;

    @Override
    public boolean brief() {
        return scatterOptions.isBrief();
    }

    @Override
    Report report(Console console) {
        Scatter scatter = scatterOptions.scatter();
        Options.notNegative("--failure-cost", cost, "s");
        if (given) {
            GivenOptions.refuse(spec, "with --given: nothing is searched for", "--restarts", "--evaluations");
        } else {
            releaseOptions.refuse("without --given");
        }
        searchOptions.check();
        studyOptions.check();
        ReleaseShape shape = releaseOptions.shape();
        return placeOptions.ask(console, studyOptions::study, study -> {
            RiskStudy risks = scatterOptions.risks(study, scatter, footOptions.reaction(), searchOptions.seed());
            List<BrakePlan> plans = given ? List.of(given(study, shape)) : searched(console, study);
            Risk risk = judged(console, risks, plans.get(0));
            Optional<Choice> choice = curve ? Optional.of(weighed(console, risks, plans)) : Optional.empty();
            BrakePlan plan = plans.get(0);
            Handover handover = Handover.of(study.simulator().run(plan), InHand.of(study.simulator(), plan));
            common().picture()
                    .draw(() -> RiskPictures.of(
                                    study,
                                    risk,
                                    choice,
                                    scatterOptions.accepted(),
                                    String.join(" ", handover.sentences(common().units())))
                            .plus(Handover.CAUTION));
            return RiskAnswer.of(
                    study,
                    scatter,
                    risk,
                    choice,
                    cost,
                    scatterOptions.accepted(),
                    handover,
                    // A brake point that was given was not planned with a margin.
                    given && releaseOptions.brakePointGiven() ? Double.NaN : study.marginCost(handover.entry()),
                    common().units());
        });
    }

    private BrakePlan given(CornerStudy study, ReleaseShape shape) {
        Braking braking = releaseOptions.braking(study, shape, studyOptions.buildUpTime());
        if (releaseOptions.brakePointGiven()) {
            return releaseOptions.given(braking);
        }
        Finding finding = study.latest(braking);
        if (!finding.found()) {
            throw ComputationException.missed(NoBrakePoint.why(study, finding));
        }
        return finding.entry().plan();
    }

    /** The best release, and the best of the simple shapes where it is another. */
    private List<BrakePlan> searched(Console console, CornerStudy study) {
        Optimum optimum = Searches.optimum(console, study, searchOptions, studyOptions.buildUpTime());
        List<BrakePlan> plans = new ArrayList<>();
        plans.add(Searches.best(optimum).plan());
        optimum.families().stream()
                .map(family -> family.entry().plan())
                .filter(plan -> !plan.equals(plans.get(0)))
                .limit(1)
                .forEach(plans::add);
        return plans;
    }

    private Risk judged(Console console, RiskStudy risks, BrakePlan plan) {
        try (ShownProgress progress = console.progress("entries")) {
            return risks.soFar(plan, new Sweep(searchOptions.threads(), progress))
                    .orElseThrow(() -> new ComputationException("stopped before the first entry was driven"));
        }
    }

    private Choice weighed(Console console, RiskStudy risks, List<BrakePlan> plans) {
        try (ShownProgress progress = console.progress("plans")) {
            return SensibleRelease.among(risks, plans, new Sweep(searchOptions.threads(), progress));
        }
    }
}
