package org.foreload.optimum;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Search;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension;

/**
 * What the time of an entry above the ideal bound is made of. The causes are switched off one after another, each on
 * top of those before, and each time the best release is searched for anew: a car without lags wants another release
 * than one with them. A cause is charged with the time that its going saves. The order matters a little; it is always
 * the same, lags of the car before those of the foot: a foot that is down at once locks the wheels of a car that still
 * has to pitch. A part below zero means that the car is quicker with the cause than without: load that leaves the rear
 * axle late, for one, can help. Parts of a few milliseconds are no more than the accuracy of the searches.
 *
 * @param boundTime time of the bound, s
 * @param entryTime time of the entry that is explained, s
 * @param parts the causes, in the order in which they were switched off; their times sum to the difference
 * @param complete whether each search ran to its end; false after a stop
 */
public record Remainder(double boundTime, double entryTime, List<Part> parts, boolean complete) {

    /** Copies the parts. */
    public Remainder {
        parts = List.copyOf(parts);
    }

    /**
     * One cause.
     *
     * @param cause in words
     * @param time s
     */
    public record Part(String cause, double time) {}

    /** A time constant of the brakes, s, too short to matter. */
    private static final double AT_ONCE = 0.005;

    /** Time, s, in which a foot without build-up reaches its peak: not zero, so that the pressure has no step. */
    private static final double SUDDEN = 0.01;

    /** Friction share of an exit driven to the limit. */
    private static final double WHOLE = 0.999;

    /** Releases looked at for each cause. */
    private static final int EVALUATIONS = 160;

    /** Radii of the searches, as for the best release. */
    private static final double[] RADII = {1, 0.4};

    /** Gap between entry and bound, s. */
    public double gap() {
        return entryTime - boundTime;
    }

    /** One cause switched off: in words, the study without it, and the time in which the foot reaches the peak. */
    private record Variant(String cause, CornerStudy study, double buildUpTime) {}

    private record Found(BrakePlan plan, double driftShare, double time) {}

    /**
     * Explains an entry, some six hundred releases long.
     *
     * @param study car, corner and driver that it was made with
     * @param entry an entry that made the corner, from its latest brake point
     * @param threads number of threads
     * @param progress told of the releases looked at; a stop leaves the parts less well searched for
     */
    public static Remainder of(CornerStudy study, EntryResult entry, int threads, Sweep.Progress progress) {
        List<Variant> variants = variants(study, entry.plan().buildUpTime());
        Rounds rounds = new Rounds(threads, progress, variants.size() * EVALUATIONS);
        double driftShare =
                Math.min(1, entry.farthestOffset() / study.allowance().drift());
        Found own = new Found(entry.plan(), driftShare, entry.time());
        List<Found> found = rounds.run(variants, variant -> search(variant, own, rounds));
        List<Part> parts = new ArrayList<>();
        double last = entry.time();
        Found before = own;
        for (int i = 0; i < found.size(); i++) {
            Found here = better(variants.get(i), found.get(i), before, rounds);
            parts.add(new Part(variants.get(i).cause(), last - here.time()));
            last = here.time();
            before = here;
        }
        parts.add(new Part(
                "driver, sideslip and cornering drag", last - study.bound().time()));
        return new Remainder(study.bound().time(), entry.time(), parts, rounds.complete());
    }

    /** The search may have ended on a worse release than the one that was best before the cause was switched off. */
    private static Found better(Variant variant, Found found, Found before, Rounds rounds) {
        if (found.time() <= before.time()) {
            return found;
        }
        Found again = search(variant, before, rounds);
        return again.time() < found.time() ? again : found;
    }

    private static List<Variant> variants(CornerStudy study, double buildUpTime) {
        Car car = study.simulator().car();
        Car rigid = withoutLags(car);
        DriverSettings driver = study.simulator().driver();
        DriverSettings quickFoot = driver.withBrakeLag(Math.min(AT_ONCE, driver.brakeLag()));
        DriverSettings wholeExit = quickFoot.withExitFriction(Math.max(WHOLE, driver.exitFriction()));
        double sudden = Math.min(SUDDEN, buildUpTime);
        return List.of(
                new Variant("release shape", study, buildUpTime),
                new Variant("tyre, pitch and roll lags", study.with(rigid, driver), buildUpTime),
                new Variant("brake build-up and lag", study.with(rigid, quickFoot), sudden),
                new Variant("margin kept on the exit", study.with(rigid, wholeExit), sudden));
    }

    private static Found search(Variant variant, Found from, Rounds rounds) {
        Found start = start(variant, from, rounds);
        ReleaseCost cost = new ReleaseCost(variant.study(), start.plan(), start.driftShare(), Optional.empty());
        ReleaseSpace space = cost.space();
        double[] point = cost.start();
        double time = Double.NaN;
        int left = EVALUATIONS - PEAKS.length - 1;
        for (int i = 0; i < RADII.length && left > 0; i++) {
            Search.Found found = new Search(space.low(), space.high(), left, rounds::stopped)
                    .nearby(rounds.counting(cost), point, RADII[i]);
            point = found.point();
            time = found.cost();
            left -= found.evaluations();
        }
        rounds.skip(left);
        return new Found(cost.plan(point), ReleaseSpace.driftShare(point), time);
    }

    /** Shares of the peak that a search tries to begin with: what was hard braking before may lock a wheel now. */
    private static final double[] PEAKS = {1, 0.95, 0.88, 0.8};

    /** The quickest of a few plans to begin with: the one before with its peak or less, and the ideal's own. */
    private static Found start(Variant variant, Found from, Rounds rounds) {
        QuickBrakePoint quick = new QuickBrakePoint(variant.study());
        BrakePlan before = from.plan();
        List<BrakePlan> plans = new ArrayList<>();
        for (double share : PEAKS) {
            plans.add(new BrakePlan(
                    before.brakePoint(), before.peakDeceleration() * share, variant.buildUpTime(), before.release()));
        }
        IdealRelease.of(variant.study(), variant.buildUpTime()).ifPresent(plans::add);
        double shift = before.brakePoint() - quick.estimate(before);
        Found best = new Found(plans.get(0), from.driftShare(), Double.POSITIVE_INFINITY);
        for (BrakePlan plan : plans) {
            QuickBrakePoint.Answer answer = quick.find(plan, quick.estimate(plan) + shift, from.driftShare());
            if (answer.time() < best.time()) {
                best = new Found(plan.withBrakePoint(answer.brakePoint()), from.driftShare(), answer.time());
            }
            rounds.count();
        }
        return best;
    }

    private static Car withoutLags(Car car) {
        Suspension suspension = car.suspension();
        return car.with(new Suspension(
                        suspension.frontRollStiffnessShare(),
                        suspension.frontRollCenterHeight(),
                        suspension.rearRollCenterHeight(),
                        Suspension.Response.RIGID,
                        Suspension.Response.RIGID))
                .withTyres(withoutLag(car.frontTyre()), withoutLag(car.rearTyre()));
    }

    private static Tyre withoutLag(Tyre tyre) {
        return tyre instanceof FrictionTyre friction ? friction.withRelaxationLength(0) : tyre;
    }
}
