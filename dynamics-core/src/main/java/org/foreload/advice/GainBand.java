package org.foreload.advice;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.vehicle.Car;

/**
 * How sure a predicted gain is: it is computed again with each number that is not known exactly a standard deviation
 * off, and the differences add up in squares. To them comes what the fitted car itself is wrong by, a share of the
 * gain. Its interval holds nine times in ten, whatever the coverage of what was measured.
 */
final class GainBand {

    /** Standard deviation of what the car makes of a gain, as a share of it; measured on pairs whose truth is known. */
    private static final double SHARE = 0.12;

    /**
     * The same where the shape changes: how far a car bears brake and cornering together on the way is what the fitted
     * one knows least of; measured in a hairpin, where it predicted 0.11 s for changes worth 0.02 to 0.08 s.
     */
    private static final double SHAPE_SHARE = 0.4;

    /** The same of any gain, s. */
    private static final double LEAST = 0.015;

    /**
     * Standard deviation of how much harder a driver has to brake to come to the same speed from a later place, as a
     * share of that: what the true car gains on the straight, and what the air takes off it, are known no better.
     * Measured on made drivers: they came 0.2 m/s slower than meant.
     */
    private static final double ARRIVAL = 0.06;

    /** Standard deviation of a fitted peak, as a share. */
    private static final double PEAK = 0.01;

    /** Standard deviation of the friction that the fit adds to what was shown, as a share. */
    private static final double FRICTION = 0.015;

    private final List<Variant> variants;
    private final Variant fitted;

    /**
     * A car with a plan and the time that it takes.
     *
     * @param gains that were asked for already: a single change is compared with several pairs
     */
    private record Variant(Replica replica, BrakePlan plan, Replica.Drive drive, Map<List<Step>, Double> gains) {

        static Variant of(Replica replica, BrakePlan plan) {
            return new Variant(replica, plan, replica.quickly(plan), new ConcurrentHashMap<>());
        }

        double gain(List<Step> steps) {
            return gains.computeIfAbsent(steps, this::driven);
        }

        private double driven(List<Step> steps) {
            return Step.all(steps, plan)
                    .map(other -> drive.time() - replica.quickly(other).time())
                    .orElse(Double.NaN);
        }
    }

    GainBand(RecordedCorner did, ReplicaFit.Fitted fitted, FrictionEnvelope limits) {
        Replica replica = fitted.replica();
        BrakePlan plan = fitted.likeness().plan();
        Estimate across = limits.lateral(did.get(Measure.MINIMUM_SPEED).value());
        double shown = across.deviation() / across.value();
        double grip = Math.hypot(shown, FRICTION);
        Release release = plan.release();
        double later = deviation(did, Measure.RELEASE_END);
        this.fitted = Variant.of(replica, plan);
        this.variants = List.of(
                Variant.of(replica.with(scaled(replica.car(), 1 - grip)), plan),
                Variant.of(replica, plan.withBrakePoint(plan.brakePoint() - deviation(did, Measure.BRAKE_ON))),
                Variant.of(replica, plan.withPeakDeceleration(plan.peakDeceleration() * (1 + PEAK))),
                Variant.of(replica, plan.with(new Release(release.shape(), release.start(), release.end() + later))));
    }

    private static Car scaled(Car car, double factor) {
        return car.withTyres(
                car.frontTyre().withFriction(factor), car.rearTyre().withFriction(factor));
    }

    private static double deviation(RecordedCorner did, Measure measure) {
        return did.besideTurnIn(measure).deviation();
    }

    /** The plan as it was fitted, driven with the fitted car. */
    Replica.Drive base() {
        return fitted.drive();
    }

    /**
     * A gain with its interval.
     *
     * @param gain of the steps over {@link #base}, s
     */
    Estimate of(List<Step> steps, double gain) {
        List<Step> missed = steps.stream()
                .map(step -> new Step(step.change(), step.amount(), step.harder() * (1 + ARRIVAL)))
                .toList();
        return band(reshaped(steps), gain, fitted.gain(missed) - gain, variant -> variant.gain(steps));
    }

    /**
     * What some steps gain more than others, with its interval: what both are wrong by alike is not in it.
     *
     * @param gain of the steps over {@link #base}, s
     * @param other the steps that are compared with
     * @param otherGain theirs, s
     */
    Estimate more(List<Step> steps, double gain, List<Step> other, double otherGain) {
        return band(
                reshaped(steps) != reshaped(other),
                gain - otherGain,
                0,
                variant -> variant.gain(steps) - variant.gain(other));
    }

    private static boolean reshaped(List<Step> steps) {
        return steps.stream().anyMatch(step -> step.change() == Change.SHAPE);
    }

    private Estimate band(boolean reshaped, double gain, double missed, ToDoubleFunction<Variant> again) {
        double share = reshaped ? SHAPE_SHARE : SHARE;
        double square = share * share * gain * gain + LEAST * LEAST + missed * missed;
        for (Variant variant : variants) {
            double off = again.applyAsDouble(variant) - gain;
            // A variant that does not make the corner says no more than that the gain may be none.
            double counted = Double.isNaN(off) ? gain / 2 : off;
            square += counted * counted;
        }
        return Estimate.normal(gain, Math.sqrt(square), Estimate.USUAL_COVERAGE);
    }
}
