package org.foreload.examples.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.examples.gallery.ReleasePanels;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.picture.PanelSvg;
import org.foreload.gap.TimeSplit;
import org.foreload.risk.TellTale;
import org.foreload.strategy.Finding;

/**
 * What the template shows of one release.
 *
 * @param index place on the slider
 * @param planned whether it is the plan
 * @param said what the slider says
 * @param verdict what came of it
 * @param why where the time is gained or lost, or how the failure feels
 * @param phases the entry in words, in order
 * @param planSvg the corner from above
 * @param courseSvg brake, speed, grip use
 * @param frictionSvg friction ellipse
 * @param mapSvg time lost by all releases of the same peak
 * @param failing whether any of these fails
 * @param numbers rows of the table
 * @param row the same release in the table of all
 */
record ReleaseView(
        int index,
        boolean planned,
        String said,
        String verdict,
        String why,
        List<Phase> phases,
        String planSvg,
        String courseSvg,
        String frictionSvg,
        String mapSvg,
        boolean failing,
        List<NumberRow> numbers,
        Row row) {

    /** Width of a chart's layout, px: two beside each other on a page, one on a telephone, both legible. */
    private static final int CHART = 440;

    /**
     * One thing that the driver does.
     *
     * @param station where, m
     * @param what a word or two
     * @param where where and how
     */
    record Phase(double station, String what, String where) {}

    /**
     * One number of a release beside that of the plan and of straight-line braking.
     *
     * @param name what it is, with its unit
     * @param own of this release
     * @param plan of the plan
     * @param straight of straight-line braking
     */
    record NumberRow(String name, String own, String plan, String straight) {}

    /**
     * A release in the table of all.
     *
     * @param off where the brake is off
     * @param brake where the foot comes down
     * @param lost time lost on the plan
     * @param outcome how it ended
     */
    record Row(String off, String brake, String lost, String outcome) {}

    static ReleaseView of(Sheet sheet, ReleasePanels panels, int index) {
        Finding finding = sheet.releases().get(index);
        EntryResult entry = finding.entry();
        boolean planned = index == sheet.planned();
        String name = "r" + index;
        String of = ": brake off " + Words.place(entry.plan().release().end());
        return new ReleaseView(
                index,
                planned,
                said(sheet, index),
                EntryAnswer.result(sheet.study(), finding),
                why(sheet, finding, planned),
                phases(sheet, entry),
                PanelSvg.of(panels.plan(index), CHART, name + "p", "The corner from above" + of),
                PanelSvg.of(panels.course(index), CHART, name + "c", "Brake, speed and grip used along the line" + of),
                PanelSvg.of(panels.friction(index), CHART, name + "f", "Friction used by both axles" + of),
                PanelSvg.of(
                        panels.map(index, sheet.rungs()),
                        CHART,
                        name + "m",
                        "Time lost by all releases of this peak, this one marked" + of),
                failing(sheet, index),
                numbers(sheet, finding),
                row(sheet, index));
    }

    /** Whether any release of the same peak does not make the corner. */
    private static boolean failing(Sheet sheet, int index) {
        int first = index - index % sheet.rungs();
        return sheet.releases().subList(first, first + sheet.rungs()).stream()
                .anyMatch(one -> !one.entry().made());
    }

    private static String said(Sheet sheet, int index) {
        Finding finding = sheet.releases().get(index);
        EntryResult entry = finding.entry();
        String off = "Peak " + Numbers.rounded(entry.plan().peakDeceleration(), 2) + " m/s², brake off "
                + Words.board(entry.plan().release().end()) + ": ";
        if (index == sheet.planned()) {
            return off + "the plan, " + Words.seconds(entry.time());
        }
        return finding.found()
                ? off + Words.seconds(entry.time()) + ", " + apart(lost(sheet, entry)) + allowed(sheet, index)
                : off + (entry.made() ? "too little margin" : entry.outcome().words());
    }

    private static String apart(double lost) {
        return Words.seconds(Math.abs(lost)) + (lost >= 0 ? " slower" : " quicker");
    }

    /** {@code , 12.5 % failures: not for this driver}; empty where failures were not counted. */
    private static String allowed(Sheet sheet, int index) {
        double accepted = sheet.request().accepted();
        return sheet.failures(index)
                .map(failed -> ", " + Words.percent(failed.value()) + " failures"
                        + (failed.value() > accepted ? ": not for this driver" : ""))
                .orElse("");
    }

    private static double lost(Sheet sheet, EntryResult entry) {
        return entry.time() - sheet.plan().entry().time();
    }

    private static String why(Sheet sheet, Finding finding, boolean planned) {
        EntryResult entry = finding.entry();
        if (!entry.made()) {
            return "How it feels: " + TellTale.of(entry) + ".";
        }
        Optional<EntryResult> other =
                planned ? sheet.straight() : Optional.of(sheet.plan().entry());
        return other.map(one -> (planned ? "Compared with straight-line braking: " : "Compared with the plan: ")
                        + TimeSplit.between(
                                        sheet.study().simulator().car(),
                                        sheet.study().simulator().apex(),
                                        entry,
                                        one)
                                .sentence())
                .orElse("Straight-line braking was not found to make the corner.");
    }

    /** In the order in which the car comes to them. */
    private static List<Phase> phases(Sheet sheet, EntryResult entry) {
        BrakePlan plan = entry.plan();
        var release = plan.release();
        Speeds speeds = new Speeds(entry, sheet.request().units());
        double foot = plan.brakePoint();
        boolean into = Words.intoRelease(plan);
        List<Phase> phases = new ArrayList<>();
        phases.add(new Phase(foot, "Brake point", Words.brakeBoard(foot) + speeds.at(foot)));
        phases.add(new Phase(foot, "Press", press(entry, into, sheet.request().units()) + "; " + hardest(sheet)));
        if (into) {
            phases.add(new Phase(
                    foot, "Release point", "at once, " + shape(release.shape().name())));
        } else if (!Words.atOnce(plan)) {
            String from = Words.board(release.start()) + speeds.at(release.start());
            phases.add(new Phase(
                    release.start(),
                    "Release point",
                    from + ", " + shape(release.shape().name())));
        }
        phases.add(new Phase(0, "Turn in", speeds.at(0).replace(", ", "") + ", " + pedal(plan)));
        String atOnce = Words.atOnce(plan) ? ", all at once" : "";
        phases.add(
                new Phase(release.end(), "Brake off", Words.board(release.end()) + speeds.at(release.end()) + atOnce));
        if (entry.made()) {
            double slowest = entry.minimumSpeedAt();
            String apex = Words.board(sheet.study().simulator().apex());
            phases.add(new Phase(
                    slowest, "Slowest point", Words.board(slowest) + speeds.at(slowest) + "; the apex is " + apex));
            if (Double.isFinite(entry.pickUp())) {
                phases.add(
                        new Phase(entry.pickUp(), "Pick-up", Words.board(entry.pickUp()) + speeds.at(entry.pickUp())));
            }
        }
        phases.sort(Comparator.comparingDouble(Phase::station));
        return phases;
    }

    /** What the foot does at turn-in. */
    private static String pedal(BrakePlan plan) {
        if (plan.brakePoint() >= 0) {
            return "before the brake";
        }
        double on = plan.release().remaining(0);
        return on == 1
                ? "with the full peak still on"
                : on > 0 ? "with " + Words.percent(on) + " of the peak still on" : "off the brake";
    }

    /** What a foot can ask for at all. */
    private static String hardest(Sheet sheet) {
        String limit = Numbers.rounded(sheet.study().lockLimit(), 2) + " m/s²";
        return sheet.study().simulator().car().antiLock()
                ? "in a straight line at the approach speed more than " + limit
                        + " changes nothing: the anti-lock brakes hold all wheels back"
                : "in a straight line at the approach speed a wheel locks at " + limit;
    }

    private static final String FROM_THE_BRAKES = " from the brakes alone";

    /** {@code to 9.24 m/s² (0.94 g) from the brakes alone within 0.25 s}, and what is reached where that is less. */
    static String press(EntryResult entry, boolean into, Units units) {
        String within = " within " + Numbers.shortest(entry.plan().buildUpTime()) + " s";
        String peak = units.deceleration(entry.plan().peakDeceleration());
        if (into) {
            return "to " + units.deceleration(Speeds.hardest(entry)) + FROM_THE_BRAKES + within;
        }
        return Words.shortOfPeak(entry).stream()
                .mapToObj(most -> "as if to " + peak + within + "; the foot eases before it gets there, and reaches "
                        + units.deceleration(most) + FROM_THE_BRAKES)
                .findFirst()
                .orElse("to " + peak + FROM_THE_BRAKES + within);
    }

    private static String shape(String name) {
        return switch (name) {
            case "linear" -> "evenly (linear)";
            case "progressive" -> "quickly at first, then ever more slowly (progressive)";
            case "held" -> "held at first, then off ever more quickly (held)";
            case "circle" -> "slowly at first, the last of it at once (circle)";
            case "smooth" -> "gently at both ends (smooth)";
            case "two-stage" -> "with a quick drop, a hold, and the rest (two-stage)";
            default -> "in the shape " + name;
        };
    }

    private static List<NumberRow> numbers(Sheet sheet, Finding finding) {
        List<NumberRow> rows = new ArrayList<>();
        Finding plan = sheet.plan();
        for (SheetNumber number : SheetNumber.values()) {
            rows.add(new NumberRow(
                    number.words(sheet.request().units()),
                    number.of(sheet, finding.entry()),
                    number.of(sheet, plan.entry()),
                    sheet.straight().map(entry -> number.of(sheet, entry)).orElse("–")));
        }
        rows.add(new NumberRow(
                "in hand, m",
                hand(finding),
                hand(plan),
                sheet.straightInHand().isPresent()
                        ? Numbers.rounded(sheet.straightInHand().getAsDouble(), 1)
                        : "–"));
        return rows;
    }

    private static String hand(Finding finding) {
        return finding.found() ? Numbers.rounded(finding.inHand(), 1) : "–";
    }

    private static Row row(Sheet sheet, int index) {
        Finding finding = sheet.releases().get(index);
        EntryResult entry = finding.entry();
        boolean atOnce = entry.plan().release().end()
                < sheet.plan().entry().plan().release().start();
        String how = entry.made() && !finding.found()
                ? "too little margin"
                : entry.outcome().words();
        return new Row(
                Numbers.rounded(entry.plan().release().end(), 1),
                Numbers.rounded(entry.plan().brakePoint(), 1),
                finding.found() ? Numbers.rounded(lost(sheet, entry), 2) : "–",
                how + (atOnce ? ", off at once" : "") + allowed(sheet, index));
    }
}
