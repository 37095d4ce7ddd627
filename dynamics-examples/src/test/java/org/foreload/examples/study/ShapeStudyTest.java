package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;
import org.foreload.examples.demo.Demos;
import org.foreload.optimum.ShapeRanking;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.SweepMemory;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What the search for the best of each shape leaves open: from the standard sweep, and from one of half its spacing.
 */
@Tag("long")
class ShapeStudyTest {

    private static final Sweep SWEEP = new Sweep(Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT);

    @Test
    void shapesTieThatTheSearchDoesNotSetApart() {
        double sum = 0;
        double gain = 0;
        double most = 0;
        int count = 0;
        for (String car : Demos.CARS) {
            for (String corner : Demos.CORNERS) {
                CornerStudy study = CornerStudy.of(
                        Demos.car("", car).value(), Demos.corner("", corner).value());
                Map<String, Double> standard = best(study, 1);
                Map<String, Double> finer = best(study, 2);
                for (Map.Entry<String, Double> shape : standard.entrySet()) {
                    double gained = shape.getValue() - finer.get(shape.getKey());
                    sum += Math.abs(gained);
                    gain += gained;
                    most = Math.max(most, Math.abs(gained));
                    count++;
                }
            }
        }
        StudyLog.line(
                "best of %d shapes, standard sweep and half its spacing: %.3f s apart in the mean, %.3f s at most; the finer one is quicker by %.3f s in the mean",
                count, sum / count, most, gain / count);
        assertTrue(count > 40, "compared " + count);
        assertTrue(
                sum / count <= 1.2 * ShapeRanking.TIE && sum / count >= 0.3 * ShapeRanking.TIE, "apart " + sum / count);
    }

    /** Time, s, of the best of each shape. */
    private static Map<String, Double> best(CornerStudy study, int resolution) {
        ReleaseSweep releases = new ReleaseSweep(study, SweepPlan.withResolution(resolution));
        Exploration found = ShapeRanking.refine(releases, releases.coarse(SWEEP, SweepMemory.NONE), SWEEP);
        Map<String, Double> best = new TreeMap<>();
        for (Candidate one : found.candidates()) {
            if (one.made() && !StraightLine.is(one.entry().plan())) {
                best.merge(
                        one.entry().plan().release().shape().name(), one.entry().time(), Math::min);
            }
        }
        return best;
    }
}
