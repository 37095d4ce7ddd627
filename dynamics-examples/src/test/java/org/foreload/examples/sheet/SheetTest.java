package org.foreload.examples.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.Reaction;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.examples.demo.Demos;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

/** A sheet from a sweep of one release that is trailed too far, so that better ones lie beside the plan. */
class SheetTest {

    private static final int SAMPLES = 8;

    private static final double ACCEPTED = 0.2;

    /** What the page shows of a time, s. */
    private static final double SHOWN = 0.01;

    private static final List<String> STAGES = new ArrayList<>();

    private static Sheet made;

    private static synchronized Sheet sheet() {
        if (made == null) {
            CornerStudy study = CornerStudy.of(
                    Demos.car("", Demos.DEFAULT_CAR).value(),
                    Demos.corner("", Demos.DEFAULT_CORNER).value());
            SweepPlan far =
                    new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.6), List.of(0.0), List.of(0.9), 0.25);
            SheetRequest request = new SheetRequest(far, Scatter.NOVICE, SAMPLES, 1, 1, ACCEPTED, Units.KMH);
            made = Sheet.of(study, request, Sweep.quiet(), STAGES::add).orElseThrow();
        }
        return made;
    }

    /**
     * What the table of the overdone plan says is what each entry does that is driven by itself: as planned it fails at
     * that metre or per cent and not one before, and wheels lock from there on that it says.
     */
    @Test
    void whatIsOverdoneFailsAndLocksWhereItSays() {
        EntrySimulator simulator = sheet().study().simulator();
        BrakePlan plan = sheet().plan().entry().plan();
        List<SheetPage.OverdoneRow> rows = SheetPage.of(sheet(), "", "0").overdone();
        int later = 0;
        while (simulator.run(plan.withBrakePoint(plan.brakePoint() + later)).made()) {
            later++;
        }
        String row = rows.get(0).planned();
        assertTrue(row.startsWith("by " + later + " m: "), later + " in " + row);
        int harder = 0;
        while (simulator.run(plan.withPeakDeceleration((1 + 0.01 * harder) * plan.peakDeceleration())).events().stream()
                .noneMatch(event ->
                        event.kind() == EntryEvent.Kind.FRONT_LOCKS || event.kind() == EntryEvent.Kind.REAR_LOCKS)) {
            harder++;
        }
        // Before the foot has reacted both feet do the same: they lock the wheel alike.
        String reacting = rows.get(1).reacting();
        assertTrue(reacting.contains("from " + harder + " % on, "), harder + " in " + reacting);
        assertTrue(reacting.contains("a front wheel locks"), reacting);
        assertTrue(rows.get(1).tellTale().contains("steering goes dead") || reacting.contains("steering goes dead"));
    }

    /** The reacting foot of the table expects the plan, as that of {@code entry --mistake} does. */
    @Test
    void theReactingFootExpectsThePlanThatItMisses() {
        EntrySimulator simulator = sheet().study().simulator();
        BrakePlan plan = sheet().plan().entry().plan();
        EntrySimulator reacting = simulator.with(simulator
                .driver()
                .with(simulator.driver().leftFoot().withSlowestBraking(0.4).with(Reaction.practised())));
        String row = SheetPage.of(sheet(), "", "0").overdone().get(1).reacting();
        double share = Double.parseDouble(row.substring("up to ".length(), row.indexOf(" %"))) / 100;
        double lost =
                reacting.run(plan.withPeakDeceleration((1 + share) * plan.peakDeceleration()), reacting.expected(plan))
                                .time()
                        - simulator.run(plan).time();
        assertTrue(row.contains("makes it, " + Words.seconds(Math.abs(lost))), lost + " in " + row);
    }

    @Test
    void eachStageIsNamedOnce() {
        sheet();
        assertEquals(5, STAGES.size(), STAGES.toString());
        for (int i = 0; i < 5; i++) {
            assertTrue(STAGES.get(i).startsWith(i + 1 + " of 5: "), STAGES.toString());
        }
    }

    /**
     * Practice begins where {@code steps} begins: with straight-line braking as hard and late as this driver repeats.
     */
    @Test
    void practiceBeginsWithStraightLineBraking() {
        RiskStudy risks = new RiskStudy(sheet().study(), Scatter.NOVICE, SAMPLES, 1);
        BrakePlan straight =
                PracticeSteps.straightLine(risks, 0.25, ACCEPTED, Sweep.quiet()).orElseThrow();
        List<PracticeSteps.Step> steps =
                sheet().practice().steps().orElseThrow().steps();
        assertEquals(straight, steps.get(0).risk().plan());
    }

    /**
     * The plan is the quickest that the driver can repeat, as the page says: what is quicker beside it fails too often,
     * counted anew, and says so.
     */
    @Test
    void whatIsQuickerThanThePlanIsNotForThisDriver() {
        Sheet sheet = sheet();
        CornerStudy study = sheet.study();
        RiskStudy risks = new RiskStudy(study, Scatter.NOVICE, SAMPLES, 1);
        List<ReleaseView> shown = SheetPage.of(sheet, "", "0").releases();
        assertEquals(sheet.releases().size(), shown.size());
        assertTrue(risks.of(sheet.plan().entry().plan()).failed().value() <= ACCEPTED, "the plan itself");
        for (int i = 0; i < shown.size(); i++) {
            Finding finding = sheet.releases().get(i);
            double gain = sheet.plan().entry().time() - finding.entry().time();
            if (finding.found() && gain > SHOWN) {
                double failed = risks.of(finding.entry().plan()).failed().value();
                assertTrue(failed > ACCEPTED, i + " is quicker by " + gain + " s and fails in " + failed);
                assertTrue(
                        shown.get(i).said().contains("not for this driver"),
                        shown.get(i).said());
            }
        }
    }
}
