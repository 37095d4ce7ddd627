package org.foreload.examples.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.Units;
import org.foreload.examples.demo.Demos;
import org.foreload.risk.Risk;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/** What a sheet says of its plan beside the quickest release that was tried, and of what a foot reaches. */
class DriverPlanTest {

    private static final int TRIED = 181;

    private static final SheetRequest REQUEST =
            new SheetRequest(SweepPlan.standard(), Scatter.PRACTISED, 256, 1, 3, 0.05, Units.SI);

    private static final EntrySimulator SIMULATOR = CornerStudy.of(
                    Demos.car("", Demos.DEFAULT_CAR).value(),
                    Demos.corner("", Demos.DEFAULT_CORNER).value())
            .simulator();

    private static final EntryResult PLAN = SIMULATOR.run(straight(-200));

    private static final EntryResult QUICKEST = SIMULATOR.run(straight(-199.9));

    private static BrakePlan straight(double brakePoint) {
        return Braking.of(6, 0.25, new Release(ReleaseShapes.ABRUPT, 0, 0)).from(brakePoint);
    }

    private static Risk failing(BrakePlan plan, int of256) {
        return new Risk(plan, new Proportion(of256, 256), Map.of(), 10, 0);
    }

    private static String compared(int planFails, int quickestFails) {
        return SheetPage.compared(
                TRIED,
                REQUEST,
                new DriverPlan(
                        new Finding(PLAN, true, 5),
                        failing(PLAN.plan(), planFails),
                        planFails <= 12,
                        new Finding(QUICKEST, true, 5),
                        failing(QUICKEST.plan(), quickestFails)));
    }

    /** Five of 256 are 2.0 %, which this driver accepts: such a release is not refused, it is only hardly quicker. */
    @Test
    void aReleaseThatTheDriverAcceptsIsNotSaidToBeBeyondTheDriver() {
        double quicker = PLAN.time() - QUICKEST.time();
        assertTrue(quicker > 0 && quicker < 0.01, "quicker by " + quicker);
        assertEquals(
                "The quickest of the 181 releases that were tried is less than 0.01 s quicker: no reason to change the "
                        + "plan.",
                compared(7, 5));
    }

    /** Twelve of 256 are 4.7 %, thirteen 5.1 %: only that is more than 5 %. */
    @Test
    void aReleaseThatFailsTooOftenIsNotForThisDriver() {
        assertFalse(compared(7, 12).contains("Not for this driver"));
        String beyond = compared(7, 13);
        assertTrue(beyond.startsWith("Not for this driver: the quickest of the 181 releases"), beyond);
        assertTrue(beyond.contains("fails in 5.1 % of the entries"), beyond);
    }

    /** A quarter of a second at more than 36 m/s is more than 9 m: after 8 m the foot has not reached its peak. */
    @Test
    void aPressThatIsNeverReachedIsNotAskedFor() {
        assertEquals("to 6.00 m/s² from the brakes alone within 0.25 s", ReleaseView.press(PLAN, false, Units.SI));
        Release soon = new Release(ReleaseShapes.ABRUPT, -150, -142);
        EntryResult early = SIMULATOR.run(straight(-150).with(soon));
        String press = ReleaseView.press(early, false, Units.SI);
        String start = "as if to 6.00 m/s² within 0.25 s; the foot eases before it gets there, and reaches ";
        assertTrue(press.startsWith(start) && press.endsWith(" m/s² from the brakes alone"), press);
        double reached = Double.parseDouble(press.substring(start.length(), press.indexOf(" m/s² from")));
        assertTrue(reached > 0.5 && reached < 5.9, press);
    }
}
