package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.demo.Demos;
import org.foreload.file.CarFile;
import org.foreload.optimum.ShapeRanking;
import org.foreload.path.Corner;
import org.foreload.risk.Risk;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often a practised driver fails with the plan that {@code explore} hands out, for eight cars in three corners: the
 * three demo cars as they are and with anti-lock brakes, a hatchback and a van. README and manual give the count.
 */
@Tag("long")
class FailuresStudyTest {

    private static final int ENTRIES = 256;

    /** Share of entries that may fail, of a driver to whom the plan is handed: what the command line accepts. */
    private static final double ACCEPTED = 0.05;

    @Test
    void fewEntriesFailWithThePlanThatIsHandedOut() throws IOException {
        Sweep sweep = new Sweep(Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT);
        List<Integer> counts = new ArrayList<>();
        for (Car car : cars()) {
            for (String name : Demos.CORNERS) {
                Corner corner = Demos.corner("", name).value();
                CornerStudy study = CornerStudy.of(car, corner);
                EntryResult best = ShapeRanking.explore(new ReleaseSweep(study, SweepPlan.standard()), sweep)
                        .best()
                        .orElseThrow()
                        .entry();
                Risk risk = new RiskStudy(study, Scatter.PRACTISED, ENTRIES, 1)
                        .of(best.plan(), sweep)
                        .orElseThrow();
                StudyLog.line(
                        "plan of explore, %s%s, %s: %d of %d entries fail, %d run wide",
                        car.name(),
                        car.antiLock() ? ", anti-lock" : "",
                        name,
                        risk.failed().count(),
                        ENTRIES,
                        risk.of(Outcome.RAN_WIDE).count());
                counts.add(risk.failed().count());
            }
        }
        StudyLog.line(
                "plan of explore: at most one of %d entries fails in %d of %d pairs of car and corner, in none more than %d",
                ENTRIES,
                counts.stream().filter(count -> count <= 1).count(),
                counts.size(),
                counts.stream().mapToInt(Integer::intValue).max().orElseThrow());
        assertTrue(counts.stream().allMatch(count -> count <= ACCEPTED * ENTRIES), counts.toString());
    }

    private static List<Car> cars() throws IOException {
        List<Car> cars = new ArrayList<>();
        for (String name : Demos.CARS) {
            Car car = Demos.car("", name).value();
            cars.add(car);
            cars.add(car.withAntiLock(true));
        }
        cars.add(own("car-hatchback.json"));
        cars.add(own("car-van.json"));
        return cars;
    }

    private static Car own(String file) throws IOException {
        try (InputStream text = FailuresStudyTest.class.getResourceAsStream(file)) {
            return CarFile.parse(new String(text.readAllBytes(), StandardCharsets.UTF_8), file)
                    .value();
        }
    }
}
