package org.foreload.optimum;

import java.util.Arrays;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;
import org.foreload.study.LinearStep;
import org.foreload.study.Slopes;

/**
 * Goes down from one release to a quicker one of the same shape, by sequential linear programming: time and what is
 * left of each limit are taken to change in proportion to peak, start, length and brake point, and each step is the one
 * that gains most within the limits and within a region that is trusted. Slopes are measured once, from one more entry
 * for each variable, and then {@linkplain Slopes learn} from each step; they are measured anew where steps no longer
 * gain.
 *
 * <p>A step counts if it keeps the margin, and from a metre earlier too, has in hand what is asked for, and is quicker.
 * What must be in hand is a limit like the others: the entries of a driver who is late, late off the brake or too hard
 * are measured as they come near the edge of the track, or near a wheel that stops. They are driven only where all else
 * holds. A step that ends beyond a limit, or so far within them that it is slower, is mended by its brake point.
 */
final class ReleaseDescent {

    /** How far slopes are measured, in units of the space: far enough that rounding does not show in them. */
    private static final double DIFFERENCE = 0.25;

    /** The region trusted at first and at most, and the smallest that is worth a step, in units of the space. */
    private static final double FIRST_REGION = 1;

    private static final double LARGEST_REGION = 3;

    private static final double SMALLEST_REGION = 0.1;

    /** The brake point may move so many times as far as the others: its slopes are the surest. */
    private static final double BRAKE_POINT_ROOM = 5;

    /** Seconds; a step that promises less is not worth an entry. */
    private static final double ARRIVED = 3e-4;

    /** Share of what a step promises that it must gain for the region to grow. */
    private static final double PROMISE_KEPT = 0.25;

    /** A step aims to stay so far within each limit, in its excess: slopes are never quite right. */
    private static final double AIM = 0.01;

    /** Corrections of the brake point after a step that ends beyond a limit. */
    private static final int CORRECTIONS = 3;

    /** Shortest correction, in units of the space. */
    private static final double SHORTEST_CORRECTION = 0.1;

    /** Longest correction, in units of the space, and the smallest slope that one believes. */
    private static final double LONGEST_CORRECTION = 10;

    private static final double LEAST_SLOPE = 0.02;

    private final Entries entries;
    private final double[] low;
    private final double[] high;
    private final BrakePlan start;
    private int left;
    private int own;

    /** The entries at the points of one space. */
    interface Entries {

        /** The space. */
        ReleaseSpace space();

        /** The point of a plan. */
        double[] point(BrakePlan plan);

        /** The plan at a point. */
        BrakePlan plan(double[] x);

        /** The entry at a point. */
        Tried at(double[] x);

        /** How far what must be in hand goes beyond its limits; as long at each point, none where nothing must be. */
        double[] slips(double[] x);

        /** Whether who is a metre early keeps the margin, too. */
        boolean early(double[] x);
    }

    /**
     * An entry at a point of the space.
     *
     * @param x the point
     * @param made whether the car makes the corner
     * @param time s
     * @param limits how far it goes beyond each limit
     */
    record Tried(double[] x, boolean made, double time, double[] limits) {

        boolean kept() {
            return made && Arrays.stream(limits).noneMatch(limit -> limit > 0);
        }

        /** Slopes that know of this entry, as seen from another: one that ends in the grass teaches nothing. */
        Slopes taught(Slopes slopes, Tried from) {
            if (!made) {
                return slopes;
            }
            double[] step = new double[x.length];
            for (int i = 0; i < step.length; i++) {
                step[i] = x[i] - from.x[i];
            }
            double[] changes = new double[Math.min(limits.length, from.limits.length)];
            for (int j = 0; j < changes.length; j++) {
                changes[j] = limits[j] - from.limits[j];
            }
            return slopes.learned(step, time - from.time, changes);
        }

        /** The same, with how far its slips go beyond their limits. */
        Tried with(double[] slips) {
            double[] all = Arrays.copyOf(limits, limits.length + slips.length);
            System.arraycopy(slips, 0, all, limits.length, slips.length);
            return new Tried(x, made, time, all);
        }

        /** Whether the limits from one on are kept, each by something. */
        boolean clear(int from) {
            return Arrays.stream(limits, from, limits.length).allMatch(limit -> limit < 0);
        }
    }

    /**
     * @param study car, corner, driver and margin
     * @param start a release that makes the corner with its brake point
     * @param entries tried, about at most
     */
    ReleaseDescent(CornerStudy study, BrakePlan start, int entries) {
        this(
                new Driven(
                        study.search(),
                        ReleaseSpace.of(
                                study,
                                start.release(),
                                study.lockLimit(),
                                start.buildUpTime(),
                                Optional.of(start.release().shape())),
                        new LockReserve(study)),
                start,
                entries);
    }

    ReleaseDescent(Entries entries, BrakePlan start, int most) {
        this.entries = entries;
        this.start = start;
        this.low = entries.space().low();
        this.high = entries.space().high();
        this.left = most;
    }

    /** The entries of a study. */
    private record Driven(BrakePointSearch search, ReleaseSpace space, LockReserve reserve) implements Entries {

        @Override
        public double[] point(BrakePlan plan) {
            return space.point(plan, search);
        }

        @Override
        public BrakePlan plan(double[] x) {
            return space.plan(x, search);
        }

        @Override
        public Tried at(double[] x) {
            Trial trial = search.trial(plan(x));
            return new Tried(x, trial.made(), trial.entry().time(), reserve.limits(trial));
        }

        @Override
        public double[] slips(double[] x) {
            return search.slips(plan(x)).stream()
                    .flatMapToDouble(LockReserve::ofSlip)
                    .toArray();
        }

        @Override
        public boolean early(double[] x) {
            return search.early(plan(x)).met();
        }
    }

    /** The quickest release found; empty if none is quicker than the start. */
    Optional<BrakePlan> quicker() {
        Tried first = at(entries.point(start));
        own = first.limits().length;
        Tried best = whole(first);
        if (!best.made()) {
            return Optional.empty();
        }
        Slopes slopes = measured(best, 1);
        int measured = 1;
        boolean found = false;
        double region = FIRST_REGION;
        while (left > 0) {
            Optional<double[]> step = region < SMALLEST_REGION ? Optional.empty() : step(best, slopes, region);
            if (step.isEmpty()) {
                if (measured > 1) {
                    break;
                }
                slopes = measured(best, measured == 0 ? 1 : -1);
                measured++;
                region = FIRST_REGION / 2;
                continue;
            }
            double promised = -slopes.change(step.get());
            Tried next = below(best, plus(best.x(), step.get()));
            slopes = next.taught(slopes, best);
            Mending mending = new Mending();
            for (int i = 0; i < CORRECTIONS && next.made() && !(next.kept() && next.time() < best.time()); i++) {
                Optional<double[]> mended = mending.next(next, slopes, best.time());
                if (mended.isEmpty()) {
                    break;
                }
                Tried again = below(best, mended.get());
                slopes = again.taught(slopes, next);
                next = again;
            }
            if (next.kept() && next.time() < best.time() && early(next)) {
                if (best.time() - next.time() > PROMISE_KEPT * promised) {
                    region = Math.min(LARGEST_REGION, 2 * region);
                }
                best = next;
                measured = 0;
                found = true;
            } else {
                region = Math.min(region, size(step.get())) / 2;
            }
        }
        return found ? Optional.of(entries.plan(best.x())) : Optional.empty();
    }

    /** Size of the region that a step needs. */
    private static double size(double[] step) {
        double most = 0;
        for (int i = 0; i < step.length; i++) {
            most = Math.max(most, Math.abs(step[i]) / room(i));
        }
        return most;
    }

    private static double room(int variable) {
        return variable == ReleaseSpace.SHIFT ? BRAKE_POINT_ROOM : 1;
    }

    private Tried at(double[] x) {
        left--;
        return entries.at(x);
    }

    /** The entry at a point, and what it has in hand where all else is kept and it is quicker than the best. */
    private Tried below(Tried best, double[] x) {
        Tried tried = at(x);
        return tried.kept() && tried.time() < best.time() ? whole(tried) : tried;
    }

    /** With what it has in hand. */
    private Tried whole(Tried tried) {
        if (!tried.made()) {
            return tried;
        }
        double[] slips = entries.slips(tried.x());
        left -= slips.length / 2;
        return tried.with(slips);
    }

    private boolean early(Tried tried) {
        left--;
        return entries.early(tried.x());
    }

    /**
     * Slopes from an entry along each variable.
     *
     * @param side 1 for the side to which quicker releases mostly lie, -1 for the other
     */
    private Slopes measured(Tried here, int side) {
        int variables = here.x().length;
        double[] time = new double[variables];
        double[][] limits = new double[here.limits().length][variables];
        for (int i = 0; i < variables; i++) {
            int along = i;
            double first = side * (i == ReleaseSpace.LENGTH ? -DIFFERENCE : DIFFERENCE);
            Optional<Tried> there = beside(here, along, first);
            if (there.isPresent()) {
                double by = there.get().x()[i] - here.x()[i];
                time[i] = (there.get().time() - here.time()) / by;
                for (int j = 0; j < limits.length; j++) {
                    limits[j][i] = finite((there.get().limits()[j] - here.limits()[j]) / by);
                }
            }
        }
        return new Slopes(time, limits);
    }

    /** An entry beside another: on the other side where this one is of no use, or of less. */
    private Optional<Tried> beside(Tried here, int variable, double difference) {
        Optional<Tried> one = moved(here, variable, difference);
        if (one.isPresent() && one.get().clear(own)) {
            return one;
        }
        Optional<Tried> other = moved(here, variable, -difference);
        return one.isEmpty() || other.isPresent() && other.get().clear(own) ? other : one;
    }

    private Optional<Tried> moved(Tried here, int variable, double difference) {
        double[] x = here.x().clone();
        x[variable] = Math.max(low[variable], Math.min(high[variable], x[variable] + difference));
        return x[variable] == here.x()[variable]
                ? Optional.empty()
                : Optional.of(whole(at(x))).filter(Tried::made);
    }

    /** A limit of which nothing is asked does not change. */
    private static double finite(double change) {
        return Double.isFinite(change) ? change : 0;
    }

    /** The step that promises most; empty if none promises enough. */
    private Optional<double[]> step(Tried here, Slopes slopes, double region) {
        double[] least = new double[low.length];
        double[] most = new double[low.length];
        for (int i = 0; i < low.length; i++) {
            least[i] = Math.max(low[i] - here.x()[i], -region * room(i));
            most[i] = Math.min(high[i] - here.x()[i], region * room(i));
        }
        double[] aimed = here.limits().clone();
        for (int j = 0; j < aimed.length; j++) {
            aimed[j] = Double.isNaN(aimed[j]) ? Double.NEGATIVE_INFINITY : Math.min(0, aimed[j] + AIM);
        }
        return LinearStep.of(slopes.cost(), aimed, slopes.limits(), least, most)
                .filter(step -> -slopes.change(step) > ARRIVED);
    }

    /** The brake point of a step that ends beyond a limit: earlier, and later again where that was too much. */
    private static final class Mending {

        private double kept = Double.NEGATIVE_INFINITY;
        private double missed = Double.POSITIVE_INFINITY;

        /** Where the first limit is just kept, by what is known; empty where that does not promise to be quicker. */
        Optional<double[]> next(Tried last, Slopes slopes, double than) {
            double here = last.x()[ReleaseSpace.SHIFT];
            kept = last.kept() ? Math.max(kept, here) : kept;
            missed = last.kept() ? missed : Math.min(missed, here);
            double there = here + room(last, slopes);
            if (!(there > kept && there < missed)) {
                there = 0.5 * (kept + missed);
            }
            double by = Math.abs(there - here);
            if (missed == Double.POSITIVE_INFINITY || by < SHORTEST_CORRECTION || by > LONGEST_CORRECTION) {
                return Optional.empty();
            }
            double time = last.time() + slopes.cost()[ReleaseSpace.SHIFT] * (there - here);
            if (!(time < than - ARRIVED)) {
                return Optional.empty();
            }
            double[] x = last.x().clone();
            x[ReleaseSpace.SHIFT] = there;
            return Optional.of(x);
        }

        private static double room(Tried tried, Slopes slopes) {
            double room = Double.POSITIVE_INFINITY;
            for (int j = 0; j < tried.limits().length; j++) {
                double slope = Math.max(LEAST_SLOPE, slopes.limits()[j][ReleaseSpace.SHIFT]);
                double left = -AIM - tried.limits()[j];
                room = left / slope < room ? left / slope : room;
            }
            return room;
        }
    }

    private static double[] plus(double[] x, double[] step) {
        double[] sum = x.clone();
        for (int i = 0; i < x.length; i++) {
            sum[i] += step[i];
        }
        return sum;
    }
}
