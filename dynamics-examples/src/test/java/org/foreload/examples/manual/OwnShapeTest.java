package org.foreload.examples.manual;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.TabulatedRelease;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;

/** The release shape of one's own in the developer's page. */
class OwnShapeTest {

    @Test
    void itMakesTheCorner() {
        CornerStudy study = CornerStudy.of(
                Demos.car("--demo-car", "light").value(),
                Demos.corner("--demo-corner", "medium").value());
        double peak = 0.7 * study.lockLimit();
        ReleaseShape shape = new TabulatedRelease("own", new double[] {0, 0.3, 0.8, 1}, new double[] {1, 0.5, 0.4, 0});
        EntryResult entry =
                study.latest(Braking.of(peak, 0.25, new Release(shape, 0, 30))).entry();
        assertEquals(Outcome.MADE_IT, entry.outcome(), entry.cause());
    }
}
