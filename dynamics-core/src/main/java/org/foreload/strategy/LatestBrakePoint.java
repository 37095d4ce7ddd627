package org.foreload.strategy;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.ideal.IdealProfile;
import org.foreload.vehicle.Car;

/**
 * The latest brake point from which a release still makes the corner with the margin asked for.
 *
 * <p>Making it is not monotone in the brake point, so the stations are scanned from late to early, and the first change
 * from failing to making it is the one that is narrowed down. A brake point from which the corner is made, but not from
 * a metre earlier, does not count: the scan goes on.
 */
public final class LatestBrakePoint {

    /** Distance between scanned stations, m: shorter than most windows of brake points that make a corner. */
    private static final double SCAN_STEP = 4;

    /** Steps by which the scan starts later than the estimate. */
    private static final int STEPS_BEYOND = 2;

    /** The answer is no further than this, m, from the true change: well under a millisecond. */
    private static final double ACCURACY = 0.02;

    /** Distance, m, by which a driver may be early and must still make the corner. */
    private static final double SOLID = 1;

    /** Speed that a simulated entry carries, as a share of the bound's, where the search starts. */
    private static final double SPEED_SHARE = 0.97;

    /** Drift, as a multiple of the allowed one, that stands for an entry that did not make the corner at all. */
    private static final double OFF_TRACK = 20;

    private final IdealProfile bound;
    private final EntrySimulator simulator;
    private final Allowance allowance;

    /** Searches with this simulator for this margin; the bound says where to start. */
    public LatestBrakePoint(IdealProfile bound, EntrySimulator simulator, Allowance allowance) {
        this.bound = bound;
        this.simulator = simulator;
        this.allowance = allowance;
    }

    /**
     * What the search found.
     *
     * @param entry the entry from the latest brake point; if there is none, the attempt that came closest
     * @param found whether a brake point makes the corner with the margin asked for
     * @param inHand what the plan has {@link InHand in hand}, m; NaN if not found
     */
    public record Finding(EntryResult entry, boolean found, double inHand) {}

    /**
     * Searches for one release; the brake point of {@code plan} does not matter.
     *
     * @param plan peak, build-up time and release
     */
    public Finding find(BrakePlan plan) {
        double earliest = simulator.corner().path().start();
        double latest = plan.release().end();
        Attempt closest = null;
        Attempt later = null;
        int lockedStraight = 0;
        int idle = 0;
        double start = Math.max(Math.min(latest, estimate(plan) + STEPS_BEYOND * SCAN_STEP), earliest + SCAN_STEP);
        for (double point = start; point > earliest; point -= SCAN_STEP) {
            Attempt attempt = attempt(plan, point);
            if (attempt.met()) {
                Attempt last =
                        later == null && point < latest ? climb(plan, attempt, latest) : narrowed(plan, attempt, later);
                Attempt earlier = attempt(plan, Math.max(earliest, last.point() - SOLID));
                while (!earlier.met() && earlier.point() > point) {
                    last = narrowed(plan, attempt, earlier);
                    earlier = attempt(plan, Math.max(earliest, last.point() - SOLID));
                }
                if (earlier.met()) {
                    return confirmed(plan, last.point());
                }
                attempt = earlier; // Luck: who is a little early fails. The scan goes on.
            }
            if (closest == null || attempt.drift() < closest.drift()) {
                closest = attempt;
                idle = 0;
            } else if (attempt.entry().made() && ++idle == MOST_IDLE) {
                break; // Braking still earlier brings it no nearer: it is the release that takes the margin.
            }
            if (attempt.entry().event(EntryEvent.Kind.STOPPED).isPresent()) {
                break; // Braking still earlier only stops the car before the corner.
            }
            lockedStraight = locksStraight(attempt.entry()) ? lockedStraight + 1 : 0;
            if (lockedStraight == HOPELESS) {
                break; // The peak locks a wheel on the straight, wherever that is.
            }
            later = attempt;
        }
        BrakePlan nearest = closest == null
                ? plan.withBrakePoint(earliest)
                : closest.entry().plan();
        return new Finding(simulator.run(nearest), false, Double.NaN);
    }

    /**
     * The same search, and where it finds nothing, another one around a brake point that is known to make the corner or
     * nearly so: a window of brake points may be shorter than the steps of the scan. It too must make the corner from a
     * metre earlier.
     *
     * @param plan peak, build-up time and release
     * @param known brake point, m
     */
    public Finding find(BrakePlan plan, double known) {
        Finding scanned = find(plan);
        if (scanned.found()) {
            return scanned;
        }
        double earliest = simulator.corner().path().start();
        double latest = plan.release().end();
        Attempt made = attempt(plan, Math.max(earliest, Math.min(latest, known)));
        for (double back = ACCURACY; !made.met() && back <= SOLID; back *= 2) {
            made = attempt(plan, Math.max(earliest, made.point() - back));
        }
        if (!made.met()) {
            return scanned;
        }
        Attempt last = climb(plan, made, latest);
        Attempt earlier = attempt(plan, Math.max(earliest, last.point() - SOLID));
        return earlier.met() ? confirmed(plan, last.point()) : scanned;
    }

    /** Trials that make the corner and come no nearer to the margin after which the search ends. */
    private static final int MOST_IDLE = 5;

    /** Trials in a row with a wheel locked before turn-in after which the search ends. */
    private static final int HOPELESS = 4;

    private static boolean locksStraight(EntryResult entry) {
        double before = Math.min(0, entry.plan().release().start());
        return entry.events().stream()
                .anyMatch(event -> event.station() < before
                        && (event.kind() == EntryEvent.Kind.FRONT_LOCKS || event.kind() == EntryEvent.Kind.REAR_LOCKS));
    }

    /** One trial: where the foot came down, and how much of the margin it uses, 1 being all. */
    private record Attempt(double point, EntryResult entry, boolean met, double drift) {}

    /** The estimate was too early: later and later until it fails, or the brake is no longer used. */
    private Attempt climb(BrakePlan plan, Attempt from, double latest) {
        Attempt made = from;
        while (true) {
            Attempt next = attempt(plan, Math.min(made.point() + SCAN_STEP, latest));
            if (!next.met()) {
                return narrowed(plan, made, next);
            }
            made = next;
            if (made.point() >= latest) {
                return made;
            }
        }
    }

    /**
     * Narrows the change from making it to failing: false position on the logarithm of the drift, which is smooth as
     * long as the car stays on the track, with halving whenever that is slow.
     */
    private Attempt narrowed(BrakePlan plan, Attempt made, Attempt failing) {
        Attempt low = made;
        Attempt high = failing;
        boolean halve = false;
        while (high != null && high.point() - low.point() > ACCURACY) {
            double width = high.point() - low.point();
            double rise = Math.log(high.drift()) - Math.log(low.drift());
            double share = halve || !(rise > 0) ? 0.5 : -Math.log(low.drift()) / rise;
            double inside = Math.max(ACCURACY / 2, Math.min(width - ACCURACY / 2, share * width));
            Attempt next = attempt(plan, low.point() + inside);
            if (next.met()) {
                low = next;
            } else {
                high = next;
            }
            halve = high.point() - low.point() > width / 2;
        }
        return low;
    }

    /**
     * The answer, driven with full accuracy. Where the corner is only just made, the coarser trial may have made what
     * this does not; then a little earlier is tried.
     */
    private Finding confirmed(BrakePlan plan, double point) {
        double confirmed = Math.max(simulator.corner().path().start(), BrakePlan.earlier(point));
        EntryResult entry = simulator.run(plan.withBrakePoint(confirmed));
        for (double back = ACCURACY; !allowance.met(entry) && back <= FARTHEST_BACK; back *= 2) {
            confirmed = Math.max(simulator.corner().path().start(), BrakePlan.earlier(confirmed - back));
            entry = simulator.run(plan.withBrakePoint(confirmed));
        }
        if (!allowance.met(entry)) {
            return new Finding(entry, false, Double.NaN);
        }
        return withInHand(plan, entry);
    }

    /** The answer, from so much earlier that the plan has in hand what is asked for. */
    private Finding withInHand(BrakePlan plan, EntryResult latest) {
        EntryResult entry = latest;
        double inHand = InHand.of(simulator, entry.plan());
        for (int i = 0; i < SET_BACKS && inHand < allowance.inHand(); i++) {
            double back = Math.max(ACCURACY, allowance.inHand() - inHand);
            double earlier = BrakePlan.earlier(entry.plan().brakePoint() - back);
            EntryResult next = simulator.run(plan.withBrakePoint(earlier));
            if (!allowance.met(next)) {
                return new Finding(next, false, Double.NaN);
            }
            entry = next;
            inHand = InHand.of(simulator, entry.plan());
        }
        boolean enough = inHand >= allowance.inHand();
        return new Finding(entry, enough, enough ? inHand : Double.NaN);
    }

    /**
     * Times that an answer is set back for what it must have in hand. Setting back does not help a peak that is too
     * hard or a release that is too long for the rear axle: then the release has no answer.
     */
    private static final int SET_BACKS = 4;

    /** Farthest single step back, m, to confirm an answer: a scan step away, trials were made anyway. */
    private static final double FARTHEST_BACK = 2;

    private Attempt attempt(BrakePlan plan, double brakePoint) {
        BrakePlan moved = plan.withBrakePoint(brakePoint);
        EntryResult entry = simulator.probe(moved);
        boolean met = allowance.met(entry);
        double drift = entry.made() ? allowance.used(entry) : OFF_TRACK;
        return new Attempt(brakePoint, entry, met, Math.max(drift, 1e-3));
    }

    /**
     * Brake point, m, from which a car of constant brake force would come out of the release a little slower than the
     * bound: where the scan starts. It meets the speed that the car has gained on the approach until there. Where the
     * whole release would slow the car by more than that, it lies within the release.
     */
    public double estimate(BrakePlan plan) {
        double target =
                SPEED_SHARE * bound.speedAt(Math.max(0, Math.min(plan.release().end(), bound.minimumSpeedAt())));
        double[] left = areaLeft(plan.release());
        Car car = simulator.car();
        double lastAtFull = bound.brakePoint().orElse(plan.release().start());
        double point = Math.min(lastAtFull, plan.release().start());
        for (int i = 0; i < ROUNDS; i++) {
            double speed = bound.speedAt(Math.min(point, lastAtFull));
            double square = speed * speed;
            double drag = car.aerodynamics().drag((square + target * target) / 2)
                    / car.chassis().mass();
            double peak = plan.peakDeceleration();
            double full = ((square - target * target) / 2 - peak * left[0]) / (peak + drag);
            double there = full > 0
                    ? plan.release().start() - full
                    : whereLeft(plan.release(), left, (square - target * target) / 2 / peak);
            point = there - speed * plan.buildUpTime() / 2;
        }
        return point;
    }

    /** What is left of a release at equally spaced stations from its start to its end: metres at the full peak. */
    private static double[] areaLeft(Release release) {
        double[] left = new double[PARTS + 1];
        double part = (release.end() - release.start()) / PARTS;
        for (int i = PARTS - 1; i >= 0; i--) {
            left[i] = left[i + 1] + release.remaining(release.start() + (i + 0.5) * part) * part;
        }
        return left;
    }

    /** Station within a release at which so much of it is left. */
    private static double whereLeft(Release release, double[] left, double area) {
        int i = PARTS;
        while (i > 0 && left[i - 1] <= area) {
            i--;
        }
        double share = i == 0 || area <= 0 ? 0 : (area - left[i]) / (left[i - 1] - left[i]);
        return release.start() + (i - share) / PARTS * (release.end() - release.start());
    }

    /** Parts into which a release is cut to find what is left of it. */
    private static final int PARTS = 50;

    /** Rounds in which brake point and speed there settle on each other; each about halves the error, at least. */
    private static final int ROUNDS = 12;
}
