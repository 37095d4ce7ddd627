package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.driver.SpeedPlan;
import org.foreload.entry.EntryResult;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.InHand;

/**
 * What becomes of the best release of a sweep if one thing about it is overdone and nothing else is changed: braked
 * exactly as planned, like all releases of the sweep, and with a foot that reacts, as on the corner sheet.
 */
final class Examples {

    /** What stands above the table: who drives. */
    static final String HEADING = "What happens away from the best, braked exactly as planned";

    /** Differences smaller than this, m and m/s, are not worth a word. */
    private static final double WORTH_TELLING = 0.5;

    /** By these factors the release is shorter or longer, and the peak harder. */
    private static final double SHORTER = 0.5;

    private static final double LONGER = 1.5;
    private static final double HARDER = 1.08;

    private final CornerStudy study;
    private final EntryResult best;
    private final RiskStudy reacting;
    private final SpeedPlan expected;

    /** Examples for a sweep with a best release. */
    Examples(CornerStudy study, Exploration sweep) {
        this.study = study;
        this.best = sweep.best().orElseThrow().entry();
        this.reacting = new RiskStudy(study, Scatter.NONE, 1, 1);
        this.expected = reacting.expected(best.plan());
    }

    List<Report> rows() {
        BrakePlan plan = best.plan();
        List<Report> rows = new ArrayList<>();
        if (plan.release().end() > plan.release().start()) {
            rows.add(row("too short", plan.with(stretched(SHORTER))));
            rows.add(row("too long", plan.with(stretched(LONGER))));
        }
        rows.add(row("too hard", plan.withPeakDeceleration(HARDER * plan.peakDeceleration())));
        return rows;
    }

    private Release stretched(double factor) {
        Release release = best.plan().release();
        return new Release(
                release.shape(), release.start(), release.start() + factor * (release.end() - release.start()));
    }

    private Report row(String what, BrakePlan plan) {
        EntryResult entry = study.simulator().run(plan);
        return new Report()
                .with("example", what)
                .with("peak_mps2", plan.peakDeceleration())
                .with("brake_m", plan.brakePoint())
                .with("ease_off_m", plan.release().start())
                .with("off_m", plan.release().end())
                .with("lost_s", entry.time() - best.time())
                .with("outcome", entry.outcome().words())
                .with("why", why(entry));
    }

    private String why(EntryResult entry) {
        return (entry.made() ? difference(entry, best) + kept(entry) : entry.cause()) + "; " + reacted(entry.plan());
    }

    /**
     * What the entry does not keep of what was asked for; of one that is quicker than the best always, since that is
     * why it is not the best.
     */
    private String kept(EntryResult entry) {
        if (!study.allowance().met(entry)) {
            return EntryAnswer.missing(study, entry);
        }
        if (entry.time() >= best.time()) {
            return "";
        }
        double left = InHand.of(study.simulator(), entry.plan());
        return left < study.allowance().inHand() ? EntryAnswer.missing(study, entry) : UNSWEPT;
    }

    private static final String UNSWEPT = "; keeps the margin asked for, but is no release of this sweep";

    /** The same with a foot that reacts: {@code a foot that reacts makes it, 0.03 s slower}. */
    private String reacted(BrakePlan plan) {
        EntryResult entry = reacting.asPlanned(plan, expected);
        if (!entry.made()) {
            return "a foot that reacts does not save it: " + entry.outcome().words();
        }
        double lost = entry.time() - best.time();
        return "a foot that reacts makes it, " + Words.seconds(Math.abs(lost)) + (lost < 0 ? " quicker" : " slower");
    }

    /** What a slower entry does otherwise than the best. */
    private static String difference(EntryResult entry, EntryResult best) {
        List<String> words = new ArrayList<>();
        tell(words, best.plan().brakePoint() - entry.plan().brakePoint(), "m", "brakes", "earlier", "later");
        tell(words, entry.turnInSpeed() - best.turnInSpeed(), "m/s", "turns in", "faster", "slower");
        slowest(words, entry, best);
        return words.isEmpty() ? "hardly different" : String.join(", ", words);
    }

    private static void slowest(List<String> words, EntryResult entry, EntryResult best) {
        List<String> parts = new ArrayList<>();
        tell(parts, entry.minimumSpeed() - best.minimumSpeed(), "m/s", "is", "faster", "slower");
        parts.replaceAll(part -> part + " at its slowest point");
        String later = parts.isEmpty() ? "is slowest" : "";
        tell(parts, entry.minimumSpeedAt() - best.minimumSpeedAt(), "m", later, "later", "earlier");
        if (!parts.isEmpty()) {
            words.add(String.join(",", parts));
        }
    }

    private static void tell(List<String> words, double more, String unit, String what, String up, String down) {
        if (Math.abs(more) >= WORTH_TELLING) {
            words.add(what + " " + Numbers.rounded(Math.abs(more), 1) + " " + unit + " " + (more > 0 ? up : down));
        }
    }
}
