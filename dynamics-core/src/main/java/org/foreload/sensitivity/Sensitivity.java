package org.foreload.sensitivity;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.entry.Outcome;
import org.foreload.optimum.Neighbourhood;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;

/**
 * What one unit of each number of car, tyres, corner, driver and plan is worth around the best entry. Each number is
 * changed to both sides, by the whole change and by half of it. For each changed car, corner or driver the best release
 * is found again, near the known one: on the edge of sliding the old release would lock a wheel or run wide. A number
 * of the plan is changed with all else kept. There the best entry stands on an edge: to one side it is slower, to the
 * other it may be no entry at all, and the two sides are kept apart.
 *
 * @param rows the largest change of time first; rows without a time last
 * @param complete whether every knob was turned; false after a stop
 */
public record Sensitivity(List<Row> rows, boolean complete) {

    /** Disagreement of whole and half change, as a share, up to which a number acts in proportion. */
    private static final double STEADY_SHARE = 0.15;

    /** Disagreement, s, below which it does not matter: the accuracy of the times. */
    private static final double STEADY_TIME = 0.0004;

    /** Entries tried in each search for the best release of a changed setup: it begins near it. */
    public static final int ENTRIES = 40;

    /** Copies the rows. */
    public Sensitivity {
        rows = List.copyOf(Objects.requireNonNull(rows, "rows"));
    }

    /**
     * What a change to one side does, against the best entry.
     *
     * @param timeChange s, positive where it is slower; NaN where the corner was not made
     * @param frontMarginChange change of the front axle's unused share of friction; NaN likewise
     * @param rearMarginChange the same at the rear
     * @param edgeMarginChange change of the distance to the edge of the track, m; NaN likewise
     * @param outcome how the entry ended; empty if there is no such car, corner or plan
     */
    public record Side(
            double timeChange,
            double frontMarginChange,
            double rearMarginChange,
            double edgeMarginChange,
            Optional<Outcome> outcome) {

        /** Checks that there is an outcome or nothing. */
        public Side {
            Objects.requireNonNull(outcome, "outcome");
        }

        /** Whether the corner was made. */
        public boolean made() {
            return outcome.filter(Outcome.MADE_IT::equals).isPresent();
        }

        private static Side none(Optional<Outcome> outcome) {
            return new Side(Double.NaN, Double.NaN, Double.NaN, Double.NaN, outcome);
        }

        /** Half of what lies between two sides. */
        private static Side halfway(Side from, Side to) {
            return new Side(
                    (to.timeChange - from.timeChange) / 2,
                    (to.frontMarginChange - from.frontMarginChange) / 2,
                    (to.rearMarginChange - from.rearMarginChange) / 2,
                    (to.edgeMarginChange - from.edgeMarginChange) / 2,
                    to.outcome);
        }

        private Side times(double factor) {
            return new Side(
                    factor * timeChange,
                    factor * frontMarginChange,
                    factor * rearMarginChange,
                    factor * edgeMarginChange,
                    outcome);
        }
    }

    /**
     * One number.
     *
     * @param parameter its name, as in the files
     * @param unit its unit
     * @param change how much more, or less, of it
     * @param kind what it belongs to
     * @param less what that much less of it does
     * @param more what that much more of it does
     * @param each what one change upwards does: for a number of the plan the same as {@code more}; for all others the
     *     mean of both sides, or the one that makes the corner
     * @param doubt s, how far the change is from twice what half of it does; NaN where there are not both
     */
    public record Row(
            String parameter,
            String unit,
            double change,
            Knob.Kind kind,
            Side less,
            Side more,
            Side each,
            double doubt) {

        /** Refuses null. */
        public Row {
            Objects.requireNonNull(parameter, "parameter");
            Objects.requireNonNull(unit, "unit");
            Objects.requireNonNull(kind, "kind");
            Objects.requireNonNull(less, "less");
            Objects.requireNonNull(more, "more");
            Objects.requireNonNull(each, "each");
        }

        /** What one change upwards does to the time, s; NaN where it fails. */
        public double timeChange() {
            return each.timeChange();
        }

        /**
         * Whether half the change does half of it. Where not, the number does not act in proportion, or its effect is
         * lost in the accuracy of the searches, some milliseconds.
         */
        public boolean steady() {
            return doubt <= Math.max(STEADY_TIME, STEADY_SHARE * Math.abs(timeChange()));
        }
    }

    /** Time and margins, or how it failed. */
    private record Point(double time, Optional<Margins> margins, Optional<Outcome> outcome) {

        static final Point NONE = new Point(Double.NaN, Optional.empty(), Optional.empty());

        static Point of(EntryResult entry, double time) {
            return new Point(
                    time, entry.made() ? Optional.of(entry.margins()) : Optional.empty(), Optional.of(entry.outcome()));
        }

        Side from(Point best) {
            if (margins.isEmpty() || best.margins.isEmpty()) {
                return Side.none(outcome);
            }
            Margins here = margins.get();
            Margins there = best.margins.get();
            return new Side(
                    time - best.time,
                    here.front() - there.front(),
                    here.rear() - there.rear(),
                    here.edge() - there.edge(),
                    outcome);
        }
    }

    /**
     * Turns every knob of an entry, with {@value #ENTRIES} entries in each search for the best release of a changed
     * setup.
     *
     * @param study car, corner and driver that it was made with
     * @param entry the best entry, or one near it that makes the corner
     * @param sweep on how many threads, and who watches the progress
     * @throws InvalidValueException if the entry does not make the corner
     */
    public static Sensitivity of(CornerStudy study, EntryResult entry, Sweep sweep) {
        return of(study, entry, ENTRIES, sweep);
    }

    /**
     * Turns every knob of an entry.
     *
     * @param study car, corner and driver that it was made with
     * @param entry the best entry, or one near it that makes the corner
     * @param entries tried in each search for the best release of a changed setup
     * @param sweep on how many threads, and who watches the progress
     * @throws InvalidValueException if the entry does not make the corner
     */
    public static Sensitivity of(CornerStudy study, EntryResult entry, int entries, Sweep sweep) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(entry, "entry");
        return of(study, entry, Knobs.of(setup(study, entry)), entries, sweep);
    }

    /**
     * Turns some knobs of an entry.
     *
     * @param study car, corner and driver that it was made with
     * @param entry the best entry, or one near it that makes the corner
     * @param knobs which
     * @param entries tried in each search for the best release of a changed setup
     * @param sweep on how many threads, and who watches the progress
     * @throws InvalidValueException if the entry does not make the corner
     */
    public static Sensitivity of(CornerStudy study, EntryResult entry, List<Knob> knobs, int entries, Sweep sweep) {
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(entry, "entry");
        Objects.requireNonNull(knobs, "knobs");
        Objects.requireNonNull(sweep, "sweep");
        if (!entry.made()) {
            throw new InvalidValueException(
                    "entry", entry.outcome().words(), "one that makes the corner: changes are taken from its time");
        }
        Around around = new Around(study, entry, entries);
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

    /** The rows of the numbers of one kind, in their order. */
    public List<Row> rows(Knob.Kind kind) {
        Objects.requireNonNull(kind, "kind");
        return rows.stream().filter(row -> row.kind() == kind).toList();
    }

    /** The row of a parameter, if it has one. */
    public Optional<Row> row(String parameter) {
        Objects.requireNonNull(parameter, "parameter");
        return rows.stream().filter(row -> row.parameter().equals(parameter)).findFirst();
    }

    /** The neighbourhood of one entry. */
    private static final class Around {
        private final CornerStudy study;
        private final Setup setup;
        private final Neighbourhood nearby;
        private final Point asPlanned;
        private final Point asSearched;

        Around(CornerStudy study, EntryResult entry, int entries) {
            this.study = study;
            this.setup = setup(study, entry);
            this.nearby = new Neighbourhood(study, entry.plan(), entries);
            this.asPlanned = Point.of(entry, entry.time());
            this.asSearched = point(study, nearby.best());
        }

        Row row(Knob knob) {
            boolean plan = knob.kind() == Knob.Kind.PLAN;
            Point here = plan ? asPlanned : asSearched;
            Side less = at(knob, -knob.change()).from(here);
            Side more = at(knob, knob.change()).from(here);
            Side halfMore = at(knob, knob.change() / 2).from(here);
            Side whole = plan ? more : each(less, more);
            Side half = plan ? halfMore : each(at(knob, -knob.change() / 2).from(here), halfMore);
            Side each = whole.made() || plan ? whole : half.times(2);
            return new Row(
                    knob.parameter().name(),
                    knob.parameter().unit(),
                    knob.change(),
                    knob.kind(),
                    less,
                    more,
                    each,
                    Math.abs(whole.timeChange() - 2 * half.timeChange()));
        }

        /** What one step upwards does: from both sides, or from the one that makes the corner. */
        private static Side each(Side less, Side more) {
            if (less.made() && more.made()) {
                return Side.halfway(less, more);
            }
            return less.made() ? less.times(-1) : more;
        }

        private Point at(Knob knob, double step) {
            try {
                Setup turned = knob.parameter().with(setup, knob.parameter().of(setup) + step);
                if (knob.kind() == Knob.Kind.PLAN) {
                    EntryResult run = study.simulator().run(turned.plan());
                    return Point.of(run, run.time());
                }
                CornerStudy there = CornerStudy.of(
                        turned.car(),
                        turned.corner(),
                        turned.driver(),
                        study.simulator().settings(),
                        study.allowance());
                return point(there, nearby.in(there, turned.plan().buildUpTime()));
            } catch (InvalidValueException impossible) {
                return Point.NONE; // No such car, or none that could come at this speed.
            }
        }

        private static Point point(CornerStudy there, Neighbourhood.Best best) {
            return Point.of(there.simulator().run(best.plan()), best.time());
        }
    }
}
