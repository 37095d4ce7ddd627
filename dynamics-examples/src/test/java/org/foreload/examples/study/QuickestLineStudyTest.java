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

    /**
     * Within 0.15 m of the given line, the driver on the line of perfect hands takes their time within half of that.
     */
    @ParameterizedTest
    @CsvSource({"light, medium", "road, hairpin"})
    void theDriverTakesTheTimeOfTheLineNearby(String carName, String cornerName) {
        Car car = Demos.car("", carName).value();
        Corner corner = Demos.corner("", cornerName).value();
        LineRun limit = lines(car, corner).given();
        hold("near", carName, cornerName, limit, driven(car, limit), SHARE / 2);
    }

    @ParameterizedTest
    @CsvSource({"light, hairpin", "light, medium", "road, hairpin", "road, medium", "downforce, hairpin"})
    void theDriverTakesTheTimeOfTheQuickestLine(String carName, String cornerName) {
        Car car = Demos.car("", carName).value();
        Corner corner = Demos.corner("", cornerName).value();
        LineRun limit = lines(car, corner).quickest();
        hold("quickest", carName, cornerName, limit, driven(car, limit), SHARE);
    }

    private static LineStudy lines(Car car, Corner corner) {
        Hands hands = Hands.practised(Limit.peakDeceleration(car, corner));
        return new LineStudy(car, corner, hands, LimitOptions.STANDARD, (step, residual) -> {});
    }

    private static EntryResult driven(Car car, LineRun line) {
        return BestRelease.STANDARD
                .find(CornerStudy.of(car, line.corner()).with(Allowance.NO_MARGIN))
                .entry()
                .orElseThrow();
    }

    private static void hold(String line, String car, String corner, LineRun limit, EntryResult best, double share) {
        double perfect = limit.result().time();
        StudyLog.line(
                "%s line, %s %s: perfect %.3f s, driver %.3f s, %.2f %% more; foot builds up in %.2f s",
                line,
                car,
                corner,
                perfect,
                best.time(),
                100 * (best.time() / perfect - 1),
                best.plan().buildUpTime());
        assertTrue(limit.result().converged());
        assertEquals(perfect, best.time(), share * perfect);
    }
}
