package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.line.LineRun;
import org.foreload.line.LineStudy;
import org.foreload.optimum.BestRelease;
import org.foreload.path.Corner;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The driver on the line that perfect hands and feet find anywhere on the road takes their time within 1 %. */
@Tag("long")
class QuickestLineStudyTest {

    private static final double SHARE = 0.01;

    @ParameterizedTest
    @CsvSource({"light, hairpin", "light, medium", "road, hairpin", "road, medium", "downforce, hairpin"})
    void theDriverTakesTheTimeOfTheQuickestLine(String carName, String cornerName) {
        Car car = Demos.car("", carName).value();
        Corner corner = Demos.corner("", cornerName).value();
        Hands hands = Hands.practised(Limit.peakDeceleration(car, corner));
        LineRun limit = new LineStudy(car, corner, hands, LimitOptions.STANDARD, (step, residual) -> {}).optimal();
        EntryResult best = BestRelease.STANDARD
                .find(CornerStudy.of(car, limit.corner()).with(Allowance.NO_MARGIN))
                .entry()
                .orElseThrow();
        StudyLog.line(
                "quickest line, %s %s: perfect %.3f s, driver %.3f s, %.2f %% more; foot builds up in %.2f s",
                carName,
                cornerName,
                limit.result().time(),
                best.time(),
                100 * (best.time() / limit.result().time() - 1),
                best.plan().buildUpTime());
        assertTrue(limit.result().converged());
        assertEquals(limit.result().time(), best.time(), SHARE * limit.result().time());
    }
}
