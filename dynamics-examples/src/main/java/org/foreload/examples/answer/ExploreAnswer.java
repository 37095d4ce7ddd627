package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Report;
import org.foreload.optimum.Remainder;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.StraightLine;

/** A sweep of releases as a report. */
public final class ExploreAnswer {

    /** Rows of the trade-off that people are shown. */
    private static final int FRONT_ROWS = 10;

    private static final Comparator<Candidate> QUICKER =
            Comparator.comparingDouble(candidate -> candidate.entry().time());

    private final CornerStudy study;
    private final Optional<AgainstLimit> limit;
    private final Optional<Handover> handover;
    private final Units units;
    private final Exploration sweep;
    private final List<Candidate> sorted;
    private final MissedBefore bestMissed;

    private ExploreAnswer(
            CornerStudy study,
            Exploration sweep,
            Optional<AgainstLimit> limit,
            Optional<Handover> handover,
            Units units) {
        this.study = study;
        this.limit = limit;
        this.handover = handover;
        this.units = units;
        this.sweep = sweep;
        this.sorted = sweep.candidates().stream().sorted(QUICKER).toList();
        this.bestMissed = missed(sweep.best());
    }

    /**
     * The report of a sweep: what people look at, or all fields for programs. Each has what takes entries of its own.
     *
     * @param forPeople which of the two
     * @param all whether people are shown every release
     * @param remainder what the time of the best above the bound is made of, if that was asked for
     * @param limit the best beside perfect hands and feet, if that was asked for
     * @param handover of the best, if there is one
     * @param units of the sentences
     */
    public static Report of(
            CornerStudy study,
            Exploration sweep,
            boolean forPeople,
            boolean all,
            Optional<Remainder> remainder,
            Optional<AgainstLimit> limit,
            Optional<Handover> handover,
            Units units) {
        ExploreAnswer answer = new ExploreAnswer(study, sweep, limit, handover, units);
        Report report = forPeople ? answer.people(all) : answer.programs();
        if (remainder.isEmpty()) {
            return report;
        }
        if (!remainder.get().complete()) {
            return report.headline(BestAnswer.PARTS_STOPPED);
        }
        List<Report> parts = BestAnswer.parts(remainder.get());
        return forPeople
                ? report.withAll("above_bound_parts", ABOVE_BOUND, parts).note(BestAnswer.PARTS)
                : report.with("above_bound_parts", ABOVE_BOUND, parts);
    }

    private static final String ABOVE_BOUND = "What makes up the time of the best above the bound";

    private Report programs() {
        Report report = new Report(EntryAnswer.title(study));
        report = part(report, "best", sweep.best(), bestMissed);
        report = part(report, "straight_line_baseline", sweep.baseline(), missed(sweep.baseline()));
        report = report.with("gain_s", sweep.gain()).with("bound_time_s", sweep.boundTime());
        if (limit.isPresent()) {
            report = limit.get().on(report);
        }
        return report.with("complete", sweep.complete())
                .withCount("releases_planned", sweep.planned())
                .withCount("releases_tried", sweep.candidates().size())
                .with("entries", "", sorted.stream().map(this::entry).toList());
    }

    private Report part(Report report, String name, Optional<Candidate> candidate, MissedBefore missed) {
        return candidate
                .map(found -> report.with(name, EntryAnswer.swept(study, found, missed)))
                .orElseGet(() -> report.with(name, (String) null));
    }

    private MissedBefore missed(Optional<Candidate> candidate) {
        return candidate
                .map(found -> MissedBefore.of(study, found.entry(), found.made()))
                .orElse(new MissedBefore(Optional.empty()));
    }

    private Report entry(Candidate candidate) {
        EntryResult entry = candidate.entry();
        return new Report()
                .with("release", EntryAnswer.release(entry.plan()))
                .with("brake_point_m", entry.plan().brakePoint())
                .with("outcome", entry.outcome().words())
                .with("cause", entry.cause())
                .with("keeps_margin", candidate.made())
                .with("limited_by", EntryAnswer.limit(study, entry))
                .with("time_s", entry.time())
                .with("trail_share", entry.trailShare())
                .with("margins", EntryAnswer.margins(entry))
                .with("in_hand_m", candidate.inHand())
                .with("pareto", candidate.onFront());
    }

    private Report people(boolean all) {
        Report report = new Report(EntryAnswer.title(study));
        for (String headline : headlines()) {
            report = report.headline(headline);
        }
        report = bestMissed.on(report);
        if (sweep.best().isEmpty()) {
            report = report.withAll(
                    "attempts", "The closest attempts", rows(sorted.subList(0, Math.min(5, sorted.size()))));
        } else {
            report = report.withAll(
                            "shapes",
                            "The best of each shape, and straight-line braking (abrupt)",
                            rows(shapesAndBaseline()))
                    .withAll("front", "Best trade-offs of time against what is in hand", rows(front()));
            if (sweep.best().get().entry().braked()) {
                List<Report> examples = new Examples(study, sweep).rows();
                report = report.withAll("examples", Examples.HEADING, examples);
            }
        }
        if (all) {
            report = report.withAll("entries", "All releases", rows(sorted));
        }
        if (handover.isPresent()) {
            report = handover.get().on(report, units);
        }
        if (limit.isPresent()) {
            report = report.note(AgainstLimit.NOTE);
        }
        return Words.places(report, study.simulator().car())
                .note(Words.TRAIL_SHARE)
                .note(Words.IN_HAND)
                .note(all ? EVERY_DIGIT : "--all shows every release; " + EVERY_DIGIT);
    }

    private static final String EVERY_DIGIT =
            "--format json gives every field with every digit, --format csv those of the releases.";

    private String nothingGained(EntryResult best) {
        if (!best.braked()) {
            return Words.NOTHING_TO_BRAKE;
        }
        return Words.nothingToTrail(sweep.complete());
    }

    private List<String> headlines() {
        List<String> lines = new ArrayList<>();
        int tried = sweep.candidates().size();
        if (!sweep.complete()) {
            lines.add("Incomplete: stopped after " + tried + " of " + sweep.planned() + " releases.");
        }
        if (sweep.best().isEmpty()) {
            lines.add("None of the " + tried + " releases tried makes the corner with the margin asked for.");
            sorted.stream()
                    .map(Candidate::entry)
                    .filter(EntryResult::made)
                    .findFirst()
                    .ifPresent(
                            closest -> lines.add("The quickest makes it" + EntryAnswer.missing(study, closest) + "."));
            if (sweep.complete()) {
                WhyMissed.of(study).ifPresent(lines::add);
            }
            return lines;
        }
        EntryResult best = sweep.best().get().entry();
        lines.add("Best of " + tried + " releases: " + Words.brake(best, units) + ".");
        String time = "It takes " + Words.seconds(best.time());
        if (sweep.gain() > 0) {
            double straight = sweep.baseline().orElseThrow().entry().time();
            boolean brakes = sweep.baseline().get().entry().braked();
            time += " and is " + Words.seconds(sweep.gain()) + " quicker than "
                    + (brakes ? "straight-line braking" : "not braking") + " (" + Words.seconds(straight) + ")";
        } else if (sweep.baseline().isEmpty() && sweep.complete()) {
            time += "; straight-line braking was not found to make the corner";
        }
        lines.add(time + ".");
        if (sweep.gain() > 0
                && StraightLine.slowsForALaterBend(
                        study, sweep.baseline().orElseThrow().entry())) {
            lines.add(Words.SLOWS_FOR_A_LATER_BEND);
        }
        if (sweep.gain() <= 0) {
            lines.add(nothingGained(best));
        } else if (hardlyBrakes(best)) {
            lines.add(Words.HARDLY_BRAKES);
        }
        String trailed =
                best.braked() ? Words.percent(best.trailShare()) + " of the slowing is done while turning. " : "";
        tie(sweep).ifPresent(lines::add);
        double above = EntryAnswer.aboveBound(study, best);
        boolean under = above < -Words.PERCENT_SHOWN;
        lines.add(trailed + "The entry takes " + Words.percent(Math.abs(above)) + (under ? " less" : " longer")
                + " than the ideal bound of " + Words.seconds(sweep.boundTime()) + "; "
                + limits(study.allowance().limit(best)) + " limits it.");
        if (under) {
            lines.add(Words.UNDER_THE_BOUND);
        }
        limit.ifPresent(beside -> lines.add(beside.sentence()));
        return lines;
    }

    /** Whether the straight line needs no brake, and this entry is hardly slower for its own. */
    private boolean hardlyBrakes(EntryResult best) {
        boolean unbraked = sweep.baseline().filter(one -> !one.entry().braked()).isPresent();
        double on = Handover.speedAt(best, best.plan().brakePoint());
        double off = Handover.speedAt(best, best.plan().release().end());
        return unbraked && best.braked() && on - off < HARDLY * on;
    }

    /** Share of the speed that a brake takes off at least to be worth the name: no driver feels less. */
    private static final double HARDLY = 0.02;

    private static String limits(EntryResult.Limit limit) {
        return limit == EntryResult.Limit.ROLL_OVER ? limit.words() : "the " + limit.words();
    }

    /** Which shapes come to the same as the best; of a sweep that was stopped nobody knows. */
    static Optional<String> tie(Exploration sweep) {
        List<Candidate> ranked = Exploration.bestOfEachShape(sweep.candidates());
        int tied = sweep.complete() ? ShapeRanking.tied(ranked).orElse(0) : 0;
        if (tied < 2) {
            return Optional.empty();
        }
        String names =
                ranked.subList(0, tied).stream().map(ExploreAnswer::shape).collect(Collectors.joining(", "));
        return Optional.of("These shapes tie, within the " + Words.seconds(ShapeRanking.TIE)
                + " that the search from a standard sweep leaves open: " + names + ".");
    }

    /** The best of each shape, and the very straight-line braking that the headline compares with. */
    private List<Candidate> shapesAndBaseline() {
        Stream<Candidate> shapes = Exploration.bestOfEachShape(sorted).stream()
                .filter(one -> sweep.baseline().isEmpty()
                        || one.entry().braked() && !StraightLine.is(one.entry().plan()));
        return Stream.concat(shapes, sweep.baseline().stream()).sorted(QUICKER).toList();
    }

    /** The trade-off, thinned evenly to what one looks at. */
    private List<Candidate> front() {
        List<Candidate> front = sorted.stream().filter(Candidate::onFront).toList();
        if (front.size() <= FRONT_ROWS) {
            return front;
        }
        List<Candidate> thinned = new ArrayList<>();
        for (int i = 0; i < FRONT_ROWS; i++) {
            thinned.add(front.get(Math.round((float) i * (front.size() - 1) / (FRONT_ROWS - 1))));
        }
        return thinned;
    }

    private List<Report> rows(List<Candidate> candidates) {
        double best = sweep.best().map(candidate -> candidate.entry().time()).orElse(Double.NaN);
        return candidates.stream().map(candidate -> row(candidate, best)).toList();
    }

    private static String shape(Candidate candidate) {
        return candidate.shape().orElse("no braking");
    }

    private Report row(Candidate candidate, double best) {
        EntryResult entry = candidate.entry();
        BrakePlan plan = entry.plan();
        String outcome = entry.made() && !candidate.made()
                ? "too little margin"
                : entry.outcome().words();
        return new Report()
                .with("shape", shape(candidate))
                .with("peak_mps2", entry.braked() ? plan.peakDeceleration() : Double.NaN)
                .with("brake_m", entry.braked() ? plan.brakePoint() : Double.NaN)
                .with("ease_off_m", entry.braked() ? plan.release().start() : Double.NaN)
                .with("off_m", entry.braked() ? plan.release().end() : Double.NaN)
                .with("time_s", entry.time())
                .with("lost_s", entry.time() - best)
                .with("trail share", entry.trailShare())
                .with("in_hand_m", candidate.inHand())
                .with("outcome", outcome)
                .with("limited by", EntryAnswer.limit(study, entry));
    }
}
