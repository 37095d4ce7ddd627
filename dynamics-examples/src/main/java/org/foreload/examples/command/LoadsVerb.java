package org.foreload.examples.command;

import org.foreload.examples.gallery.CarPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.grip.Axle;
import org.foreload.grip.AxleUse;
import org.foreload.grip.GripLimits;
import org.foreload.grip.GripUse;
import org.foreload.grip.Motion;
import org.foreload.load.LoadTransfer;
import org.foreload.load.WheelLoads;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How much load is on each wheel, and how much of its grip each axle uses. */
@Command(
        name = "loads",
        sortOptions = false,
        description = {
            "The load on each wheel while the car brakes and corners, and how much of its grip each axle uses.",
            "",
            "Braking moves load from the rear wheels to the front, cornering from the inner to the outer. A tyre with more "
                    + "load can give more force, so this decides what each end of the car can do."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: grip used is the share of its grip that an axle uses (1 is the limit, above 1 is more than it "
                    + "has). Adhesion used is its force over its load.",
            "",
            "Example:  foreload loads --deceleration 5 --lateral 6 --speed 35",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class LoadsVerb extends ReportVerb {

    @Option(
            names = "--deceleration",
            paramLabel = "<m/s²>",
            defaultValue = "4",
            description = "How hard the car slows, m/s²; negative for speeding up. Default: ${DEFAULT-VALUE}.")
    private double deceleration;

    @Option(
            names = "--lateral",
            paramLabel = "<m/s²>",
            defaultValue = "5",
            description = "Lateral acceleration, m/s², positive in a left turn. Default: ${DEFAULT-VALUE}.")
    private double lateral;

    @Option(
            names = "--speed",
            paramLabel = "<m/s>",
            defaultValue = "30",
            description = "Speed, m/s; it matters for drag and downforce. Default: ${DEFAULT-VALUE}.")
    private double speed;

    @Mixin
    private CarOptions carOptions;

    @Override
    Report report(Console console) {
        Options.speed("--speed", speed);
        Options.acceleration("--deceleration", deceleration);
        Options.acceleration("--lateral", lateral);
        Car car = carOptions.car(console);
        GripUse use = GripLimits.of(car).use(Motion.steady(speed, deceleration, lateral));
        EnginePower.check(console, car, use.powerUtilisation() * car.driveline().power());
        double transfer = LoadTransfer.of(car).longitudinal(deceleration, speed * speed, 0);
        WheelLoads loads = use.loads();
        Report report = new Report(car.name() + " in a steady turn")
                .with("deceleration_mps2", deceleration)
                .with("lateral_mps2", lateral)
                .with("speed_mps", speed)
                .with("front_axle_load_n", loads.frontAxle())
                .with("rear_axle_load_n", loads.rearAxle())
                .with("front_left_load_n", loads.frontLeft())
                .with("front_right_load_n", loads.frontRight())
                .with("rear_left_load_n", loads.rearLeft())
                .with("rear_right_load_n", loads.rearRight())
                .with("longitudinal_load_transfer_n", transfer)
                .with("front_utilisation", use.front().utilisation())
                .with("rear_utilisation", use.rear().utilisation())
                .with("front_adhesion_utilisation", use.front().adhesion())
                .with("rear_adhesion_utilisation", use.rear().adhesion())
                .with("roll_over_utilisation", use.tippingUtilisation())
                .with("limiting_axle", Choices.word(use.limitingAxle()));
        common().picture().draw(() -> CarPictures.loads(car, speed, deceleration, lateral));
        return report.note(note(use, loads));
    }

    private String note(GripUse use, WheelLoads loads) {
        Axle axle = use.limitingAxle();
        AxleUse limiting = axle == Axle.FRONT ? use.front() : use.rear();
        String lifted = loads.lifted().isEmpty() ? "" : " Off the road: " + Options.words(loads.lifted()) + ".";
        if (use.tippingUtilisation() > 1) {
            return "Not possible: the car would roll over, as its inner wheels leave the road from "
                    + Numbers.rounded(Math.abs(lateral) / use.tippingUtilisation(), 2)
                    + " m/s² of lateral acceleration on."
                    + lifted;
        }
        if (limiting.utilisation() == Double.POSITIVE_INFINITY) {
            return "Not possible: the " + Choices.word(axle)
                    + " axle has a wheel off the road, which can neither drive nor " + "brake." + lifted;
        }
        if (limiting.utilisation() > 1) {
            return "Not possible: the " + Choices.word(axle) + " axle would need more grip than it has." + lifted;
        }
        if (use.rollsOverFirst()) {
            return "The car is closer to rolling over than its axles to their limits, with "
                    + Numbers.rounded(100 * (1 - use.tippingUtilisation()), 0)
                    + " % of the lateral acceleration that does it left." + lifted;
        }
        return "The " + Choices.word(axle) + " axle is closer to its limit, with "
                + Numbers.rounded(100 * (1 - limiting.utilisation()), 0) + " % of its grip left." + lifted;
    }
}
