package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Proportion;
import org.foreload.study.Sweep;
import org.foreload.trace.Trace;

/**
 * What goes with every plan that is handed to a driver: speeds to check it by, what is in hand, how often a driver
 * fails with it, and a caution.
 *
 * @param entry of the plan
 * @param inHand what the plan has in hand, m; NaN if it is not known
 * @param driver whose failures are counted
 * @param failed how often that driver fails with the plan; empty if it was not counted
 */
public record Handover(EntryResult entry, double inHand, String driver, Optional<Proportion> failed) {

    /** What stands below every plan. */
    public static final String CAUTION =
            "From a model, for a closed course or a simulator; not an instruction. Local rules and a "
                    + "qualified instructor come first.";

    /** Entries that are driven to count failures: enough to see one in twenty, and done in a second or two. */
    private static final int SAMPLES = 64;

    private static final long SEED = 1;

    /** Without a count of failures. */
    public static Handover of(EntryResult entry, double inHand) {
        return new Handover(entry, inHand, "", Optional.empty());
    }

    /**
     * With the failures of a practised driver counted, if the plan makes the corner at all.
     *
     * @param sweep on how many threads
     */
    public static Handover practised(CornerStudy study, EntryResult entry, double inHand, Sweep sweep) {
        if (!entry.made() || !entry.braked()) {
            return of(entry, inHand);
        }
        Scatter driver = Scatter.PRACTISED;
        Optional<Risk> risk = new RiskStudy(study, driver, SAMPLES, SEED).of(entry.plan(), sweep);
        return new Handover(entry, inHand, driver.name(), risk.map(Risk::failed));
    }

    /** The sentences, most needed first; none for an entry that fails. */
    public List<String> sentences(Units units) {
        List<String> sentences = new ArrayList<>();
        if (entry.made()) {
            sentences.add(speeds(units));
            sentences.add(reserve());
            failed.ifPresent(count -> sentences.add(failures(driver, count)));
        }
        return sentences;
    }

    /** A report that has these sentences among its headlines, and the caution among its notes. */
    public Report on(Report report, Units units) {
        Report more = report;
        for (String sentence : sentences(units)) {
            more = more.headline(sentence);
        }
        return more.note(CAUTION);
    }

    /** The same for below a picture. */
    public String caption(Units units) {
        return String.join(" ", sentences(units)) + " " + CAUTION;
    }

    private String speeds(Units units) {
        String turnIn = units.speed(entry.turnInSpeed()) + " at turn-in";
        String slowest =
                units.speed(entry.minimumSpeed()) + " at the slowest point, " + Words.board(entry.minimumSpeedAt());
        double foot = entry.braked() ? speedAt(entry, entry.plan().brakePoint()) : Double.NaN;
        String first = Double.isFinite(foot) ? units.speed(foot) + " at the brake point, " : "";
        return "Speed: " + first + turnIn + ", " + slowest + ".";
    }

    private String reserve() {
        var margins = entry.margins();
        String room =
                Double.isFinite(margins.edge()) ? ", " + Numbers.rounded(margins.edge(), 1) + " m to the edge" : "";
        String hand = Double.isFinite(inHand) ? "In hand: " + Numbers.rounded(inHand, 0) + " m. " : "";
        String upright = margins.rollOver() < Math.min(margins.front(), margins.rear())
                ? ", " + Words.percent(margins.rollOver()) + " of what would roll it over"
                : "";
        return hand + "Margins: " + Words.percent(margins.front()) + " of the front axle's grip, "
                + Words.percent(margins.rear()) + " of the rear axle's" + upright + room + ".";
    }

    /** {@code A practised driver fails with it in 3 of 64 simulated entries (4.7 %, …)}. */
    public static String failures(String driver, Proportion failed) {
        String article = "aeiou".indexOf(driver.charAt(0)) >= 0 ? "An " : "A ";
        return article + driver + " driver fails with it in " + failed.count() + " of " + failed.of()
                + " simulated entries (" + Words.percent(failed.value()) + "; " + Words.percent(failed.low()) + " to "
                + Words.percent(failed.high()) + " with 95 % confidence).";
    }

    /** Speed at a station, m/s; NaN where the car did not get to, or where the entry has no profile. */
    public static double speedAt(EntryResult entry, double station) {
        if (entry.profile().isEmpty()) {
            return Double.NaN;
        }
        Trace.Column s = entry.profile().get().column("s_m");
        Trace.Column speed = entry.profile().get().column("speed_mps");
        int last = s.size() - 1;
        if (last < 1 || !(station >= s.at(0) && station <= s.at(last))) {
            return Double.NaN;
        }
        int i = 1;
        while (i < last && s.at(i) < station) {
            i++;
        }
        double share = (station - s.at(i - 1)) / (s.at(i) - s.at(i - 1));
        return speed.at(i - 1) + share * (speed.at(i) - speed.at(i - 1));
    }
}
