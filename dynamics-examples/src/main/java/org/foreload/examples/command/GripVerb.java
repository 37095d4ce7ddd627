package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.gallery.GripPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.file.InputException;
import org.foreload.grip.Axle;
import org.foreload.grip.BrakingGrip;
import org.foreload.grip.GgDiagram;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What braking does to the cornering of each axle. */
@Command(
        name = "grip",
        sortOptions = false,
        description = {
            "How much cornering force the front and the rear axle can give while the car brakes.",
            "",
            "Gentle braking loads the front tyres more than it uses them up, so at first the front axle can corner harder; "
                    + "the rear axle loses grip from the start. The deceleration at which the front axle is best is what a "
                    + "trailed brake aims for at turn-in."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: best deceleration and best front gain (0.05 is 5 %% over no braking); for each deceleration the "
                    + "lateral capacity of both axles and the axle that gives way first; and the g-g diagram: the most the car "
                    + "can corner at each longitudinal acceleration (negative is braking).",
            "",
            "Example:  foreload grip --speed 40 --demo-car road",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class GripVerb extends ReportVerb {

    /** Points of the g-g diagram: enough to draw it smoothly. */
    private static final int GG_POINTS = 41;

    /** Most rows that a step may ask for. */
    private static final int MOST_ROWS = 10_000;

    @Option(
            names = "--speed",
            paramLabel = "<m/s>",
            defaultValue = "30",
            description = "Speed, m/s; it matters for drag, downforce and power. Default: ${DEFAULT-VALUE}.")
    private double speed;

    @Option(
            names = "--step",
            paramLabel = "<m/s²>",
            defaultValue = "0.5",
            description = "Step of deceleration between rows, m/s². Default: ${DEFAULT-VALUE}.")
    private double step;

    @Mixin
    private CarOptions carOptions;

    @Override
    Report report(Console console) {
        Options.positive("--speed", speed, "m/s");
        Options.speed("--speed", speed);
        Options.positive("--step", step, "m/s²");
        Car car = carOptions.car(console);
        BrakingGrip grip = BrakingGrip.of(car, speed);
        List<GgDiagram.Point> boundary = GgDiagram.of(car, speed, GG_POINTS).boundary();
        double hardest = boundary.get(boundary.size() - 1).deceleration();
        if (hardest / step > MOST_ROWS) {
            throw new InputException(
                    null, "--step", Numbers.shortest(step), "must not ask for more than " + MOST_ROWS + " rows");
        }
        Report report = new Report(car.name() + " at " + Numbers.shortest(speed) + " m/s")
                .with("speed_mps", speed)
                .with("best_deceleration_mps2", grip.bestDeceleration())
                .with("best_front_gain", grip.bestFrontGain())
                .with("hardest_deceleration_mps2", hardest)
                .with("rows", "Lateral capacity against deceleration", rows(grip, hardest))
                .with("gg", "g-g diagram: how hard it can corner at each longitudinal acceleration", gg(boundary));
        common().picture().draw(() -> GripPictures.of(car, speed));
        return notes(report, grip);
    }

    private List<Report> rows(BrakingGrip grip, double hardest) {
        List<Report> rows = new ArrayList<>();
        for (int i = 0; i * step <= hardest; i++) {
            double deceleration = i * step;
            rows.add(new Report()
                    .with("deceleration_mps2", deceleration)
                    .with("front_lateral_capacity_n", grip.frontCapacity(deceleration))
                    .with("rear_lateral_capacity_n", grip.rearCapacity(deceleration))
                    .with("lateral_mps2", grip.lateralAcceleration(deceleration))
                    .with("limiting_axle", limiting(grip.limitingAxle(deceleration))));
        }
        return rows;
    }

    private static List<Report> gg(List<GgDiagram.Point> boundary) {
        return boundary.stream()
                .map(point -> new Report()
                        .with("longitudinal_mps2", 0 - point.deceleration())
                        .with("lateral_mps2", point.lateral())
                        .with("limiting_axle", limiting(point.limitingAxle())))
                .toList();
    }

    private static String limiting(Optional<Axle> axle) {
        return axle.map(Choices::word).orElse(EntryResult.Limit.ROLL_OVER.words());
    }

    private static Report notes(Report report, BrakingGrip grip) {
        double best = grip.bestDeceleration();
        if (best == 0) {
            return report.note("Braking adds nothing to the front grip of this car at this speed.");
        }
        double rearLoss = 1 - grip.rearCapacity(best) / grip.rearCapacity(0);
        Report more = report.note("Slowing at " + Numbers.rounded(best, 2) + " m/s² gives the front axle "
                + Numbers.rounded(100 * grip.bestFrontGain(), 1)
                + " % more cornering force than no braking; the rear axle "
                + "has " + Numbers.rounded(100 * rearLoss, 1) + " % less.");
        Optional<Axle> limiting = grip.limitingAxle(best);
        if (limiting.isEmpty()) {
            return more.note(
                    "In a steady corner this car would roll over before its tyres slide, so the gain counts at "
                            + "turn-in, where the front axle must also start the rotation.");
        }
        return more.note(
                limiting.get() == Axle.FRONT && grip.limitingAxle(0).equals(limiting)
                        ? "The front axle limits this car there, so even in a steady corner it corners harder while braking."
                        : "In a steady corner the rear axle limits this car there, so the gain counts at turn-in, where the "
                                + "front axle must also start the rotation.");
    }
}
