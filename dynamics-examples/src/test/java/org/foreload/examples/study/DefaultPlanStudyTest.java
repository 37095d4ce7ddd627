package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.driver.Reaction;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.demo.Demos;
import org.foreload.path.Corner;
import org.foreload.path.SegmentPath;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The plan that a sweep finds with the usual margin, for each demo car in each demo corner: it does not slide, it is no
 * matter of what comes after the corner, and a practised driver can repeat it.
 */
@Tag("long")
class DefaultPlanStudyTest {

    /** Most sideslip, degrees, of a plan that is handed to a driver. Invented for want of a source. */
    private static final double MOST_SIDESLIP = 6;

    /** Metres of exit beyond the corner's own. */
    private static final double MORE_EXIT = 100;

    /** Time, s, by which two runs of the same entry may differ: a time between two rows is read by a straight line. */
    private static final double SAME = 5e-5;

    private static final int ENTRIES = 512;

    /** Share of entries that may fail, of a driver to whom the plan is handed: what the command line accepts. */
    private static final double ACCEPTED = 0.05;

    @ParameterizedTest
    @CsvSource({
        "road, hairpin", "road, medium", "road, fast",
        "light, hairpin", "light, medium", "light, fast",
        "downforce, hairpin", "downforce, medium", "downforce, fast"
    })
    void thePlanHolds(String car, String cornerName) {
        Corner corner = Demos.corner("", cornerName).value();
        CornerStudy study = CornerStudy.of(Demos.car("", car).value(), corner);
        Sweep sweep = new Sweep(Runtime.getRuntime().availableProcessors(), Sweep.Progress.SILENT);
        Exploration found = new ReleaseSweep(study, SweepPlan.standard()).run(sweep);
        EntryResult best = found.best().orElseThrow().entry();
        Trace trace = best.profile().orElseThrow();
        double slide = largest(trace, "sideslip_deg");
        StudyLog.line(
                "plan of the sweep, %s %s: %.3f s quicker than straight-line braking, %.3f s, slides by %.1f degrees",
                car, cornerName, found.gain(), best.time(), slide);
        assertTrue(slide <= MOST_SIDESLIP, "slides by " + slide);

        EntryResult longer = CornerStudy.of(Demos.car("", car).value(), longer(corner))
                .simulator()
                .run(best.plan());
        assertEquals(Outcome.MADE_IT, longer.outcome(), longer.cause());
        Trace after = longer.profile().orElseThrow();
        double end = corner.path().end();
        assertEquals(best.time(), timeAt(after, end), SAME);

        for (Scatter driver : new Scatter[] {Scatter.PRACTISED, Scatter.EXPERT}) {
            double failed = new RiskStudy(study, driver, Reaction.practised(), ENTRIES, 1)
                    .of(best.plan(), sweep)
                    .orElseThrow()
                    .failed()
                    .value();
            StudyLog.line(
                    "plan of the sweep, %s %s: of a driver %s %.1f %% of entries fail",
                    car, cornerName, driver.name(), 100 * failed);
            assertTrue(failed <= ACCEPTED, driver.name() + " fails in " + failed);
        }
    }

    private static Corner longer(Corner corner) {
        SegmentPath path = (SegmentPath) corner.path();
        double last = path.start();
        for (double kink : path.kinks()) {
            last = Math.max(last, kink);
        }
        double exit = path.end() - last;
        return new Corner(
                corner.name(),
                corner.approachSpeed(),
                SegmentPath.of(-path.start(), path.segments(), exit + MORE_EXIT, path.widthLeft(0)));
    }

    private static double largest(Trace trace, String column) {
        double most = 0;
        for (double value : trace.column(column).values()) {
            most = Math.max(most, Math.abs(value));
        }
        return most;
    }

    /** Time, s, at a station of a profile that has a row there. */
    private static double timeAt(Trace trace, double station) {
        double[] stations = trace.column("s_m").values();
        double[] times = trace.column("time_s").values();
        int i = 1;
        while (stations[i] < station) {
            i++;
        }
        double share = (station - stations[i - 1]) / (stations[i] - stations[i - 1]);
        return times[i - 1] + share * (times[i] - times[i - 1]);
    }
}
