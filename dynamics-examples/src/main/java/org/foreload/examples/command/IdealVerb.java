package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.Words;
import org.foreload.examples.gallery.IdealPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.ideal.IdealEntry;
import org.foreload.ideal.IdealOptions;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The fastest quasi-steady entry on a line. */
@Command(
        name = "ideal",
        sortOptions = false,
        description = {
            "The fastest that a car could drive a corner's line with perfect control: where it brakes, how it trades braking "
                    + "for cornering, how slow it gets.",
            "",
            "It uses all the grip there is at every metre, and load moves at once. No driver does better; the verbs that "
                    + "simulate a driver are compared with it."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: stations are metres along the line, 0 at turn-in (where the line starts to bend), negative before "
                    + "it. The trail share is the part of all slowing that is done after turn-in. Grip used is the share of its "
                    + "grip that an axle uses.",
            "",
            "Example:  foreload ideal --demo-corner hairpin --demo-car road",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class IdealVerb extends ReportVerb {

    @Option(
            names = "--step",
            paramLabel = "<m>",
            defaultValue = "${bundle:default.step}",
            description = "Longest step along the line, m; shorter is finer and slower. Default: ${DEFAULT-VALUE}.")
    private double step;

    @Option(
            names = "--grip-used",
            paramLabel = "<share>",
            defaultValue = "${bundle:default.grip-used}",
            description =
                    "Share of the grip that may be used, above 0 to 1: less leaves a margin. Default: ${DEFAULT-VALUE}.")
    private double gripUsed;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    Report report(Console console) {
        Options.within("--step", step, 0.01, 100, "m");
        Options.within("--grip-used", gripUsed, 0.01, 1, "");
        return placeOptions.ask(console, this::report);
    }

    private Report report(Car car, Corner corner) {
        IdealProfile profile = IdealEntry.solve(car, corner, new IdealOptions(step, gripUsed));
        Report report = new Report(car.name() + " in " + corner.name())
                .with("brake_point_m", orNone(profile.brakePoint()))
                .with("release_end_m", orNone(profile.releaseEnd()))
                .with("turn_in_speed_mps", profile.turnInSpeed())
                .with("minimum_speed_mps", profile.minimumSpeed())
                .with("minimum_speed_at_m", profile.minimumSpeedAt())
                .with("top_speed_mps", profile.topSpeed())
                .with("time_s", profile.time())
                .with("trail_share", profile.trailShare())
                .with("outcome", (Words.standstill(profile).isEmpty() ? Outcome.MADE_IT : Outcome.STOPPED).words())
                .with("profile", "The entry along the line", rows(profile));
        common().picture().draw(() -> IdealPictures.of(car, corner, profile));
        return report.note(Words.standstill(profile).orElseGet(() -> note(profile)))
                .note(Handover.CAUTION);
    }

    private static double orNone(OptionalDouble value) {
        return value.orElse(Double.NaN);
    }

    private static List<Report> rows(IdealProfile profile) {
        List<Report> rows = new ArrayList<>(profile.size());
        for (int i = 0; i < profile.size(); i++) {
            rows.add(new Report()
                    .with("s_m", profile.station(i))
                    .with("time_s", profile.time(i))
                    .with("speed_mps", profile.speed(i))
                    .with("deceleration_mps2", profile.deceleration(i))
                    .with("front_utilisation", profile.frontUtilisation(i))
                    .with("rear_utilisation", profile.rearUtilisation(i))
                    .with("roll_over_utilisation", profile.rollOverUtilisation(i)));
        }
        return rows;
    }

    private static String note(IdealProfile profile) {
        if (profile.brakePoint().isEmpty()) {
            return "This corner needs no brake.";
        }
        double brakePoint = profile.brakePoint().getAsDouble();
        double end = profile.releaseEnd().orElse(0);
        String where = brakePoint < 0
                ? Numbers.rounded(-brakePoint, 0) + " m before turn-in"
                : Numbers.rounded(brakePoint, 0) + " m after turn-in";
        String off = end < 0 ? Numbers.rounded(-end, 0) + " m before it" : Numbers.rounded(end, 0) + " m after it";
        return "Brake point " + where + ", brake off " + off + "; " + Numbers.rounded(100 * profile.trailShare(), 0)
                + " % of the slowing is done while turning." + rollOver(profile);
    }

    /** Where the car rolls over before an axle is full, a table of the axles does not show what limits it. */
    private static String rollOver(IdealProfile profile) {
        boolean tips = IntStream.range(0, profile.size())
                .anyMatch(i -> profile.limitingAxle(i).isEmpty() && profile.rollOverUtilisation(i) > AT_THE_LIMIT);
        return tips ? " In the bend it is rolling over that limits the car, and no axle." : "";
    }

    /** Utilisation from which a limit is taken as reached: what the grid of stations leaves open. */
    private static final double AT_THE_LIMIT = 0.99;
}
