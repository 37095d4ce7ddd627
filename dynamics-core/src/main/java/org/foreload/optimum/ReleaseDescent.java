package org.foreload.optimum;

import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Trial;
import org.foreload.study.LinearStep;

/**
 * Goes down from one release to a quicker one of the same shape, by sequential linear programming: time and what is
 * left of each limit are taken to change in proportion to peak, start, length and brake point, and each step is the one
 * that gains most within the limits and within a region that is trusted. Slopes are measured once, from one more entry
 * for each variable, and then learn from each step (C. G. Broyden, A class of methods for solving nonlinear
 * simultaneous equations, Mathematics of Computation 19, 1965, from memory); they are measured anew where steps no
 * longer gain.
 *
 * <p>A step counts if it keeps the margin, and from a metre earlier too, has in hand what is asked for, and is quicker.
 * These further entries are driven only where all else holds.
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

    /** So much more it stays within what grip and locking leave after each step that has too little in hand. */
    private static final double TIGHTER = 0.1;

    /** Corrections of the brake point after a step that ends beyond a limit. */
    private static final int CORRECTIONS = 2;

    /** A correction goes this much farther than it would have to. */
    private static final double BEYOND = 1.1;

    /** Longest correction, in units of the space, and the smallest slope that one believes. */
    private static final double LONGEST_CORRECTION = 10;

    private static final double LEAST_SLOPE = 0.02;

    /** From this limit on they are about grip: rear axle, and wheels that stop. */
    private static final int OF_GRIP = 3;

    private final Entries entries;
    private final double[] low;
    private final double[] high;
    private final BrakePlan start;
    private int left;
    private double tighter;

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

        /** Whether who is early keeps the margin, too, and the plan at a point has in hand what is asked for. */
        boolean forgives(double[] x);
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
            boolean kept = made;
            for (double limit : limits) {
                kept &= limit <= 0;
            }
            return kept;
        }
    }

    /** How time and each limit change along each variable. */
    private record Slopes(double[] time, double[][] limits) {

        /** The same after a step of which the outcome is known: right for that step, and otherwise as before. */
        Slopes learned(Tried from, Tried to) {
            double[] step = new double[time.length];
            for (int i = 0; i < step.length; i++) {
                step[i] = to.x()[i] - from.x()[i];
            }
            double[][] all = new double[limits.length][];
            for (int j = 0; j < all.length; j++) {
                all[j] = learned(limits[j], step, finite(to.limits()[j] - from.limits()[j]));
            }
            return new Slopes(learned(time, step, to.time() - from.time()), all);
        }

        private static double[] learned(double[] slopes, double[] step, double change) {
            double off = (change - along(slopes, step)) / along(step, step);
            double[] learned = slopes.clone();
            for (int i = 0; i < learned.length; i++) {
                learned[i] += off * step[i];
            }
            return learned;
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
        public boolean forgives(double[] x) {
            BrakePlan plan = plan(x);
            return search.early(plan).met() && search.leftWithNothingInHand(plan) >= 0;
        }
    }

    /** The quickest release found; empty if none is quicker than the start. */
    Optional<BrakePlan> quicker() {
        Tried best = at(entries.point(start));
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
            double promised = -along(slopes.time(), step.get());
            Tried next = at(plus(best.x(), step.get()));
            Tried before = best;
            for (int i = 0; next.made(); i++) {
                slopes = slopes.learned(before, next);
                Optional<Tried> corrected =
                        next.kept() || i == CORRECTIONS ? Optional.empty() : corrected(next, slopes);
                if (corrected.isEmpty()) {
                    break;
                }
                before = next;
                next = corrected.get();
            }
            boolean quicker = next.kept() && next.time() < best.time();
            if (quicker && forgives(next)) {
                if (best.time() - next.time() > PROMISE_KEPT * promised) {
                    region = Math.min(LARGEST_REGION, 2 * region);
                }
                best = next;
                measured = 0;
                found = true;
            } else {
                tighter += quicker ? TIGHTER : 0;
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

    private boolean forgives(Tried tried) {
        left -= 4;
        return entries.forgives(tried.x());
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
            Optional<Tried> there = beside(here, along, first).or(() -> beside(here, along, -first));
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

    /** An entry beside another, if there is room and the car makes the corner. */
    private Optional<Tried> beside(Tried here, int variable, double difference) {
        double[] x = here.x().clone();
        x[variable] = Math.max(low[variable], Math.min(high[variable], x[variable] + difference));
        return x[variable] == here.x()[variable]
                ? Optional.empty()
                : Optional.of(at(x)).filter(Tried::made);
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
            aimed[j] = Math.min(0, aimed[j] + AIM + (j >= OF_GRIP ? tighter : 0));
        }
        return LinearStep.of(slopes.time(), aimed, slopes.limits(), least, most)
                .filter(step -> -along(slopes.time(), step) > ARRIVED);
    }

    /** The same from a little earlier, where that leads back within the limits. */
    private Optional<Tried> corrected(Tried beyond, Slopes slopes) {
        double earlier = 0;
        for (int j = 0; j < beyond.limits().length; j++) {
            double slope = Math.max(LEAST_SLOPE, slopes.limits()[j][ReleaseSpace.SHIFT]);
            earlier = Math.max(earlier, BEYOND * beyond.limits()[j] / slope);
        }
        if (earlier > LONGEST_CORRECTION) {
            return Optional.empty();
        }
        double[] x = beyond.x().clone();
        x[ReleaseSpace.SHIFT] -= earlier;
        return Optional.of(at(x));
    }

    private static double along(double[] slopes, double[] step) {
        double sum = 0;
        for (int i = 0; i < slopes.length; i++) {
            sum += slopes[i] * step[i];
        }
        return sum;
    }

    private static double[] plus(double[] x, double[] step) {
        double[] sum = x.clone();
        for (int i = 0; i < x.length; i++) {
            sum[i] += step[i];
        }
        return sum;
    }
}
