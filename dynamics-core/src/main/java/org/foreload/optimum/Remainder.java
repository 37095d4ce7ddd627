package org.foreload.optimum;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Rounds;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension;

/**
 * What the time of an entry above the ideal bound is made of. The causes are switched off one after another, each on
 * top of those before, and each time the best release is found again: a car without lags wants another release than one
 * with them. A cause is charged with the time that its going saves. The order matters a little; it is always the same,
 * lags of the car before those of the foot: a foot that is down at once locks the wheels of a car that still has to
 * pitch. A part below zero means that the car is quicker with the cause than without: load that leaves the rear axle
 * late, for one, can help. Parts of two or three hundredths of a second may be no more than luck of the searches.
 *
 * @param boundTime time of the bound, s
 * @param entryTime time of the entry that is explained, s
 * @param parts the causes, in the order in which they were switched off; their times sum to the difference
 * @param complete whether each search ran to its end; false after a stop
 */
public record Remainder(double boundTime, double entryTime, List<Part> parts, boolean complete) {

    /** Copies the parts. */
    public Remainder {
        parts = List.copyOf(Objects.requireNonNull(parts, "parts"));
    }

    /**
     * One cause.
     *
     * @param cause in words
     * @param time s
     */
    public record Part(String cause, double time) {

        /** Refuses null. */
        public Part {
            Objects.requireNonNull(cause, "cause");
        }
    }

    /** A time constant of the brakes, s, too short to matter. */
    private static final double AT_ONCE = 0.005;

    /** Time, s, in which a foot without build-up reaches its peak: not zero, so that the pressure has no step. */
    private static final double SUDDEN = 0.01;

    /** Friction share of an exit driven to the limit. */
    private static final double WHOLE = 0.999;

    /** Most entries tried in each search from a neighbour's release. */
    private static final int EVALUATIONS = 120;

    /** A search for each case that is long enough for most: one restart that goes on once, two hundred entries long. */
    public static final BestRelease EACH = new BestRelease(1, 1, 200, 0);

    /** Gap between entry and bound, s. */
    public double gap() {
        return entryTime - boundTime;
    }

    /** One cause switched off: in words, the study without it, and the time in which the foot reaches the peak. */
    record Variant(String cause, CornerStudy study, double buildUpTime) {
        /** Whether nothing is switched off but the shape of the release. */
        boolean asGiven() {
            return cause.equals(SHAPE);
        }
    }

    private static final String SHAPE = "release shape";

    /**
     * Explains an entry.
     *
     * @param study car, corner and driver that it was made with
     * @param entry an entry that made the corner, from its latest brake point
     * @param each the search that each case gets for itself; its build-up time is replaced by that of the case
     * @param threads number of threads
     * @param progress hears of the entries tried; a stop leaves the parts less well searched for
     */
    public static Remainder of(
            CornerStudy study, EntryResult entry, BestRelease each, int threads, Sweep.Progress progress) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(each, "each");
        Objects.requireNonNull(progress, "progress");
        return of(study, entry, variants(study, entry.plan().buildUpTime()), each, threads, progress);
    }

    /**
     * The same for the entry that a longer search has found: its release is not searched again, and is no cause.
     *
     * @param best the best entry of the study
     */
    public static Remainder ofBest(
            CornerStudy study, EntryResult best, BestRelease each, int threads, Sweep.Progress progress) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(each, "each");
        Objects.requireNonNull(progress, "progress");
        List<Variant> variants = variants(study, best.plan().buildUpTime());
        return of(study, best, variants.subList(1, variants.size()), each, threads, progress);
    }

    private static Remainder of(
            CornerStudy study,
            EntryResult entry,
            List<Variant> variants,
            BestRelease each,
            int threads,
            Sweep.Progress progress) {
        int most = Math.min(EVALUATIONS, each.evaluations());
        int total = variants.size() * (each.total() + most) + 2 * (variants.size() - 1) * most;
        Rounds rounds = new Rounds(threads, progress, total);
        Neighbourhood.Best known = new Neighbourhood.Best(entry.plan(), entry.time());
        List<Neighbourhood.Best> own =
                first(rounds.each(variants, variant -> own(variant, each, known, rounds.within())));
        List<Integer> cases = IntStream.range(0, own.size()).boxed().toList();
        List<Neighbourhood.Best> again = or(
                rounds.each(
                        cases,
                        i -> better(variants.get(i), own.get(i), List.of(i == 0 ? known : own.get(i)), most, rounds)),
                own);
        List<Neighbourhood.Best> found = or(
                rounds.each(cases, i -> better(variants.get(i), again.get(i), neighbours(again, i), most, rounds)),
                again);
        List<Part> parts = new ArrayList<>();
        double last = entry.time();
        for (int i = 0; i < found.size(); i++) {
            double here = found.get(i).time();
            parts.add(new Part(variants.get(i).cause(), last - here));
            last = here;
        }
        parts.add(new Part(
                found.size() < variants.size() ? NOT_SEARCHED : DRIVER,
                last - study.bound().time()));
        return new Remainder(study.bound().time(), entry.time(), parts, rounds.complete());
    }

    private static final String DRIVER = "driver, sideslip and cornering drag";

    /** After a stop so early that not every cause has been searched: the rest holds more than the driver. */
    private static final String NOT_SEARCHED = "causes not searched, and " + DRIVER;

    /** The results up to the first that a stop left out: each cause builds on the one before. */
    static List<Neighbourhood.Best> first(List<Optional<Neighbourhood.Best>> found) {
        return found.stream()
                .takeWhile(Optional::isPresent)
                .map(Optional::orElseThrow)
                .toList();
    }

    /** What was found, or in its place what was known before. */
    static List<Neighbourhood.Best> or(List<Optional<Neighbourhood.Best>> found, List<Neighbourhood.Best> before) {
        return IntStream.range(0, before.size())
                .mapToObj(i -> found.get(i).orElse(before.get(i)))
                .toList();
    }

    /**
     * What a case comes to by itself: a car without a cause may want a release that is nowhere near the one with it.
     * Where its search finds nothing, or nothing better for the car as it is, the release that is known.
     */
    static Neighbourhood.Best own(Variant variant, BestRelease each, Neighbourhood.Best known, Rounds rounds) {
        return each.withBuildUpTime(variant.buildUpTime())
                .find(variant.study(), rounds)
                .entry()
                .map(entry -> new Neighbourhood.Best(entry.plan(), entry.time()))
                .filter(found -> !variant.asGiven() || found.time() < known.time())
                .orElse(known);
    }

    /** What the searches with one cause more and with one cause less came to: good places to begin, both. */
    static List<Neighbourhood.Best> neighbours(List<Neighbourhood.Best> found, int i) {
        List<Neighbourhood.Best> neighbours = new ArrayList<>();
        if (i > 0) {
            neighbours.add(found.get(i - 1));
        }
        if (i + 1 < found.size()) {
            neighbours.add(found.get(i + 1));
        }
        return neighbours;
    }

    /** The quickest of what is known of a case and of what searches from its neighbours' releases find. */
    static Neighbourhood.Best better(
            Variant variant, Neighbourhood.Best found, List<Neighbourhood.Best> neighbours, int most, Rounds rounds) {
        Neighbourhood.Best best = found;
        for (Neighbourhood.Best neighbour : neighbours) {
            Neighbourhood.Best again = search(variant, List.of(neighbour, found), most, rounds);
            best = again.time() < best.time() ? again : best;
        }
        return best;
    }

    /** The cases in their order, each with one cause less than the one before. */
    static List<Variant> variants(CornerStudy study, double buildUpTime) {
        Car car = study.simulator().car();
        Car stiff = withoutBodyLags(car);
        Car rigid = stiff.withTyres(withoutLag(car.frontTyre()), withoutLag(car.rearTyre()));
        DriverSettings driver = study.simulator().driver();
        DriverSettings quickFoot = driver.with(
                driver.leftFoot().withLag(Math.min(AT_ONCE, driver.leftFoot().lag())));
        DriverSettings wholeExit = quickFoot.with(driver.rightFoot()
                .withExitFriction(Math.max(WHOLE, driver.rightFoot().exitFriction())));
        double sudden = Math.min(SUDDEN, buildUpTime);
        return List.of(
                new Variant(SHAPE, study, buildUpTime),
                new Variant("pitch and roll lags", study.with(stiff, driver), buildUpTime),
                new Variant("tyre lags", study.with(rigid, driver), buildUpTime),
                new Variant("brake build-up and lag", study.with(rigid, quickFoot), sudden),
                new Variant("margin kept on the exit", study.with(rigid, wholeExit), sudden));
    }

    private static Neighbourhood.Best search(Variant variant, List<Neighbourhood.Best> from, int most, Rounds rounds) {
        BrakePlan start = RestOfRelease.of(start(variant, from));
        double hardest = new LockReserve(variant.study()).hardest(variant.buildUpTime());
        ReleaseSpace space =
                ReleaseSpace.of(variant.study(), start.release(), hardest, start.buildUpTime(), Optional.empty());
        EntryAtPoint.Driver driver = new EntryAtPoint.Driver(variant.study(), space, rounds);
        return new SurfaceSearch(driver, most, SEED, rounds)
                .from(start)
                .map(found -> new Neighbourhood.Best(driver.plan(found.x()), found.time()))
                .orElseGet(() -> new Neighbourhood.Best(start, Double.POSITIVE_INFINITY));
    }

    private static final long SEED = 1;

    /** Shares of the peak that a search tries to begin with: what was hard braking before may lock a wheel now. */
    private static final double[] PEAKS = {1, 0.95, 0.88, 0.8};

    /** The quickest of a few plans to begin with: those given with their peak or less, and the ideal's own. */
    static BrakePlan start(Variant variant, List<Neighbourhood.Best> from) {
        QuickStart quick = new QuickStart(variant.study());
        BrakePlan best = from.get(0).plan();
        double least = Double.POSITIVE_INFINITY;
        for (Neighbourhood.Best one : from) {
            BrakePlan before = one.plan();
            double shift = before.brakePoint() - quick.estimate(before.braking());
            for (double share : PEAKS) {
                Braking braking =
                        Braking.of(before.peakDeceleration() * share, variant.buildUpTime(), before.release());
                Neighbourhood.Best found = quick.latest(braking, quick.estimate(braking) + shift);
                if (found.time() < least) {
                    least = found.time();
                    best = found.plan();
                }
            }
        }
        double hardest = new LockReserve(variant.study()).hardest(variant.buildUpTime());
        for (Braking ideal : IdealRelease.all(variant.study(), variant.buildUpTime(), hardest)) {
            Neighbourhood.Best found = quick.latest(ideal);
            if (found.time() < least) {
                least = found.time();
                best = found.plan();
            }
        }
        return best;
    }

    private static Car withoutBodyLags(Car car) {
        Suspension rigid = car.suspension().withPitch(Suspension.Response.RIGID).withRoll(Suspension.Response.RIGID);
        return car.with(rigid);
    }

    private static Tyre withoutLag(Tyre tyre) {
        return tyre instanceof FrictionTyre friction ? friction.withRelaxationLength(0) : tyre;
    }
}
