package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.foreload.examples.answer.HandlingWords;
import org.foreload.examples.gallery.CarPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.handling.Eigenvalue;
import org.foreload.handling.LinearHandling;
import org.foreload.handling.Trim;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How the car responds to a small disturbance while it brakes and corners. */
@Command(
        name = "handling",
        sortOptions = false,
        description = {
            "Is the car stable at this speed, while it corners and brakes this hard, and by how much?",
            "",
            "A small disturbance (a gust, a bump) decays in a stable car and grows in an unstable one. Braking takes load off the "
                    + "rear wheels and so makes every car less stable; this shows by how much."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: a positive understeer gradient means that the driver must steer more as the car corners harder "
                    + "(understeer), a negative one less (oversteer). An oversteering car spins by itself above its "
                    + "critical speed; an understeering one needs twice the steer at its characteristic speed. The decay rate "
                    + "says how quickly a disturbance decays with the steering held fixed; below 0 it grows. A margin to divergence of 0 is the critical "
                    + "speed. Wheel loads follow the cornering in all of them. The gradient holds the deceleration; both speeds, margin and "
                    + "decay rate hold the pedals.",
            "",
            "Example:  foreload handling --speed 35 --lateral 5 --deceleration 4 --demo-car road",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class HandlingVerb extends ReportVerb {

    /** Step of deceleration in the list, m/s². */
    private static final double STEP = 1;

    /** Most rows of the list: no car brakes harder than so many m/s². */
    private static final int MOST_ROWS = 60;

    @Option(
            names = "--speed",
            paramLabel = "<m/s>",
            defaultValue = "30",
            description = "Speed, m/s. Default: ${DEFAULT-VALUE}.")
    private double speed;

    @Option(
            names = "--lateral",
            paramLabel = "<m/s²>",
            defaultValue = "4",
            description = "Lateral acceleration, m/s², positive in a left turn. Default: ${DEFAULT-VALUE}.")
    private double lateral;

    @Option(
            names = "--deceleration",
            paramLabel = "<m/s²>",
            defaultValue = "3",
            description = "How hard the car slows, m/s²; negative for speeding up. Default: ${DEFAULT-VALUE}.")
    private double deceleration;

    @Mixin
    private CarOptions carOptions;

    @Override
    Report report(Console console) {
        Options.positive("--speed", speed, "m/s");
        Options.speed("--speed", speed);
        Options.acceleration("--deceleration", deceleration);
        Options.acceleration("--lateral", lateral);
        Car car = carOptions.car(console);
        Trim trim = new Blame(carOptions)
                .compute(() -> Trim.find(car, speed, deceleration, lateral))
                .orElseThrow(() -> new ComputationException(
                        "the car cannot corner at " + Numbers.shortest(lateral) + " m/s² and slow at "
                                + Numbers.shortest(deceleration)
                                + " m/s² at once: an axle lacks the grip, or a wheel would lock"));
        EnginePower.check(console, car, trim.driveForce() * speed);
        LinearHandling handling = LinearHandling.of(trim);
        Report report = new Report(car.name() + " at " + Numbers.shortest(speed) + " m/s")
                .with("speed_mps", speed)
                .with("lateral_mps2", lateral)
                .with("deceleration_mps2", deceleration)
                .with("understeer_gradient_rad_per_mps2", handling.understeerGradient())
                .with("characteristic_speed_mps", orNone(handling.characteristicSpeed()))
                .with("critical_speed_mps", orNone(handling.criticalSpeed()))
                .with("yaw_rate_gain_per_s", handling.yawRateGain())
                .with("natural_frequency_rad_per_s", handling.naturalFrequency())
                .with("damping_ratio", handling.dampingRatio())
                .with("decay_rate_per_s", handling.decayRate())
                .with("margin_to_divergence", handling.divergenceMargin())
                .with("steer_deg", Math.toDegrees(trim.steer()))
                .with("sideslip_deg", Math.toDegrees(trim.sideslip()))
                .with("brake_force_n", trim.brakeForce())
                .with("drive_force_n", trim.driveForce())
                .with("front_cornering_stiffness_n_per_rad", handling.model().frontStiffness())
                .with("rear_cornering_stiffness_n_per_rad", handling.model().rearStiffness())
                .with("eigenvalues", "Natural modes, 1/s and rad/s", rows(handling.eigenvalues()))
                .with(
                        "lagged_eigenvalues",
                        "The same with the lags of tyres and roll",
                        rows(handling.laggedEigenvalues()))
                .with("braking", "The same turn, braked harder and harder", braking(car));
        common().picture().draw(() -> CarPictures.handling(trim, common().units()));
        Report said = report.note("Here the car " + HandlingWords.of(handling, common().units()) + ".");
        return HandlingWords.heldBack(trim).map(said::note).orElse(said);
    }

    private static double orNone(OptionalDouble value) {
        return value.orElse(Double.NaN);
    }

    private static List<Report> rows(List<Eigenvalue> eigenvalues) {
        return eigenvalues.stream()
                .map(one -> new Report().with("real", one.real()).with("imaginary", one.imaginary()))
                .toList();
    }

    private List<Report> braking(Car car) {
        List<Report> rows = new ArrayList<>();
        for (int i = 0; i < MOST_ROWS; i++) {
            Optional<Trim> trim = Trim.find(car, speed, i * STEP, lateral);
            if (trim.isEmpty()) {
                break;
            }
            LinearHandling handling = LinearHandling.of(trim.get());
            rows.add(new Report()
                    .with("deceleration_mps2", i * STEP)
                    .with("understeer_gradient_rad_per_mps2", handling.understeerGradient())
                    .with("critical_speed_mps", orNone(handling.criticalSpeed()))
                    .with("decay_rate_per_s", handling.decayRate())
                    .with("margin_to_divergence", handling.divergenceMargin()));
        }
        return rows;
    }
}
