package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.examples.demo.Demos;
import org.foreload.optimum.BestRelease;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The best release against sweeps of a hundred and twenty times the releases of the standard one, every demo car and
 * corner.
 */
@Tag("long")
class FineSweepTest {

    @ParameterizedTest
    @CsvSource({
        "road, hairpin", "road, medium", "road, fast",
        "light, hairpin", "light, medium", "light, fast",
        "downforce, hairpin", "downforce, medium", "downforce, fast"
    })
    void isNoWorseThanAFineSweep(String car, String corner) {
        CornerStudy study = CornerStudy.of(
                Demos.car("", car).value(), Demos.corner("", corner).value());
        Exploration fine = new ReleaseSweep(study, SweepPlan.withResolution(7)).run(Sweep.quiet());
        double swept = fine.best().orElseThrow().entry().time();
        double best = BestRelease.STANDARD.find(study).entry().orElseThrow().time();
        StudyLog.line(
                "fine sweep, %s %s: best of %d releases %.4f s, of the search %.4f s",
                car, corner, fine.candidates().size(), swept, best);
        assertTrue(best <= swept, best + " against " + swept);
    }
}
