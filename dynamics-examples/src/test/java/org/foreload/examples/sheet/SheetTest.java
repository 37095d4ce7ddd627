package org.foreload.examples.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.answer.Units;
import org.foreload.examples.demo.Demos;
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

    /**
     * The plan is the quickest that the driver can repeat, as the page says: what is quicker beside it fails too often,
     * counted anew, and says so.
     */
    @Test
    void whatIsQuickerThanThePlanIsNotForThisDriver() {
        CornerStudy study = CornerStudy.of(
                Demos.car("", Demos.DEFAULT_CAR).value(),
                Demos.corner("", Demos.DEFAULT_CORNER).value());
        SweepPlan far = new SweepPlan(List.of(ReleaseShapes.LINEAR), List.of(0.6), List.of(0.0), List.of(0.9), 0.25);
        SheetRequest request = new SheetRequest(far, Scatter.NOVICE, SAMPLES, 1, 1, ACCEPTED, Units.KMH);
        Sheet sheet = Sheet.of(study, request, Sweep.quiet()).orElseThrow();
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
