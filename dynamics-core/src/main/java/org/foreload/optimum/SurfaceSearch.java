package org.foreload.optimum;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.study.LowDiscrepancy;
import org.foreload.study.Rounds;

/**
 * Searches from one release for a quicker one, a free shape or one of the same: surfaces are fitted to the entries
 * driven so far, the next entry is driven where they promise most, and they are fitted anew (R. G. Regis, Constrained
 * optimization by radial basis function interpolation for high-dimensional expensive black-box problems, Engineering
 * Optimization 46(2), 2014, from memory). Where they promise nothing, the next entry is one of which they know little
 * and that they take for nearly as good.
 */
final class SurfaceSearch {

    /** How far the first entries lie from the start, in units of the space; the brake point's twice as far. */
    private static final double DIFFERENCE = 0.25;

    /** Where the entry there does not make the corner, or goes too far, these shares of it are tried. */
    private static final double[] SIDES = {1, -1, 1.0 / 3, -1.0 / 3};

    /** Verdict from which an entry goes too far for its slope to say much of the start. */
    private static final double TOO_FAR = 1;

    /** How much earlier, m, an entry is tried whose start does not make the corner as a free shape. */
    private static final double[] EARLIER = {0.3, 0.4, 0.8, 1.5};

    /** The region searched at first, at most and at least, in units of the space. */
    private static final double FIRST_REGION = 0.6;

    private static final double LARGEST_REGION = 2;

    private static final double SMALLEST_REGION = 0.05;

    /** The region at first where the best lies near. */
    private static final double NEAR_REGION = 0.4;

    /** Nearer than this to an entry of its own, in units of the space, another study's says nothing. */
    private static final double SAME = 0.05;

    /** How it grows after an entry that keeps its promise, and shrinks after one that does not. */
    private static final double GROWS = 1.6;

    private static final double SHRINKS = 0.7;

    /** How it shrinks after an entry that only just goes beyond a limit: there the aim was wrong. */
    private static final double HARDLY_SHRINKS = 0.9;

    /** Verdict up to which that is so. */
    private static final double JUST_BEYOND = 0.1;

    /** Share of what is promised that an entry must gain for the region to grow. */
    private static final double PROMISE_KEPT = 0.25;

    /** How far within each limit an entry should lie at first; how little and how much that may become. */
    private static final double AIM = 0.02;

    private static final double LEAST_AIM = AIM / 8;

    private static final double MOST_AIM = 0.1;

    /** Share that is left of it after a gain. */
    private static final double LESS_AIM = 0.8;

    /** Seconds; a gain that counts as one. */
    private static final double GAIN = 1e-4;

    /** Entries in a row without a gain after which the search has arrived. */
    private static final int MOST_IDLE = 15;

    /** The same with nothing in hand, where the best lies on limits that bend: fewer end up to 0.04 s slower. */
    private static final int MOST_IDLE_ON_THE_EDGE = 30;

    /** So many entries, the nearest, make a surface. */
    private static final int POINTS = 50;

    /** The same with nothing in hand. */
    private static final int POINTS_ON_THE_EDGE = 80;

    /** Seconds that an entry may promise to lose if little is known there. */
    private static final double MAY_LOSE = 0.01;

    /** Points among which that one is chosen. */
    private static final int CHOICE = 64;

    private final EntryAtPoint.Source driver;
    private final ReleaseSpace space;
    private final double[] low;
    private final double[] high;
    private final Rounds rounds;
    private final int most;
    private final int mostIdle;
    private final int points;
    private final List<double[]> spread;
    private final List<EntryAtPoint> known = new ArrayList<>();
    private double aim = AIM;

    /**
     * @param driver drives; its space says which releases there are
     * @param entries about as many are driven at most
     * @param seed of the places of which little is known
     * @param rounds counts the entries
     */
    SurfaceSearch(EntryAtPoint.Source driver, int entries, long seed, Rounds rounds) {
        this.driver = driver;
        this.space = driver.space();
        this.low = space.low();
        this.high = space.high();
        this.rounds = rounds;
        this.most = entries;
        this.mostIdle = driver.onTheEdge() ? MOST_IDLE_ON_THE_EDGE : MOST_IDLE;
        this.points = driver.onTheEdge() ? POINTS_ON_THE_EDGE : POINTS;
        this.spread = LowDiscrepancy.points(space.size(), CHOICE, seed);
    }

    /** The entries that were driven, in their order. */
    List<EntryAtPoint> known() {
        return known;
    }

    /**
     * Searches.
     *
     * @return the quickest entry found that keeps all that is asked; empty for none
     */
    Optional<EntryAtPoint> from(BrakePlan start) {
        EntryAtPoint best = first(driver.point(start));
        if (!best.made()) {
            return Optional.empty();
        }
        around(best);
        return onwards(best, FIRST_REGION, true);
    }

    /**
     * Searches from the best entry of a study much like this one.
     *
     * @param others entries of that study
     * @param start the best of them
     * @return the quickest entry found that keeps all that is asked; empty for none
     */
    Optional<EntryAtPoint> near(List<EntryAtPoint> others, double[] start) {
        EntryAtPoint best = first(start);
        Optional<ReleaseSurfaces> there = ReleaseSurfaces.through(space, others, start, points);
        if (!best.made() || there.isEmpty()) {
            return Optional.empty();
        }
        double[] change = best.values();
        double[] values = there.get().values(best.x());
        for (int i = 0; i < change.length; i++) {
            change[i] -= values[i];
        }
        List<EntryAtPoint> own = List.copyOf(known);
        for (EntryAtPoint one : others) {
            if (own.stream().noneMatch(mine -> ReleaseSurfaces.squareDistance(mine.x(), one.x()) < SAME * SAME)) {
                known.add(one.changedBy(change));
            }
        }
        return onwards(best, NEAR_REGION, false);
    }

    /**
     * Goes on from what is known.
     *
     * @param curious whether to look where little is known, too
     */
    private Optional<EntryAtPoint> onwards(EntryAtPoint start, double firstRegion, boolean curious) {
        EntryAtPoint best = start;
        double region = firstRegion;
        for (int idle = 0; idle < mostIdle && driver.driven() < most && !rounds.stopped(); idle++) {
            Next to = next(best, region);
            if (!curious && !(to.promised() > 0)) {
                region *= SHRINKS;
                continue;
            }
            EntryAtPoint next = driven(to.x(), best.allowed() ? best.time() : Double.POSITIVE_INFINITY);
            if (next.allowed() && (!best.allowed() || next.time() < best.time())) {
                double gain = best.time() - next.time();
                region = gain > PROMISE_KEPT * to.promised() ? GROWS * region : region;
                idle = gain > GAIN ? -1 : idle;
                aim = Math.max(LEAST_AIM, LESS_AIM * aim);
                best = next;
            } else if (to.promised() > 0 && next.made() && next.verdict() > 0 && next.verdict() < JUST_BEYOND) {
                aim = Math.min(MOST_AIM, aim + AIM);
                region *= HARDLY_SHRINKS;
            } else {
                region *= SHRINKS;
            }
            region = Math.max(SMALLEST_REGION, Math.min(LARGEST_REGION, region));
        }
        rounds.skip(Math.max(0, most - driver.driven()));
        return Optional.of(best).filter(EntryAtPoint::allowed);
    }

    /**
     * The start, or a little earlier where it does not make the corner: a spline is not quite the shape it stands for.
     */
    private EntryAtPoint first(double[] start) {
        EntryAtPoint first = driven(start, Double.POSITIVE_INFINITY);
        double[] x = start.clone();
        for (int i = 0; i < EARLIER.length && !first.made(); i++) {
            x[ReleaseSpace.SHIFT] -= EARLIER[i] / ReleaseSpace.SHIFT_UNIT;
            first = driven(x.clone(), Double.POSITIVE_INFINITY);
        }
        return first;
    }

    /** One entry along each variable, each asked what it forgives: a search that sees a wall too late ends there. */
    private void around(EntryAtPoint start) {
        for (int i = 0; i < low.length; i++) {
            double first =
                    i == ReleaseSpace.LENGTH ? -DIFFERENCE : i == ReleaseSpace.SHIFT ? 2 * DIFFERENCE : DIFFERENCE;
            for (double side : SIDES) {
                double[] x = start.x().clone();
                x[i] = within(i, x[i] + side * first);
                if (x[i] != start.x()[i] && !tooFar(driven(x, Double.POSITIVE_INFINITY))) {
                    break;
                }
            }
        }
    }

    private static boolean tooFar(EntryAtPoint entry) {
        return !entry.made() || entry.verdict() >= TOO_FAR;
    }

    private double within(int variable, double value) {
        return Math.max(low[variable], Math.min(high[variable], value));
    }

    private EntryAtPoint driven(double[] x, double than) {
        EntryAtPoint entry = driver.at(x, than);
        known.add(entry);
        return entry;
    }

    /** Where to drive next, and what that is promised to gain, s; nothing where little is known. */
    private record Next(double[] x, double promised) {}

    private Next next(EntryAtPoint best, double region) {
        Optional<ReleaseSurfaces> fitted = ReleaseSurfaces.through(space, known, best.x(), points);
        if (fitted.isEmpty()) {
            return new Next(unknown(best, region), 0);
        }
        ReleaseSurfaces surfaces = fitted.get();
        double[] lowest = surfaces.lowest(best.x(), region, aim);
        double gain = surfaces.cost(best.x(), aim) - surfaces.cost(lowest, aim);
        double promised = best.time() - surfaces.time(lowest);
        if (gain > GAIN && (promised > GAIN || !best.allowed())) {
            return new Next(lowest, Math.max(GAIN, promised));
        }
        aim = Math.max(LEAST_AIM, aim / 2);
        return new Next(unknown(best, region, surfaces), 0);
    }

    /** Points spread over the middle of a region. */
    private List<double[]> spread(EntryAtPoint best, double region) {
        return spread.stream()
                .map(share -> {
                    double[] x = best.x().clone();
                    for (int i = 0; i < x.length; i++) {
                        x[i] = within(i, x[i] + region * ReleaseSurfaces.room(i) * (share[i] - 0.5));
                    }
                    return x;
                })
                .toList();
    }

    /** The point farthest from all that are known, of those that promise to lose little; else what loses least. */
    private double[] unknown(EntryAtPoint best, double region, ReleaseSurfaces surfaces) {
        double limit = surfaces.cost(best.x(), aim) + MAY_LOSE;
        double least = Double.POSITIVE_INFINITY;
        double farthest = -1;
        double[] found = null;
        for (double[] x : spread(best, region)) {
            double cost = surfaces.cost(x, aim);
            double distance = cost < limit ? fromKnown(x) : -1;
            if (distance > farthest || farthest < 0 && cost < least) {
                found = x;
                farthest = distance;
            }
            least = Math.min(least, cost);
        }
        return found == null ? unknown(best, region) : found;
    }

    private double[] unknown(EntryAtPoint best, double region) {
        double farthest = -1;
        double[] found = best.x();
        for (double[] x : spread(best, region)) {
            double distance = fromKnown(x);
            if (distance > farthest) {
                farthest = distance;
                found = x;
            }
        }
        return found;
    }

    private double fromKnown(double[] x) {
        return known.stream()
                .mapToDouble(one -> ReleaseSurfaces.squareDistance(one.x(), x))
                .min()
                .orElse(0);
    }
}
