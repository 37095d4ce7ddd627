package org.foreload.examples.command;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.FootError.Leg;
import org.foreload.braking.Pedal;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.PedalPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.pedal.PedalStudy;
import org.foreload.strategy.CornerStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A pedal that senses force against one that senses travel. */
@Command(
        name = "pedal",
        sortOptions = false,
        description = {
            "The same unsteady leg, attempt by attempt, on a brake pedal that measures force and on one that measures travel: "
                    + "how much the braking scatters, and how the entries end.",
            "",
            "No leg repeats a force exactly. A pedal that measures force passes that error on as it is; one that measures "
                    + "travel against a stiffening spring shrinks it, but depends on how steadily the foot holds its position."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "The leg's force error (2.6 %% steady, 2.7 %% wander, up to 1.8 Hz) has the size of one published experiment on "
                    + "whole-leg forces; it is plausible, no more. The position error and all pedal numbers are guesses for you "
                    + "to replace: no source gives them.",
            "",
            "Example:  foreload pedal --attempts 100 --place-error 2 --demo-car road",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class PedalVerb extends ReportVerb implements Driving {

    private static final double MOST_ATTEMPTS = 100_000;

    @Option(
            names = "--attempts",
            paramLabel = "<count>",
            defaultValue = "20",
            description = "Attempts on each pedal. Default: ${DEFAULT-VALUE}.")
    private int attempts;

    @Option(
            names = "--seed",
            paramLabel = "<count>",
            defaultValue = "1",
            description = "Seed of the draws: the same seed, the same legs. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--place-error",
            paramLabel = "<mm>",
            defaultValue = "1",
            description = "Position error of the foot, mm (standard deviation). Default: ${DEFAULT-VALUE}.")
    private double placeError;

    @Option(
            names = "--force-per-deceleration",
            paramLabel = "<N per m/s²>",
            defaultValue = "45",
            description = "Foot force of the force pedal, N per m/s² of braking. Default: ${DEFAULT-VALUE}.")
    private double forcePerDeceleration;

    @Option(
            names = "--force-resolution",
            paramLabel = "<N>",
            defaultValue = "2",
            description = "Smallest force that it resolves, N. Default: ${DEFAULT-VALUE}.")
    private double forceResolution;

    @Option(
            names = "--travel-stiffness",
            paramLabel = "<N/mm>",
            defaultValue = "3",
            description = "Stiffness of the travel pedal at the start, N/mm. Default: ${DEFAULT-VALUE}.")
    private double stiffness;

    @Option(
            names = "--travel-hardening",
            paramLabel = "<N/mm³>",
            defaultValue = "0.0024",
            description = "How its spring stiffens, N per mm cubed. Default: ${DEFAULT-VALUE}.")
    private double hardening;

    @Option(
            names = "--travel-per-deceleration",
            paramLabel = "<mm per m/s²>",
            defaultValue = "5",
            description = "Its travel, mm per m/s² of braking. Default: ${DEFAULT-VALUE}.")
    private double travelPerDeceleration;

    @Option(
            names = "--travel-resolution",
            paramLabel = "<mm>",
            defaultValue = "0.2",
            description = "Smallest travel that it resolves, mm. Default: ${DEFAULT-VALUE}.")
    private double travelResolution;

    @Option(
            names = "--lag",
            paramLabel = "<s>",
            defaultValue = "0.04",
            description = "Time constant between pedal and caliper, s, of both. Default: ${DEFAULT-VALUE}.")
    private double lag;

    @Mixin
    private PlanOptions planOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private SweepOptions sweepOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return true;
    }

    @Override
    Report report(Console console) {
        Options.within("--attempts", attempts, 2, MOST_ATTEMPTS, "");
        Options.notNegative("--place-error", placeError, "mm");
        Options.positive("--force-per-deceleration", forcePerDeceleration, "N per m/s²");
        Options.notNegative("--force-resolution", forceResolution, "N");
        Options.positive("--travel-stiffness", stiffness, "N/mm");
        Options.notNegative("--travel-hardening", hardening, "N/mm³");
        Options.positive("--travel-per-deceleration", travelPerDeceleration, "mm per m/s²");
        Options.notNegative("--travel-resolution", travelResolution, "mm");
        Options.positive("--lag", lag, "s");
        planOptions.check();
        sweepOptions.check();
        return placeOptions.ask(console, planOptions::study, study -> report(console, study));
    }

    private Report report(Console console, CornerStudy study) {
        BrakePlan plan = planOptions.plan(study);
        double mm = 1e-3;
        List<Pedal> pedals = List.of(
                new Pedal.ForceSensing(forcePerDeceleration, forceResolution, lag),
                new Pedal.TravelSensing(
                        stiffness / mm,
                        hardening / (mm * mm * mm),
                        1 / (travelPerDeceleration * mm),
                        travelResolution * mm,
                        lag));
        PedalStudy pedalStudy = new PedalStudy(Leg.pushing(placeError * mm), attempts, seed);
        List<PedalStudy.Result> results = sweepOptions.run(
                console, "pedals", sweep -> pedalStudy.run(footOptions.simulator(study), plan, pedals, sweep));
        common().picture().draw(() -> PedalPictures.pedals(study, plan, results));
        Report report = new Report(EntryAnswer.title(study))
                .with("release", planOptions.part(plan))
                .withCount("attempts", attempts)
                .withCount("seed", seed)
                .with("complete", results.stream().allMatch(PedalStudy.Result::complete))
                .with(
                        "rows",
                        "Each pedal with the same leg",
                        results.stream().map(result -> row(result, plan)).toList());
        return report.note(note(results)).note(Handover.CAUTION);
    }

    private Report row(PedalStudy.Result result, BrakePlan plan) {
        return new Report()
                .with("pedal", result.pedal().name())
                .with("peak_foot_force_n", result.pedal().footForce(plan.peakDeceleration()))
                .with("brake_scatter", result.brakeScatter())
                .with("made_it", share(result, Outcome.MADE_IT))
                .with("ran_wide", share(result, Outcome.RAN_WIDE))
                .with("spun", share(result, Outcome.SPUN))
                .with("locked_up", share(result, Outcome.LOCKED_UP))
                .with("stopped", share(result, Outcome.STOPPED))
                .with("rolled_over", share(result, Outcome.ROLLED_OVER))
                .with("mean_time_s", result.meanTime())
                .with("time_deviation_s", result.timeDeviation());
    }

    /** Of the attempts that were driven; NaN, which is shown as nothing, where a stop left none. */
    private static double share(PedalStudy.Result result, Outcome outcome) {
        return (double) result.count(outcome) / result.driven();
    }

    private String note(List<PedalStudy.Result> results) {
        PedalStudy.Result force = results.get(0);
        PedalStudy.Result travel = results.get(1);
        PedalStudy.Result calmer = force.brakeScatter() <= travel.brakeScatter() ? force : travel;
        PedalStudy.Result other = calmer == force ? travel : force;
        // A scatter of n attempts is known to one part in √(2n), and the difference of two to one in √n; twice that.
        boolean alike = other.brakeScatter() - calmer.brakeScatter() <= other.brakeScatter() * 2 / Math.sqrt(attempts);
        return (alike
                        ? attempts + " attempts of this leg do not set the two pedals apart: "
                        : "With this leg, the " + calmer.pedal().name() + " pedal scatters less: ")
                + Numbers.rounded(100 * force.brakeScatter(), 1) + " % of the peak for force sensing, "
                + Numbers.rounded(100 * travel.brakeScatter(), 1)
                + " % for travel sensing. An order of magnitude, no claim about any real leg.";
    }
}
