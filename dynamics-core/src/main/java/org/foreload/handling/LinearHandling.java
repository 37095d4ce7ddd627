package org.foreload.handling;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Handling of a car about a trim.
 *
 * @param trim the motion
 * @param model its lateral motion at fixed loads
 * @param understeerGradient d(δ − L·κ)/d(a) there, rad per m/s², loads following
 * @param eigenvalues of {@code model}, the least stable first
 * @param laggedEigenvalues the same with the lags of tyres and roll, for a car that has them
 */
public record LinearHandling(
        Trim trim,
        LateralModel model,
        double understeerGradient,
        List<Eigenvalue> eigenvalues,
        List<Eigenvalue> laggedEigenvalues) {

    /**
     * Gradient, rad per m/s², below which a car counts as neutral: the speed that would belong to it is beyond 10 km/s,
     * and rounding decides its sign.
     */
    private static final double NEUTRAL = 2e-8;

    /** Copies the lists. */
    public LinearHandling {
        eigenvalues = List.copyOf(eigenvalues);
        laggedEigenvalues = List.copyOf(laggedEigenvalues);
    }

    /** Linearises about a trim. */
    public static LinearHandling of(Trim trim) {
        LateralModel model = LateralModel.at(trim.point());
        return new LinearHandling(
                trim, model, trim.understeerGradient(), model.eigenvalues(), LaggedModel.eigenvalues(trim));
    }

    /**
     * Speed at which a car with this gradient needs twice the steer of a neutral one, √(L/K), m/s; empty unless it
     * understeers.
     */
    public OptionalDouble characteristicSpeed() {
        return understeerGradient > NEUTRAL ? OptionalDouble.of(speedFor(understeerGradient)) : OptionalDouble.empty();
    }

    /** Speed at which a car with this gradient diverges, √(L/−K), m/s; empty unless it oversteers. */
    public OptionalDouble criticalSpeed() {
        return understeerGradient < -NEUTRAL
                ? OptionalDouble.of(speedFor(-understeerGradient))
                : OptionalDouble.empty();
    }

    private double speedFor(double gradient) {
        return Math.sqrt(trim.car().chassis().wheelbase() / gradient);
    }

    /** Steady change of yaw rate per change of steer at constant speed and fixed loads, 1/s. */
    public double yawRateGain() {
        return model.yawRateGain();
    }

    /** Undamped natural frequency, rad/s; NaN where the car diverges. */
    public double naturalFrequency() {
        return model.naturalFrequency();
    }

    /** Damping ratio, plain number; NaN where the car diverges. */
    public double dampingRatio() {
        return model.dampingRatio();
    }

    /**
     * Margin to divergence, plain number: yaw-rate gain of a neutral car, V/L, over that of this one. 1 + V²/v_ch² for
     * understeer; it falls to 0 at the critical speed and is below 0 beyond.
     */
    public double divergenceMargin() {
        return trim.speed() / trim.car().chassis().wheelbase() / model.yawRateGain();
    }

    /** How quickly the least stable motion decays at fixed loads, 1/s; negative when it grows. */
    public double decayRate() {
        return -eigenvalues.get(0).real();
    }

    /** Whether every small disturbance decays. */
    public boolean stable() {
        return decayRate() > 0;
    }
}
