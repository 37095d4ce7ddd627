package org.foreload.handling;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Handling of a car about a trim: how it answers small changes of steer, and whether it is stable. Wheel loads follow
 * the lateral acceleration in every one of these numbers, so that gradient, speeds, margin and decay rate belong to one
 * model. Where nothing else is said they hold at constant speed, brake and drive force.
 *
 * @param trim the motion
 * @param model its lateral motion with loads and tyre forces that have followed; brake and drive force are held
 * @param understeerGradient d(δ − L·κ)/d(a) there, rad per m/s², at constant speed and deceleration
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
        Objects.requireNonNull(trim, "trim");
        Objects.requireNonNull(model, "model");
        eigenvalues = List.copyOf(Objects.requireNonNull(eigenvalues, "eigenvalues"));
        laggedEigenvalues = List.copyOf(Objects.requireNonNull(laggedEigenvalues, "laggedEigenvalues"));
    }

    /**
     * Linearises about a trim.
     *
     * @throws ArithmeticException if the eigenvalues are not found
     */
    public static LinearHandling of(Trim trim) {
        Objects.requireNonNull(trim, "trim");
        LaggedModel lagged = LaggedModel.of(trim);
        LateralModel model = lagged.settled();
        return new LinearHandling(trim, model, trim.understeerGradient(), model.eigenvalues(), lagged.eigenvalues());
    }

    /**
     * Speed at which a car with this margin needs twice the steer of a neutral one, V/√(margin − 1), m/s; empty unless
     * it understeers. It is √(L/K) with the gradient at constant brake and drive force.
     */
    public OptionalDouble characteristicSpeed() {
        return speedFor(divergenceMargin() - 1);
    }

    /**
     * Speed at which a car with this margin diverges, V/√(1 − margin), m/s; empty unless it oversteers. It is √(L/−K)
     * with the gradient at constant brake and drive force; a car that is faster is not {@link #stable()}.
     */
    public OptionalDouble criticalSpeed() {
        return speedFor(1 - divergenceMargin());
    }

    private OptionalDouble speedFor(double share) {
        double gradient = share * trim.car().chassis().wheelbase() / (trim.speed() * trim.speed());
        return gradient > NEUTRAL ? OptionalDouble.of(trim.speed() / Math.sqrt(share)) : OptionalDouble.empty();
    }

    /** Steady change of yaw rate per change of steer at constant speed, brake and drive force, 1/s. */
    public double yawRateGain() {
        return model.yawRateGain();
    }

    /** Undamped natural frequency, rad/s (over 2π: Hz); NaN where the car diverges. */
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

    /** How quickly the least stable of {@link #eigenvalues()} decays, 1/s; negative where it grows. */
    public double decayRate() {
        return -eigenvalues.get(0).real();
    }

    /** Whether every small disturbance decays, without the lags of tyres and roll. */
    public boolean stable() {
        return decayRate() > 0;
    }
}
