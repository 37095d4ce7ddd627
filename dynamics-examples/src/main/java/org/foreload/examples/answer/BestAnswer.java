package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.ReleaseShape;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Report;
import org.foreload.gap.LossToLimit;
import org.foreload.gap.TimeSplit;
import org.foreload.optimum.Optimum;
import org.foreload.optimum.Remainder;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.StraightLine;
import org.foreload.trace.Trace;

/** The best release as a report. */
public final class BestAnswer {

    /** Places at which a shape is sampled. */
    private static final int SHAPE_PLACES = 20;

    private final CornerStudy study;
    private final String line;
    private final Optimum optimum;
    private final Finding finding;
    private final EntryResult best;
    private final Optional<EntryResult> baseline;
    private final Optional<TimeSplit> split;
    private final Optional<Remainder> remainder;
    private final AgainstLimit limit;
    private final MissedBefore missed;
    private final double marginCost;
    private final Units units;

    /**
     * The answer.
     *
     * @param study car, corner and driver
     * @param line that the plan is for, as {@code --line} names it
     * @param optimum with a best entry
     * @param remainder what the time above the bound is made of, if that was asked for
     * @param limit the best entry beside perfect hands and feet
     * @param units of the sentences
     */
    public BestAnswer(
            CornerStudy study,
            String line,
            Optimum optimum,
            Optional<Remainder> remainder,
            AgainstLimit limit,
            Units units) {
        this.study = study;
        this.line = line;
        this.optimum = optimum;
        this.finding = optimum.best().orElseThrow();
        this.best = finding.entry();
        this.baseline = optimum.baseline();
        this.split = baseline.map(other ->
                TimeSplit.between(study.simulator().car(), study.simulator().apex(), best, other));
        this.remainder = remainder;
        this.limit = limit;
        this.missed = MissedBefore.of(study, best, true);
        this.marginCost = study.marginCost(best);
        this.units = units;
    }

    /** The report, with what is handed over with the best entry. */
    public Report report(Handover handover) {
        return programs().shownAs(handover.on(people(), units));
    }

    private Report programs() {
        Report programs = limit.on(EntryAnswer.found(study, finding, missed, marginCost))
                .with("line", line)
                .with(
                        "release_table",
                        "The release",
                        table(best.plan().release().shape()))
                .with("restart_spread_s", optimum.spread())
                .with("complete", optimum.complete())
                .with("families", FAMILIES, families(optimum))
                .with("restarts", "Searches over free shapes", restarts(optimum));
        if (split.isPresent()) {
            programs = programs.with("against_straight_line", split(split.get(), baseline.get()))
                    .with(
                            "gap",
                            "Time ahead of straight-line braking",
                            rows(split.get().curve()))
                    .with(
                            "front_grip",
                            "Front grip added and taken by braking",
                            rows(split.get().frontGrip()));
        }
        if (limit.loss().isPresent()) {
            programs = programs.with(
                    "limit_gap",
                    "Time lost to perfect hands and feet",
                    rows(limit.loss().get().curve()));
        }
        if (remainder.filter(Remainder::complete).isPresent()) {
            programs = programs.with(
                    "above_bound_parts", "What makes up the time above the bound", parts(remainder.get()));
        }
        return programs;
    }

    private Report people() {
        BrakePlan plan = best.plan();
        Report people = new Report(EntryAnswer.title(study))
                .headline(Words.sentence(Words.brake(best, units)) + ": " + Words.seconds(best.time()) + ", "
                        + Words.besideBound(optimum.aboveBound()) + " the ideal bound.");
        if (!best.braked()) {
            people = people.headline(Words.NOTHING_TO_BRAKE);
        } else if (StraightLine.is(plan)) {
            people = people.headline(Words.nothingToTrail(optimum.complete()));
        } else if (split.isPresent()) {
            people = people.headline(
                    "Compared with straight-line braking: " + split.get().sentence());
            if (StraightLine.slowsForALaterBend(study, baseline.get())) {
                people = people.headline(Words.SLOWS_FOR_A_LATER_BEND);
            }
        }
        people = missed.on(people.headline(limit.sentence()));
        if (!optimum.complete()) {
            people = people.headline("Stopped early: a longer search may find a better one.");
        }
        people = people.with("brake_point_m", plan.brakePoint())
                .with("peak_deceleration_mps2", plan.peakDeceleration())
                .with("release_start_m", plan.release().start())
                .with("release_end_m", plan.release().end())
                .with("pick_up_m", best.pickUp())
                .with("turn_in_speed_mps", best.turnInSpeed())
                .with("minimum_speed_mps", best.minimumSpeed())
                .with("trail_share", best.trailShare())
                .with("time_s", best.time())
                .with("bound_time_s", optimum.boundTime())
                .with("limit_time_s", limit.loss().map(LossToLimit::limitTime).orElse(Double.NaN))
                .with(
                        "gain_s",
                        baseline.map(other -> other.time() - best.time()).orElse(Double.NaN))
                .with("in_hand_m", finding.inHand())
                .with("margins", EntryAnswer.margins(best))
                .with("margin_cost_s", marginCost)
                .with("restart_spread_s", optimum.spread())
                .withAll("release_table", "The release", table(plan.release().shape()))
                .with("families", FAMILIES, families(optimum));
        if (remainder.isPresent()) {
            people = remainder.get().complete()
                    ? people.with("above_bound_parts", "What makes up the time above the bound", parts(remainder.get()))
                            .note(PARTS)
                    : people.headline(PARTS_STOPPED);
        }
        if (!line.equals("given")) {
            people = people.note(
                    "The plan is for the " + line + " line, and its stations are metres along that line: entry, "
                            + "risk and steps drive it with --line " + line + ".");
        }
        return Words.places(people, study.simulator().car())
                .note(Words.TRAIL_SHARE)
                .note(Words.IN_HAND)
                .note(Words.MARGIN_COST)
                .note(AgainstLimit.NOTE);
    }

    private static List<Report> table(ReleaseShape shape) {
        List<Report> rows = new ArrayList<>();
        for (int i = 0; i <= SHAPE_PLACES; i++) {
            double u = (double) i / SHAPE_PLACES;
            rows.add(new Report().with("released", u).with("remaining", shape.remaining(u)));
        }
        return rows;
    }

    private static final String FAMILIES =
            "Best of each simple shape (the search leaves " + Words.seconds(ShapeRanking.TIE) + " open)";

    private static List<Report> families(Optimum optimum) {
        double best = optimum.entry().orElseThrow().time();
        return optimum.families().stream()
                .map(family -> new Report()
                        .with("shape", family.shape())
                        .with("time_s", family.entry().time())
                        .with("lost_s", family.entry().time() - best)
                        .with("brake_m", family.entry().plan().brakePoint())
                        .with("peak_mps2", family.entry().plan().peakDeceleration())
                        .with("ease_off_m", family.entry().plan().release().start())
                        .with("off_m", family.entry().plan().release().end()))
                .toList();
    }

    private static List<Report> restarts(Optimum optimum) {
        return optimum.restarts().stream()
                .map(restart -> new Report()
                        .withCount("seed", restart.seed())
                        .with("from", restart.from())
                        .with("time_s", restart.time()))
                .toList();
    }

    private static Report split(TimeSplit split, EntryResult baseline) {
        return new Report()
                .with("baseline_time_s", baseline.time())
                .with("gain_s", split.total())
                .with("by_braking_s", split.byBraking())
                .with("turn_in_to_apex_s", split.byTurning())
                .with("exit_s", split.byExit())
                .with("brakes_later_m", split.brakesLater())
                .with("sentence", split.sentence());
    }

    /** How the parts of the time above the bound are found, and why one can be below zero. */
    static final String PARTS =
            "What makes up the time above the bound: each part is what the best time falls by when its "
                    + "cause is switched off, too, after those above it, and the release is searched again. A part below zero: the car "
                    + "is slower without that cause, since load that moves late can help, or that search came short; each leaves about "
                    + Words.seconds(ShapeRanking.TIE) + " open.";

    /** Said where a stop left the searches for these parts unfinished: each would pass for what others come to. */
    static final String PARTS_STOPPED =
            "Stopped early: what makes up the time above the bound is not known, as the searches for it did not end.";

    /** What the time above the bound is made of, a row per cause. */
    static List<Report> parts(Remainder remainder) {
        return remainder.parts().stream()
                .map(part -> new Report()
                        .with("cause", part.cause())
                        .with("time_s", part.time())
                        .with("share_of_bound_percent", 100 * part.time() / remainder.boundTime()))
                .toList();
    }

    private static List<Report> rows(Trace trace) {
        List<Report> rows = new ArrayList<>(trace.rows());
        for (int i = 0; i < trace.rows(); i++) {
            Report row = new Report();
            for (Trace.Column column : trace.columns()) {
                row = row.with(column.name(), column.at(i));
            }
            rows.add(row);
        }
        return rows;
    }
}
