package org.foreload.balance;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.grip.BrakeDistribution;
import org.foreload.parameter.Parameter;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Suspension;

/**
 * One number of a car that moves its balance, and the values of it to try.
 *
 * @param parameter the number
 * @param values the values, strictly rising, at least two
 */
public record BalanceAxis(Parameter<Car> parameter, List<Double> values) {

    /** Front share of the brake force. */
    public static final Parameter<Car> BRAKE_SHARE =
            Parameter.component(Car.class, "frontBrakeShare", "front_brake_share", "");

    /** Front share of the roll stiffness. */
    public static final Parameter<Car> ROLL_STIFFNESS_SHARE = Parameter.component(
                    Suspension.class, "frontRollStiffnessShare", "front_roll_stiffness_share", "")
            .within(Car::suspension, Car::with);

    /** Height of the CG, m; a lower ride height lowers it. */
    public static final Parameter<Car> CG_HEIGHT =
            Parameter.component(Chassis.class, "cgHeight", "cg_height_m", "m").within(Car::chassis, Car::with);

    /** Front share of the downforce, whose sum stays; NaN for a car without any. */
    public static final Parameter<Car> DOWNFORCE_SHARE = new Parameter<>(
            "front_downforce_share",
            "",
            car -> car.aerodynamics().frontDownforceArea() / downforce(car),
            (car, share) -> car.with(new Aerodynamics(
                    car.aerodynamics().dragArea(),
                    share * downforce(car),
                    (1 - share) * downforce(car),
                    car.aerodynamics().airDensity(),
                    car.aerodynamics().dragHeight())));

    private static double downforce(Car car) {
        return car.aerodynamics().frontDownforceArea() + car.aerodynamics().rearDownforceArea();
    }

    /** Checks the values. */
    public BalanceAxis {
        Objects.requireNonNull(parameter, "parameter");
        values = List.copyOf(Objects.requireNonNull(values, "values"));
        boolean rising = values.size() > 1;
        for (int i = 1; i < values.size(); i++) {
            rising &= values.get(i) > values.get(i - 1);
        }
        if (!rising) {
            throw new InvalidValueException(parameter.name(), values.toString(), "two or more rising values");
        }
    }

    /**
     * Values of a number from low to high, evenly spaced.
     *
     * @param count 2 or more
     */
    public static BalanceAxis evenly(Parameter<Car> parameter, double low, double high, int count) {
        Objects.requireNonNull(parameter, "parameter");
        Checks.finite(parameter.name(), low);
        Checks.finite(parameter.name(), high);
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            values.add(low + (high - low) * i / Math.max(1, count - 1));
        }
        return new BalanceAxis(parameter, values);
    }

    /** The same values, and the one that a car has, wherever it lies: it is what the others are compared with. */
    public BalanceAxis withOwn(Car car) {
        double own = parameter.of(Objects.requireNonNull(car, "car"));
        Stream<Double> others = values.stream().filter(value -> Math.abs(value - own) > ROUNDING);
        return new BalanceAxis(
                parameter, Stream.concat(others, Stream.of(own)).sorted().toList());
    }

    /** Values no farther from the car's own are meant to be that one. */
    private static final double ROUNDING = 1e-9;

    /**
     * Front brake shares around the one at which both axles of a car would lock together on this friction, (b + μ·h)/L:
     * below it the rear axle locks first, above it the front one.
     *
     * @param friction μ, plain number
     * @param count 2 or more
     */
    public static BalanceAxis brakeShares(Car car, double friction, int count) {
        Objects.requireNonNull(car, "car");
        BrakeDistribution brakes = BrakeDistribution.of(car);
        double together = brakes.idealFront(friction) / friction;
        double low = Math.max(0, together - SHARE_BELOW);
        double high = Math.min(1, together + SHARE_ABOVE);
        return evenly(BRAKE_SHARE, low, high, count);
    }

    /** Shares looked at below the one at which both axles lock together. */
    private static final double SHARE_BELOW = 0.08;

    /** Shares looked at above it: a car is set up on this side. */
    private static final double SHARE_ABOVE = 0.16;
}
