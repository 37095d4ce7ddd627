package org.foreload.risk;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance.Ripple;
import org.foreload.braking.Release;
import org.foreload.conventions.Checks;
import org.foreload.driver.LeftFoot;
import org.foreload.driver.Reaction;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.entry.Outcome;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.LowDiscrepancy;
import org.foreload.study.Proportion;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * Drives plans many times over with a driver who scatters. Every plan meets the same deviations (common random
 * numbers), so that plans differ by what they are and not by luck. Immutable; one study serves many threads.
 *
 * <p>The driver's hands feel the grip that there is; the plan for the exit and the foot on the brake expect the grip
 * that was planned for. The foot reacts: it eases a wheel that stops, and brakes more where the car is faster than the
 * plan without scatter leads to expect. Who has braked far too early sees it and comes off the brake: that is slow, and
 * no failure.
 */
public final class RiskStudy {

    private static final int BRAKE_POINT = 0;
    private static final int PEAK = 1;
    private static final int TIMING = 2;
    private static final int RIPPLE = 3;
    private static final int GRIP = 4;
    private static final int FREQUENCY = 5;
    private static final int DIMENSIONS = 6;

    /**
     * Share of the speed at which the throttle opens below which nobody still brakes. Invented: so low that no plan
     * worth driving is touched, and high enough that nobody stops on the straight before the corner.
     */
    private static final double SLOWEST_BRAKING = 0.4;

    /** Least share of the planned peak or grip that a wild draw may leave. */
    private static final double LEAST_SHARE = 0.2;

    /**
     * Frequencies between which a foot swings, Hz. The quickest is the bandwidth of a leg that pushes: P. Kudzia et
     * al., Scientific Reports 12, 4935 (2022).
     */
    private static final double SLOWEST_RIPPLE = 0.4;

    private static final double QUICKEST_RIPPLE = 1.8;

    private final CornerStudy study;
    private final Scatter scatter;
    private final Reaction reaction;
    private final List<double[]> points;

    /**
     * A study of a driver whose foot reacts as that of a practised one.
     *
     * @param study car, corner and driver
     * @param scatter of driver and grip
     * @param samples entries driven for each plan, 1 or more; best a power of two
     * @param seed of the draws
     */
    public RiskStudy(CornerStudy study, Scatter scatter, int samples, long seed) {
        this(study, scatter, Reaction.practised(), samples, seed);
    }

    /**
     * A study.
     *
     * @param study car, corner and driver
     * @param scatter of driver and grip
     * @param reaction of the foot, in place of that of the study's driver; {@link Reaction#NONE} to brake as planned
     * @param samples entries driven for each plan, 1 or more; best a power of two
     * @param seed of the draws
     */
    public RiskStudy(CornerStudy study, Scatter scatter, Reaction reaction, int samples, long seed) {
        this.study = Objects.requireNonNull(study, "study");
        this.scatter = Objects.requireNonNull(scatter, "scatter");
        this.reaction = Objects.requireNonNull(reaction, "reaction");
        this.points = LowDiscrepancy.points(DIMENSIONS, samples, seed);
    }

    /** Car, corner and driver. */
    public CornerStudy study() {
        return study;
    }

    /** How driver and grip scatter. */
    public Scatter scatter() {
        return scatter;
    }

    /** How the foot reacts. */
    public Reaction reaction() {
        return reaction;
    }

    /** Entries driven for each plan. */
    public int samples() {
        return points.size();
    }

    /**
     * The risk of one plan.
     *
     * @param plan with its brake point
     * @param sweep on how many threads, and who watches the progress
     * @return empty if a stop came before all entries were driven: what fewer show is no answer to how often
     */
    public Optional<Risk> of(BrakePlan plan, Sweep sweep) {
        return soFar(plan, sweep).filter(risk -> risk.failed().of() == samples());
    }

    /**
     * The same, but after a stop the risk by the entries that were driven until then: {@link Proportion#of} says how
     * many.
     *
     * @param plan with its brake point
     * @param sweep on how many threads, and who watches the progress
     * @return empty if a stop left no entry at all
     */
    public Optional<Risk> soFar(BrakePlan plan, Sweep sweep) {
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(sweep, "sweep");
        SpeedPlan expected = expected(plan);
        List<EntryResult> entries = sweep.run(points, point -> drive(plan, expected, point)).stream()
                .flatMap(Optional::stream)
                .toList();
        return entries.isEmpty() ? Optional.empty() : Optional.of(risk(plan, entries));
    }

    /** The risk of one plan on the calling thread. */
    public Risk of(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        SpeedPlan expected = expected(plan);
        return risk(
                plan,
                IntStream.range(0, points.size())
                        .mapToObj(i -> drive(plan, expected, points.get(i)))
                        .toList());
    }

    /**
     * How often a plan fails, where that is seldom enough; on the calling thread and with fewer entries than
     * {@link #of}. The draws that miss the plan by most are driven first. It ends when more have failed than may; and
     * where none of the half that misses by most has failed, the other half, which misses by less, counts as made.
     *
     * @param plan with its brake point
     * @param allowed largest share that may fail, 0 to 1
     * @return empty where more fail
     * @throws org.foreload.conventions.InvalidValueException if the share is not from 0 to 1
     */
    public Optional<Proportion> seldomFailing(BrakePlan plan, double allowed) {
        Objects.requireNonNull(plan, "plan");
        Checks.within("failing_share", allowed, 0, 1);
        SpeedPlan expected = expected(plan);
        List<double[]> farthestFirst = points.stream()
                .sorted(Comparator.comparingDouble(point -> -missedBy(point)))
                .toList();
        int outer = (points.size() + 1) / 2;
        int failed = 0;
        for (int i = 0; i < points.size() && (i < outer || failed > 0); i++) {
            failed += drive(plan, expected, farthestFirst.get(i)).made() ? 0 : 1;
            if (failed > allowed * points.size()) {
                return Optional.empty();
            }
        }
        return Optional.of(new Proportion(failed, points.size()));
    }

    /** Square of the distance of a draw from the plan, each deviation in units of its own standard deviation. */
    private double missedBy(double[] point) {
        double[] scatters = new double[FREQUENCY];
        scatters[BRAKE_POINT] = scatter.brakePoint();
        scatters[PEAK] = scatter.peak();
        scatters[TIMING] = scatter.releaseTiming();
        scatters[RIPPLE] = scatter.ripple();
        scatters[GRIP] = scatter.grip();
        double square = 0;
        for (int k = 0; k < scatters.length; k++) {
            double deviation = scatters[k] == 0 ? 0 : LowDiscrepancy.normal(point[k]);
            square += deviation * deviation;
        }
        return square;
    }

    private static Risk risk(BrakePlan plan, List<EntryResult> entries) {
        List<Outcome> outcomes = entries.stream().map(EntryResult::outcome).toList();
        double[] times = entries.stream()
                .filter(EntryResult::made)
                .mapToDouble(EntryResult::time)
                .toArray();
        return Risk.of(plan, outcomes, times);
    }

    private EntryResult drive(BrakePlan plan, SpeedPlan expected, double[] point) {
        double grip = Math.max(LEAST_SHARE, 1 + deviation(scatter.grip(), point[GRIP]));
        Car car = study.simulator().car();
        return simulator(scatter.grip() == 0 ? car : scaled(car, grip)).probe(missed(plan, point), expected);
    }

    /** The speeds that the driver expects of a plan: those without scatter. */
    public SpeedPlan expected(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return simulator(study.simulator().car()).expected(plan);
    }

    /** One entry without scatter, of the same driver, who expects these speeds. */
    public EntryResult asPlanned(BrakePlan plan, SpeedPlan expected) {
        Objects.requireNonNull(plan, "plan");
        return simulator(study.simulator().car()).run(plan, expected);
    }

    /** One entry without scatter and with a foot that carries out the plan unchanged, whatever comes of it. */
    public EntryResult unmoved(BrakePlan plan) {
        EntrySimulator planned = study.simulator();
        return planned.with(planned.driver().with(Reaction.NONE)).run(plan);
    }

    private EntrySimulator simulator(Car car) {
        EntrySimulator planned = study.simulator();
        LeftFoot foot = planned.driver().leftFoot();
        return planned.with(
                car,
                planned.driver().with(foot.withSlowestBraking(SLOWEST_BRAKING).with(reaction)));
    }

    /** The plan as the driver happens to carry it out, by a point of the unit cube. */
    BrakePlan missed(BrakePlan plan, double[] point) {
        double timing = deviation(scatter.releaseTiming(), point[TIMING]);
        Release release = plan.release();
        return new Braking(
                        plan.peakDeceleration() * Math.max(LEAST_SHARE, 1 + deviation(scatter.peak(), point[PEAK])),
                        plan.buildUpTime(),
                        new Release(release.shape(), release.start() + timing, release.end() + timing),
                        plan.pickUp(),
                        scatter.ripple() == 0 ? plan.disturbance() : ripple(point))
                .from(plan.brakePoint() + deviation(scatter.brakePoint(), point[BRAKE_POINT]));
    }

    /** Each entry has a swing of its own size and frequency; a sine deviates by its amplitude over the root of two. */
    private Ripple ripple(double[] point) {
        double size = Math.min(1, Math.sqrt(2) * Math.abs(deviation(scatter.ripple(), point[RIPPLE])));
        return new Ripple(size, SLOWEST_RIPPLE + (QUICKEST_RIPPLE - SLOWEST_RIPPLE) * point[FREQUENCY]);
    }

    private static double deviation(double standard, double share) {
        return standard == 0 ? 0 : standard * LowDiscrepancy.normal(share);
    }

    private static Car scaled(Car car, double factor) {
        return car.withTyres(
                car.frontTyre().withFriction(factor), car.rearTyre().withFriction(factor));
    }
}
