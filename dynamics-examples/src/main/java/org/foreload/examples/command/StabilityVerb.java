package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.PedalPictures;
import org.foreload.examples.output.Report;
import org.foreload.stability.EntryStability;
import org.foreload.stability.StabilityEvent;
import org.foreload.strategy.CornerStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Where along one entry the car is least stable. */
@Command(
        name = "stability",
        sortOptions = false,
        description = {
            "Where along an entry the car is closest to spinning, which axle is closest to its limit, and why.",
            "",
            "At each metre of a simulated entry: would a small disturbance decay or grow? Where it grows, only the driver's "
                    + "hands hold the car; if that lasts, it spins."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the growth rate is negative where a disturbance decays; at 1 it grows by a factor of 2.7 in a second. "
                    + "Doublings say how often it doubles from one end of a stretch to the other; the more, the worse. "
                    + "Margins are the shares of their grip that the axles have left.",
            "",
            "Example:  foreload stability --demo-car road --demo-corner hairpin --earlier 2",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class StabilityVerb extends ReportVerb {

    @Mixin
    private PlanOptions planOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    Report report(Console console) {
        planOptions.check();
        return placeOptions.ask(console, planOptions::study, this::report);
    }

    private Report report(CornerStudy study) {
        BrakePlan plan = planOptions.plan(study);
        EntryResult entry = study.simulator().run(plan);
        EntryStability stability = EntryStability.of(study.simulator().car(), entry);
        common().picture().draw(() -> PedalPictures.stability(study, entry, stability));
        Report report = new Report(EntryAnswer.title(study))
                .with("release", planOptions.part(plan))
                .with("outcome", entry.outcome().words())
                .with("cause", entry.cause())
                .with("profile", "Stability along the line", rows(stability))
                .with("unstable", "Unstable stretches, the least stable first", unstable(stability))
                .with("events", "Least stable, and lost", events(stability));
        return report.note(stability.verdict()).note(Handover.CAUTION);
    }

    private static List<Report> unstable(EntryStability stability) {
        return stability.unstable().stream()
                .map(one -> new Report()
                        .with("from_m", one.from())
                        .with("to_m", one.to())
                        .with("duration_s", one.duration())
                        .with("doublings", one.doublings())
                        .with("worst_at_m", one.worst().station())
                        .with("growth_rate_per_s", one.worst().growthRate())
                        .with("front_margin", one.worst().frontMargin())
                        .with("rear_margin", one.worst().rearMargin())
                        .with("cause", one.cause()))
                .toList();
    }

    private static List<Report> events(EntryStability stability) {
        List<Report> events = new ArrayList<>(List.of(event(stability.least())));
        stability.loss().map(StabilityVerb::event).ifPresent(events::add);
        return events;
    }

    private static Report event(StabilityEvent event) {
        return new Report()
                .with("event", event.kind().words())
                .with("s_m", event.row().station())
                .with("time_s", event.row().time())
                .with("growth_rate_per_s", event.row().growthRate())
                .with("front_margin", event.row().frontMargin())
                .with("rear_margin", event.row().rearMargin())
                .with("nearest_axle", Choices.word(event.row().nearest()))
                .with("cause", event.cause());
    }

    private static List<Report> rows(EntryStability stability) {
        return stability.rows().stream()
                .map(row -> new Report()
                        .with("s_m", row.station())
                        .with("time_s", row.time())
                        .with("growth_rate_per_s", row.growthRate())
                        .with("front_margin", row.frontMargin())
                        .with("rear_margin", row.rearMargin())
                        .with("nearest_axle", Choices.word(row.nearest())))
                .toList();
    }
}
