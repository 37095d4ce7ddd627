package org.foreload.envelope;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;
import org.foreload.recording.Estimate;
import org.foreload.recording.Run;
import org.foreload.study.Sweep;

/**
 * Friction limits as the laps of one car show them: an ellipse of the accelerations across and along that grows with
 * the square of speed.
 *
 * <p>Bands: the laps, or stretches of half a minute where there are fewer than {@value #FEWEST_LAPS}, are drawn again
 * at random with replacement and fitted anew; the bootstrap over blocks, within which moments depend on each other (B.
 * Efron and R. Tibshirani, An Introduction to the Bootstrap, ch. 8.6, 1993, from memory).
 */
public final class FrictionEnvelope {

    /** Fewest laps that are drawn as wholes. */
    private static final int FEWEST_LAPS = 5;

    /** Moments in a stretch of half a minute of worked driving. */
    private static final int STRETCH = 100;

    /** Fewest worked moments from which limits are read: half a minute at three a second. */
    private static final int FEWEST_MOMENTS = 90;

    /** Standard deviation of what the method makes of a limit, as a share; measured on laps whose limits are known. */
    private static final double METHOD = 0.01;

    private final Ellipse ellipse;
    private final List<Ellipse> again;
    private final double method;
    private final double coverage;
    private final double slowest;
    private final double fastest;
    private final double mixedUse;

    private FrictionEnvelope(
            Ellipse ellipse, List<Ellipse> again, double method, double coverage, double[] speeds, double mixedUse) {
        this.mixedUse = mixedUse;
        this.ellipse = ellipse;
        this.again = again;
        this.method = method;
        this.coverage = coverage;
        double[] sorted = speeds.clone();
        Arrays.sort(sorted);
        this.slowest = sorted[0];
        this.fastest = sorted[sorted.length - 1];
    }

    /**
     * Reads the limits.
     *
     * @param laps of one car on one road
     * @param settings how
     * @throws InvalidValueException if the car is worked in too few moments
     */
    public static FrictionEnvelope of(List<Run> laps, EnvelopeSettings settings) {
        return of(laps, settings, 1);
    }

    /**
     * The same on several threads, which changes no number.
     *
     * @param laps of one car on one road
     * @param settings how
     * @param threads 1 or more
     * @throws CancellationException if the thread that calls is interrupted before it is found; it still is then
     * @throws InvalidValueException if the car is worked in too few moments
     */
    public static FrictionEnvelope of(List<Run> laps, EnvelopeSettings settings, int threads) {
        Objects.requireNonNull(laps, "laps");
        Objects.requireNonNull(settings, "settings");
        Sweep sweep = new Sweep(threads, Sweep.Progress.SILENT);
        List<Moments> moments = all(sweep.run(laps, Moments::of));
        Moments all = Moments.joined(moments);
        if (!(all.size() >= FEWEST_MOMENTS)) {
            throw new InvalidValueException(
                    "worked_moments", all.size(), FEWEST_MOMENTS + " or more, of a third of a second each");
        }
        List<Moments> blocks = moments.size() >= FEWEST_LAPS ? moments : stretches(all);
        Ellipse ellipse = EllipseFit.of(all, settings.quantile());
        SplittableRandom random = new SplittableRandom(settings.seed());
        List<List<Moments>> resamples = new ArrayList<>();
        for (int k = 0; k < settings.resamples(); k++) {
            List<Moments> drawn = new ArrayList<>();
            for (int i = 0; i < blocks.size(); i++) {
                drawn.add(blocks.get(random.nextInt(blocks.size())));
            }
            resamples.add(drawn);
        }
        List<Ellipse> again = all(
                sweep.run(resamples, drawn -> EllipseFit.near(ellipse, Moments.joined(drawn), settings.quantile())));
        return new FrictionEnvelope(
                ellipse, again, METHOD, settings.coverage(), all.speed(), mixedUse(ellipse, moments));
    }

    /**
     * The limits of a car whose friction is known, and not read from laps: those of {@link #of} through its limits at
     * two speeds, without a band. Braking and cornering take together what the ellipse leaves.
     *
     * @param slow speed, m/s, above zero
     * @param fast another, m/s, above that
     * @param lateral limit across at a speed, m/s², without braking
     * @param braking limit of braking at a speed, m/s², in a straight line; what drag slows is in it
     * @throws InvalidValueException if a speed is not as said, or a limit is not above zero
     */
    public static FrictionEnvelope known(
            double slow, double fast, DoubleUnaryOperator lateral, DoubleUnaryOperator braking) {
        Objects.requireNonNull(lateral, "lateral");
        Objects.requireNonNull(braking, "braking");
        Checks.positive("slow_mps", slow);
        Checks.positive("fast_minus_slow_mps", fast - slow);
        double[] across = limits("lateral_mps2", lateral, slow, fast);
        double[] along = limits("braking_mps2", braking, slow, fast);
        double over = fast * fast / (slow * slow) - 1;
        Ellipse ellipse = new Ellipse(
                slow, across[0], (across[1] / across[0] - 1) / over, along[0], (along[1] / along[0] - 1) / over);
        return new FrictionEnvelope(ellipse, List.of(), 0, Estimate.USUAL_COVERAGE, new double[] {slow, fast}, 1);
    }

    private static double[] limits(String field, DoubleUnaryOperator limit, double slow, double fast) {
        return new double[] {
            Checks.positive(field, limit.applyAsDouble(slow)), Checks.positive(field, limit.applyAsDouble(fast))
        };
    }

    private static <T> List<T> all(List<Optional<T>> results) {
        return results.stream()
                .map(one ->
                        one.orElseThrow(() -> new CancellationException("interrupted before the friction was found")))
                .toList();
    }

    /** Median over the laps of the most that a lap shows; zero where fewer than half show any. */
    private static double mixedUse(Ellipse ellipse, List<Moments> laps) {
        double[] most = laps.stream()
                .mapToDouble(lap -> mostMixed(ellipse, lap))
                .sorted()
                .toArray();
        return most[most.length / 2];
    }

    private static double mostMixed(Ellipse ellipse, Moments lap) {
        double most = 0;
        for (int i = 0; i < lap.size(); i++) {
            double speed = lap.speed()[i];
            if (ellipse.mixed(speed, lap.along()[i], lap.across()[i])) {
                most = Math.max(most, ellipse.usedSquare(speed, lap.along()[i], lap.across()[i]));
            }
        }
        return Math.sqrt(most);
    }

    /**
     * How much of the limits the driver uses at most where braking and cornering take alike: the median over the laps
     * of the most in each; zero for one who never brakes in a turn. Brakes that are not shared as the load is keep it
     * below one.
     */
    public double mixedUse() {
        return mixedUse;
    }

    /**
     * Whether braking and cornering take alike: neither less than half of what the other does, both as shares of their
     * limits.
     *
     * @param speed m/s
     * @param deceleration m/s²
     * @param lateral m/s²
     */
    public boolean mixed(double speed, double deceleration, double lateral) {
        return ellipse.mixed(speed, deceleration, Math.abs(lateral));
    }

    private static List<Moments> stretches(Moments all) {
        int count = Math.max(2, all.size() / STRETCH);
        List<Moments> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            parts.add(all.part(i * all.size() / count, (i + 1) * all.size() / count));
        }
        return parts;
    }

    /** Limit across at a speed, m/s², without braking. */
    public Estimate lateral(double speed) {
        return estimate(one -> one.lateral(speed));
    }

    /** Limit of braking at a speed, m/s², in a straight line; what drag slows is in it. */
    public Estimate braking(double speed) {
        return estimate(one -> one.braking(speed));
    }

    /**
     * How much of the limits is used: 1 on the rim.
     *
     * @param speed m/s
     * @param deceleration m/s²
     * @param lateral m/s²
     */
    public double use(double speed, double deceleration, double lateral) {
        return Math.sqrt(ellipse.usedSquare(speed, deceleration, lateral));
    }

    /** Lowest speed at which the car was worked, m/s; below it the limits are carried on. */
    public double lowestSpeed() {
        return slowest;
    }

    /** Highest such speed, m/s. */
    public double highestSpeed() {
        return fastest;
    }

    private Estimate estimate(ToDoubleFunction<Ellipse> limit) {
        double value = limit.applyAsDouble(ellipse);
        double square = 0;
        for (Ellipse one : again) {
            double off = limit.applyAsDouble(one) - value;
            square += off * off / again.size();
        }
        return Estimate.normal(value, Math.hypot(method * value, Math.sqrt(square)), coverage);
    }
}
