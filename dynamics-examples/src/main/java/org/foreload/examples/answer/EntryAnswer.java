package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.Finding;
import org.foreload.strategy.InHand;
import org.foreload.trace.Trace;

/** One simulated entry as a report. */
public final class EntryAnswer {

    private EntryAnswer() {}

    /** An entry from a brake point that was given. */
    public static Report given(CornerStudy study, Handover handover, boolean all, Units units) {
        EntryResult entry = handover.entry();
        boolean kept = study.allowance().met(entry);
        Report report = described(plain(study, entry, kept), entry)
                .with("in_hand_m", handover.inHand())
                .with("margin_cost_s", Double.NaN);
        List<String> headlines = new ArrayList<>(List.of(verdict(study, entry, kept, units)));
        BankedStraight.of(study, entry, units).ifPresent(headlines::add);
        return faces(study, handover, kept, report, all, headlines, units);
    }

    /**
     * An entry of a driver who makes a mistake.
     *
     * @param mistake what is done otherwise than planned: {@code brake harder by 50 %}
     * @param planned the entry of the plan without it
     */
    public static Report mistaken(
            CornerStudy study, EntryResult entry, String mistake, EntryResult planned, boolean all, Units units) {
        boolean kept = study.allowance().met(entry);
        double slower = entry.made() && planned.made() ? entry.time() - planned.time() : Double.NaN;
        Report report = described(plain(study, entry, kept), entry)
                .with("mistake", mistake)
                .with("planned_time_s", planned.time())
                .with("slower_than_planned_s", slower);
        String beside = Double.isNaN(slower)
                ? "without that, " + result(study, planned, study.allowance().met(planned))
                : Words.seconds(Math.abs(slower)) + (slower < 0 ? " quicker" : " slower") + " than without that, "
                        + Words.seconds(planned.time()) + "; the driver expects the plan.";
        List<String> headlines = List.of(verdict(study, entry, kept, units), mistake + ": " + beside);
        return faces(study, Handover.of(entry, Double.NaN), kept, report, all, headlines, units);
    }

    /** An entry from the latest brake point, or the closest attempt where there is none. */
    public static Report latest(CornerStudy study, Finding finding, Handover handover, boolean all, Units units) {
        boolean found = finding.found();
        double cost = found ? study.marginCost(finding.entry()) : Double.NaN;
        QuickerEarlier quicker = QuickerEarlier.of(study, finding);
        Report report = quicker.fields(described(study, finding, cost));
        List<String> headlines = new ArrayList<>(quicker.after(verdict(study, finding, units)));
        if (!found) {
            ShortApproach.of(study, finding.entry().plan().braking()).ifPresent(headlines::add);
            BankedStraight.of(study, finding.entry(), units).ifPresent(headlines::add);
        }
        return faces(study, handover, found, report, all, headlines, units);
    }

    /** An entry that was found, for programs only, with its profile. */
    static Report found(CornerStudy study, Finding finding, MissedBefore missed, double marginCost) {
        return lists(missed.fields(described(study, finding, marginCost)), finding.entry());
    }

    private static Report described(CornerStudy study, Finding finding, double marginCost) {
        EntryResult entry = finding.entry();
        return described(plain(study, entry, finding.found()), entry)
                .with("brake_point_found", finding.found())
                .with("in_hand_m", finding.inHand())
                .with("margin_cost_s", marginCost);
    }

    private static String verdict(CornerStudy study, Finding finding, Units units) {
        String verdict = verdict(study, finding.entry(), finding.found(), units);
        return finding.found() ? verdict : NOT_FOUND + verdict;
    }

    private static final String NOT_FOUND =
            "No brake point makes the corner with this release and this margin. The closest attempt: ";

    /** What came of an entry from its latest brake point, or of the closest attempt, without how it was braked. */
    public static String result(CornerStudy study, Finding finding) {
        String result = result(study, finding.entry(), finding.found());
        return finding.found() ? Words.sentence(result) : NOT_FOUND + result;
    }

    /**
     * An entry from a brake point that was given, for programs only.
     *
     * @param along whether the entry along the line is wanted too
     */
    public static Report brief(CornerStudy study, EntryResult entry, boolean along) {
        Report report = described(plain(study, entry, study.allowance().met(entry)), entry);
        return along ? lists(report, entry) : report;
    }

    /** The same from the latest brake point, or the closest attempt where there is none. */
    public static Report brief(CornerStudy study, Finding finding, boolean along) {
        EntryResult entry = finding.entry();
        Report report = described(plain(study, entry, finding.found()), entry)
                .with("brake_point_found", finding.found())
                .with("in_hand_m", finding.inHand());
        report = QuickerEarlier.of(study, finding).fields(report);
        return along ? lists(report, entry) : report;
    }

    /** An entry of a sweep, for programs only. */
    static Report swept(CornerStudy study, Candidate candidate, MissedBefore missed) {
        EntryResult entry = candidate.entry();
        Report report = described(plain(study, entry, candidate.made()), entry)
                .with("in_hand_m", candidate.inHand())
                .with("margin_cost_s", candidate.made() ? study.marginCost(entry) : Double.NaN);
        return lists(missed.fields(report), entry);
    }

    private static Report described(Report report, EntryResult entry) {
        return report.with("cause", entry.cause())
                .with("release", release(entry.plan()))
                .with("margins", margins(entry));
    }

    /**
     * The numbers of an entry.
     *
     * @param kept whether it kept the margin asked for, as the search judged it: a search drives a little less exactly
     */
    private static Report plain(CornerStudy study, EntryResult entry, boolean kept) {
        return new Report(title(study))
                .with("brake_point_m", entry.braked() ? entry.plan().brakePoint() : Double.NaN)
                .with("release_end_m", entry.braked() ? entry.plan().release().end() : Double.NaN)
                .with("pick_up_m", entry.pickUp())
                .with("turn_in_speed_mps", entry.turnInSpeed())
                .with("minimum_speed_mps", entry.minimumSpeed())
                .with("minimum_speed_at_m", entry.minimumSpeedAt())
                .with("top_speed_mps", entry.topSpeed())
                .with("time_s", entry.time())
                .with("trail_share", entry.trailShare())
                .with("outcome", entry.outcome().words())
                .with("keeps_margin", kept)
                .with("limited_by", limit(study, entry))
                .with("farthest_offset_m", entry.farthestOffset())
                .with("bound_time_s", study.bound().time())
                .with("above_bound", aboveBound(study, entry));
    }

    /** Car and corner: {@code Dunlin … in Tarnhollow Mill …}. */
    public static String title(CornerStudy study) {
        return study.simulator().car().name() + " in "
                + study.simulator().corner().name();
    }

    static double aboveBound(CornerStudy study, EntryResult entry) {
        return entry.time() / study.bound().time() - 1;
    }

    /** What came closest to its limit, or to the margin asked for. */
    public static String limit(CornerStudy study, EntryResult entry) {
        return study.allowance().limit(entry).words();
    }

    static Report release(BrakePlan plan) {
        return new Report()
                .with("shape", plan.release().shape().name())
                .with("peak_deceleration_mps2", plan.peakDeceleration())
                .with("start_m", plan.release().start())
                .with("end_m", plan.release().end())
                .with("build_up_time_s", plan.buildUpTime());
    }

    static Report margins(EntryResult entry) {
        Margins margins = entry.margins();
        return new Report()
                .with("front", margins.front())
                .with("rear", margins.rear())
                .with("edge_m", margins.edge())
                .with("roll_over", margins.rollOver());
    }

    private static Report lists(Report report, EntryResult entry) {
        return report.with("profile", "The entry along the line", profile(entry))
                .with("events", "What happened", events(entry));
    }

    private static List<Report> events(EntryResult entry) {
        return entry.events().stream()
                .map(event -> new Report()
                        .with("event", event.kind().words())
                        .with("s_m", event.station())
                        .with("time_s", event.time()))
                .toList();
    }

    private static List<Report> profile(EntryResult entry) {
        if (entry.profile().isEmpty()) {
            return List.of();
        }
        Trace trace = entry.profile().get();
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

    private static Report faces(
            CornerStudy study,
            Handover handover,
            boolean kept,
            Report report,
            boolean all,
            List<String> headlines,
            Units units) {
        EntryResult entry = handover.entry();
        Report people = plain(study, entry, kept);
        for (String headline : headlines) {
            people = people.headline(Words.sentence(headline));
        }
        people = handover.on(people, units);
        MissedBefore missed = MissedBefore.of(study, entry, kept);
        people = missed.on(people);
        List<Report> rows = shownProfile(entry);
        people = people.with("events", "What happened", events(entry));
        String caption = "The entry along the line";
        people = all ? people.withAll("profile", caption, rows) : people.with("profile", caption, rows);
        people = Words.places(people, study.simulator().car()).note(Words.TRAIL_SHARE);
        if (entry.made() && Double.isFinite(handover.inHand())) {
            people = people.note(Words.IN_HAND);
        }
        return lists(missed.fields(report), entry).shownAs(people.note(BOUND));
    }

    private static final String BOUND =
            "Above bound: how much longer than the fastest quasi-steady entry (foreload ideal), 0.02 being 2 %.";

    /** The columns that fit beside each other. */
    private static List<Report> shownProfile(EntryResult entry) {
        if (entry.profile().isEmpty()) {
            return List.of();
        }
        Trace trace = entry.profile().get();
        List<Report> rows = new ArrayList<>(trace.rows());
        for (int i = 0; i < trace.rows(); i++) {
            rows.add(new Report()
                    .with("s_m", trace.column("s_m").at(i))
                    .with("time_s", trace.column("time_s").at(i))
                    .with("speed_mps", trace.column("speed_mps").at(i))
                    .with("deceleration_mps2", trace.column("deceleration_mps2").at(i))
                    .with("front use", trace.column("front_utilisation").at(i))
                    .with("rear use", trace.column("rear_utilisation").at(i))
                    .with("offset_m", trace.column("offset_m").at(i))
                    .with("sideslip_deg", trace.column("sideslip_deg").at(i))
                    .with("front_load_n", trace.column("front_axle_load_n").at(i))
                    .with("rear_load_n", trace.column("rear_axle_load_n").at(i)));
        }
        return rows;
    }

    /** What came of it, in one sentence. */
    private static String verdict(CornerStudy study, EntryResult entry, boolean kept, Units units) {
        return Words.brake(entry, units) + ": " + result(study, entry, kept);
    }

    private static String result(CornerStudy study, EntryResult entry, boolean kept) {
        if (!entry.made()) {
            return entry.outcome().words() + "; " + entry.cause() + ".";
        }
        String time = Words.seconds(entry.time()) + ", " + Words.besideBound(aboveBound(study, entry))
                + " the ideal bound"
                + (entry.braked()
                        ? "; " + Words.percent(entry.trailShare()) + " of the slowing is done while turning"
                        : "");
        return "made it in " + time + (kept ? "" : missing(study, entry)) + ".";
    }

    /** What is missing to the margin asked for. */
    static String missing(CornerStudy study, EntryResult entry) {
        Allowance allowance = study.allowance();
        Margins margins = entry.margins();
        StringBuilder text = new StringBuilder("; not with the margin asked for:");
        int before = text.length();
        if (entry.farthestOffset() > allowance.drift()) {
            Pair off = lengths(entry.farthestOffset(), allowance.drift());
            text.append(' ').append(off.has()).append(" off the line, ");
            text.append(off.asked()).append(" allowed,");
        }
        if (margins.edge() < allowance.edge()) {
            Pair edge = lengths(margins.edge(), allowance.edge());
            text.append(' ').append(edge.has()).append(" to the edge, ");
            text.append(edge.asked()).append(" asked for,");
        }
        share(text, "front", margins.front(), allowance.front());
        share(text, "rear", margins.rear(), allowance.rear());
        return text.length() == before ? inHandMissing(study, entry) : text.substring(0, text.length() - 1);
    }

    /**
     * What is in hand where nothing else is missing; or that the search, which drives less exactly, found it a shade
     * short.
     */
    private static String inHandMissing(CornerStudy study, EntryResult entry) {
        double asked = study.allowance().inHand();
        double left = InHand.of(study.simulator(), entry.plan());
        Pair hand = lengths(left, asked);
        return left < asked
                ? "; not with the margin asked for: " + hand.has() + " in hand, " + hand.asked() + " asked for"
                : "; short of the margin asked for by less than is shown here";
    }

    private static void share(StringBuilder text, String axle, double left, double wanted) {
        if (left < wanted) {
            Pair share = Pair.of(100 * left, 100 * wanted, 1, " %");
            text.append(' ').append(share.has()).append(" of the ").append(axle);
            text.append(" axle's friction left, ").append(share.asked()).append(" asked for,");
        }
    }

    private static Pair lengths(double has, double asked) {
        return Pair.of(has, asked, 2, " m");
    }

    /** What an entry has and what is asked for, with as many decimals as differ. */
    private record Pair(String has, String asked) {

        /** Decimals after which a difference is none. */
        private static final int MOST_DECIMALS = 9;

        static Pair of(double has, double asked, int decimals, String unit) {
            int shown = decimals;
            while (shown < MOST_DECIMALS && Numbers.rounded(has, shown).equals(Numbers.rounded(asked, shown))) {
                shown++;
            }
            return new Pair(Numbers.rounded(has, shown) + unit, Numbers.rounded(asked, shown) + unit);
        }
    }
}
