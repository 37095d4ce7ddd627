package org.foreload.sensitivity;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Margins;
import org.foreload.optimum.Nearby;
import org.foreload.optimum.QuickBrakePoint;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;

/**
 * What one unit of each number of car, tyres, corner, driver and plan is worth around the best entry, by differences to
 * both sides. For each changed car, corner or driver the best release is searched for anew, near the known one: on the
 * edge of sliding the old release would lock a wheel or run wide. Each difference is taken with the whole change and
 * with half of it; where the two disagree the number does not act in proportion, or its effect is lost in the accuracy
 * of the searches, some milliseconds, and the row says so.
 *
 * @param rows the largest change of time first; rows without a time last
 * @param complete whether every knob was turned; false after a stop
 */
public record Sensitivity(List<Row> rows, boolean complete) {

    /** Disagreement of whole and half change, as a share, up to which a number acts in proportion. */
    private static final double STEADY_SHARE = 0.15;

    /** Disagreement, s, below which it does not matter: the accuracy of the times. */
    private static final double STEADY_TIME = 0.0004;

    /** Entries looked at in each search for the best release of a changed setup: it begins near it. */
    private static final int ENTRIES = 120;

    /** Copies the rows. */
    public Sensitivity {
        rows = List.copyOf(rows);
    }

    /**
     * One number.
     *
     * @param parameter its name, as in the files
     * @param unit its unit
     * @param change how much more of it
     * @param timeChange s; NaN where the corner was not made on either side
     * @param frontMarginChange change of the front axle's unused share of friction; NaN likewise
     * @param rearMarginChange the same at the rear
     * @param edgeMarginChange change of the distance to the edge of the track, m
     * @param steady whether half the change does half of it
     */
    public record Row(
            String parameter,
            String unit,
            double change,
            double timeChange,
            double frontMarginChange,
            double rearMarginChange,
            double edgeMarginChange,
            boolean steady) {}

    /** Time and margins; NaN where the corner was not made. */
    private record Point(double time, double front, double rear, double edge) {

        static final Point NONE = new Point(Double.NaN, Double.NaN, Double.NaN, Double.NaN);

        boolean made() {
            return !Double.isNaN(time);
        }

        Point per(double factor, Point from) {
            return new Point(
                    (time - from.time) * factor,
                    (front - from.front) * factor,
                    (rear - from.rear) * factor,
                    (edge - from.edge) * factor);
        }
    }

    /**
     * Turns every knob of an entry.
     *
     * @param study car, corner and driver that it was made with
     * @param entry the best entry, or one near it
     * @param sweep on how many threads, and who is told of progress
     */
    public static Sensitivity of(CornerStudy study, EntryResult entry, Sweep sweep) {
        return of(study, entry, Knobs.of(setup(study, entry)), ENTRIES, sweep);
    }

    /**
     * Turns some knobs of an entry.
     *
     * @param study car, corner and driver that it was made with
     * @param entry the best entry, or one near it
     * @param knobs which
     * @param entries looked at in each search for the best release of a changed setup
     * @param sweep on how many threads, and who is told of progress
     */
    public static Sensitivity of(CornerStudy study, EntryResult entry, List<Knob> knobs, int entries, Sweep sweep) {
        Around around = new Around(study, setup(study, entry), entries);
        List<Optional<Row>> found = sweep.run(knobs, around::row);
        List<Row> rows = found.stream()
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingDouble(
                        row -> Double.isNaN(row.timeChange()) ? 1 : -Math.abs(row.timeChange())))
                .toList();
        return new Sensitivity(rows, found.stream().allMatch(Optional::isPresent));
    }

    private static Setup setup(CornerStudy study, EntryResult entry) {
        return new Setup(
                study.simulator().car(),
                study.simulator().corner(),
                study.simulator().driver(),
                entry.plan());
    }

    /** The row of a parameter, if it has one. */
    public Optional<Row> row(String parameter) {
        return rows.stream().filter(row -> row.parameter().equals(parameter)).findFirst();
    }

    /** The neighbourhood of one setup. */
    private static final class Around {
        private final CornerStudy study;
        private final Setup setup;
        private final double peakShare;
        private final double shift;
        private final int entries;

        Around(CornerStudy study, Setup setup, int entries) {
            this.entries = entries;
            this.study = study;
            this.setup = setup;
            this.peakShare = setup.plan().peakDeceleration() / study.lockLimit();
            this.shift = setup.plan().brakePoint() - new QuickBrakePoint(study).estimate(setup.plan());
        }

        Row row(Knob knob) {
            Point whole = difference(knob, knob.change());
            Point half = difference(knob, knob.change() / 2);
            Point said = whole.made() ? whole : half.per(2, new Point(0, 0, 0, 0));
            double apart = Math.abs(whole.time() - 2 * half.time());
            boolean steady = apart <= Math.max(STEADY_TIME, STEADY_SHARE * Math.abs(whole.time()));
            return new Row(
                    knob.parameter().name(),
                    knob.parameter().unit(),
                    knob.change(),
                    said.time(),
                    said.front(),
                    said.rear(),
                    said.edge(),
                    steady);
        }

        /** Change for one step upwards: from both sides, or from the one that makes the corner. */
        private Point difference(Knob knob, double step) {
            Point up = at(knob, step);
            Point down = at(knob, -step);
            if (up.made() && down.made()) {
                return up.per(0.5, down);
            }
            Point here = at(knob, 0);
            if (up.made()) {
                return up.per(1, here);
            }
            return down.made() ? down.per(-1, here) : Point.NONE;
        }

        private Point at(Knob knob, double step) {
            Setup turned;
            try {
                turned = knob.parameter().with(setup, knob.parameter().of(setup) + step);
                if (knob.kind() == Knob.Kind.PLAN) {
                    return point(study.simulator().run(turned.plan()));
                }
                CornerStudy there = CornerStudy.of(
                        turned.car(),
                        turned.corner(),
                        turned.driver(),
                        study.simulator().settings(),
                        study.allowance());
                return best(there, turned.plan());
            } catch (InvalidValueException impossible) {
                return Point
                        .NONE; // No such car, or none that could come at this speed: nothing to be said to this side.
            }
        }

        private Point best(CornerStudy there, BrakePlan plan) {
            BrakePlan scaled =
                    new BrakePlan(plan.brakePoint(), peakShare * there.lockLimit(), plan.buildUpTime(), plan.release());
            QuickBrakePoint quick = new QuickBrakePoint(there);
            BrakePlan start = quick.near(scaled, quick.estimate(scaled) + shift);
            Nearby best = Nearby.search(there, start, entries, () -> false);
            Point run = point(there.simulator().run(best.plan()));
            return run.made() ? new Point(best.time(), run.front(), run.rear(), run.edge()) : Point.NONE;
        }

        private static Point point(EntryResult entry) {
            if (!entry.made()) {
                return Point.NONE;
            }
            Margins margins = Objects.requireNonNull(entry.margins().orElseThrow());
            return new Point(entry.time(), margins.front(), margins.rear(), margins.edge());
        }
    }
}
