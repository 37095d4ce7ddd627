package org.foreload.examples.gallery;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.Units;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.BarChart;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Svg;
import org.foreload.examples.picture.XyChart;
import org.foreload.examples.picture.XyChart.Series;
import org.foreload.gap.TimeSplit;
import org.foreload.grip.BrakingGrip;
import org.foreload.handling.Trim;
import org.foreload.path.Path;
import org.foreload.risk.Aspect;
import org.foreload.risk.Choice;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.Risk;
import org.foreload.risk.TooLate;
import org.foreload.sensitivity.Knob;
import org.foreload.sensitivity.Sensitivity;
import org.foreload.sensitivity.Sensitivity.Side;
import org.foreload.stability.EntryStability;
import org.foreload.stability.StabilityRow;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Proportion;
import org.foreload.study.Sweep;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The numbers in the pictures are those of the library; one entry and one small sweep serve all tests. */
class GalleryTest {

    private static Car car;
    private static CornerStudy study;
    private static EntryResult entry;
    private static EntryResult straight;
    private static Exploration sweep;

    @BeforeAll
    static void drive() {
        car = Demos.car("car", "road").value();
        study = CornerStudy.of(car, Demos.corner("corner", "hairpin").value());
        SweepPlan few = new SweepPlan(
                List.of(ReleaseShapes.LINEAR), List.of(0.75, 0.95), List.of(-0.1), List.of(0.7, 1.4), 0.25);
        sweep = new ReleaseSweep(study, few).run(new Sweep(2, Sweep.Progress.SILENT));
        entry = sweep.best().orElseThrow().entry();
        straight = sweep.baseline().orElseThrow().entry();
    }

    /**
     * Beyond its limit the steer of the light car at 80 m/s runs off to many times what the turn needs: the axis is
     * made for what comes before, and for what was asked for. Common practice, no source.
     */
    @Test
    void theHandlingChartsShowWhatComesBeforeTheLimit() {
        Car light = Demos.car("car", "light").value();
        double lateral = 4;
        Trim trim = Trim.find(light, 80, 1, lateral).orElseThrow();
        Picture picture = CarPictures.handling(trim, Units.KMH);
        XyChart steer = charts(picture).get(0);
        double asked = Math.toDegrees(trim.steer());
        assertTrue(steer.y().low() < asked && asked < steer.y().high());
        double most =
                Arrays.stream(steer.series().get(0).ys()).map(Math::abs).max().orElseThrow();
        assertTrue(steer.y().high() - steer.y().low() < most / 3, steer.y().toString());
        assertTrue(picture.caption().contains("leaves its chart where an axle gives out"));
        assertTrue(
                picture.caption().startsWith("At 80.0 m/s (288 km/h), 4.00 m/s² (0.41 g) lateral"), picture.caption());
        assertTrue(picture.caption().contains("°/g"), picture.caption());
        assertTrue(CarPictures.handling(trim, Units.SI).caption().contains("° per m/s²"));
    }

    /**
     * A picture that ends inside an unstable stretch hides it: it shows the run from end to end. Common practice, no
     * source.
     */
    @Test
    void thePictureOfStabilityShowsTheWholeRun() {
        EntryStability stability = EntryStability.of(car, entry);
        List<StabilityRow> rows = stability.rows();
        for (XyChart chart : charts(PedalPictures.stability(study, entry, stability))) {
            double[] stations = chart.series().get(0).xs();
            assertEquals(rows.get(0).station(), stations[0]);
            assertEquals(rows.get(rows.size() - 1).station(), stations[stations.length - 1]);
        }
    }

    private static List<XyChart> charts(Picture picture) {
        List<XyChart> charts = new ArrayList<>();
        for (List<Panel> row : picture.rows()) {
            for (Panel panel : row) {
                if (panel instanceof ChartStack stack) {
                    charts.addAll(stack.charts());
                } else if (panel instanceof XyChart chart) {
                    charts.add(chart);
                }
            }
        }
        return charts;
    }

    private static Series series(XyChart chart, String name) {
        return chart.series().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Each number of a series stands in a column of the profile, at its station. */
    private static void assertFromProfile(Series series, String column, double factor) {
        Trace trace = entry.profile().orElseThrow();
        double[] stations = trace.column("s_m").values();
        double[] xs = series.xs();
        double[] ys = series.ys();
        assertTrue(xs.length > 50);
        for (int i = 0; i < xs.length; i++) {
            int row = Arrays.binarySearch(stations, xs[i]);
            assertTrue(row >= 0, "no station " + xs[i]);
            assertEquals(factor * trace.column(column).at(row), ys[i], 1e-12 * Math.abs(ys[i]));
        }
    }

    @Test
    void theCourseIsTheProfile() {
        List<XyChart> charts = charts(EntryPictures.course(study, entry));
        assertFromProfile(series(charts.get(0), "the car"), "deceleration_mps2", 1);
        assertFromProfile(series(charts.get(0), "asked of the brakes"), "brake_mps2", 1);
        assertFromProfile(series(charts.get(1), ""), "speed_mps", 1);
        assertFromProfile(series(charts.get(2), "front axle"), "front_utilisation", 100);
        assertFromProfile(series(charts.get(2), "rear axle"), "rear_utilisation", 100);
        assertEquals(1, charts.stream().map(chart -> chart.x()).distinct().count());
    }

    @Test
    void wheelLoadsAreTheProfiles() {
        XyChart chart = charts(EntryPictures.wheelLoads(study, entry)).get(0);
        assertFromProfile(series(chart, "front left"), "front_left_load_n", 1e-3);
        assertFromProfile(series(chart, "rear right"), "rear_right_load_n", 1e-3);
    }

    /** The edges are half the width from the line, on both sides, and the foot comes down on the line driven. */
    @Test
    void thePlanIsTheCorner() {
        XyChart chart = charts(EntryPictures.plan(study, entry)).get(0);
        Path path = study.simulator().corner().path();
        Path.Point origin = path.position(0);
        Series left = series(chart, "edge of the track");
        Series line = series(chart, "line driven");
        double nearest = Double.POSITIVE_INFINITY;
        Path.Point apex = path.position(study.simulator().apex());
        for (int i = 0; i < left.xs().length; i++) {
            nearest = Math.min(
                    nearest, Math.hypot(left.xs()[i] - apex.x() + origin.x(), left.ys()[i] - apex.y() + origin.y()));
        }
        assertEquals(path.widthLeft(study.simulator().apex()), nearest, 0.2);
        Series down = chart.series().stream()
                .filter(one -> one.name().startsWith("brake point"))
                .findFirst()
                .orElseThrow();
        assertEquals(entry.plan().brakePoint(), down.xs()[0], 0.01);
        assertTrue(chart.equalScale());
        assertTrue(line.xs().length > 50);
    }

    /** The way through the ellipse is as far from the middle as the grip used, and never turns against the corner. */
    @Test
    void theEllipseHoldsTheGripUsed() {
        XyChart chart = charts(EntryPictures.ellipse(study, entry)).get(0);
        Series front = series(chart, "front axle");
        Trace trace = entry.profile().orElseThrow();
        double most = 0;
        for (int i = 0; i < trace.rows(); i++) {
            double s = trace.column("s_m").at(i);
            if (s >= entry.plan().brakePoint() && s <= study.simulator().apex()) {
                most = Math.max(most, trace.column("front_utilisation").at(i));
            }
        }
        double farthest = 0;
        for (int i = 0; i < front.xs().length; i++) {
            farthest = Math.max(farthest, Math.hypot(front.xs()[i], front.ys()[i]));
        }
        assertEquals(100 * most, farthest, 1e-9);
        assertTrue(Arrays.stream(front.ys()).min().orElseThrow() < -50, "braking is below");
    }

    @Test
    void theGapCurveEndsAtTheDifferenceOfTimes() {
        XyChart chart = charts(EntryPictures.gap(study, entry, straight)).get(0);
        double[] gap = chart.series().get(0).ys();
        assertEquals(straight.time() - entry.time(), gap[gap.length - 1], 1e-9);
        assertEquals(
                TimeSplit.between(car, study.simulator().apex(), entry, straight)
                        .sentence(),
                EntryPictures.gap(study, entry, straight).caption());
    }

    /** Every release of the sweep is one mark of the landscape: at its own time, or above the line if it has none. */
    @Test
    void theLandscapeHoldsEveryReleaseOnce() {
        XyChart chart = charts(SweepPictures.landscape(study, sweep)).get(0);
        int marks = 0;
        // Peaks stand beside each other: by no more than a tenth of what lies between the ends of the axis.
        double[] ends = sweep.candidates().stream()
                .mapToDouble(one -> one.entry().plan().release().end())
                .sorted()
                .toArray();
        double aside = 0.1 * (ends[ends.length - 1] - ends[0]);
        for (Series series : chart.series()) {
            if (series.name().equals("the best")) {
                assertArrayEquals(
                        new double[] {sweep.best().orElseThrow().entry().time()}, series.ys());
                continue;
            }
            for (int i = 0; i < series.xs().length; i++) {
                marks++;
                double end = series.xs()[i];
                double time = series.ys()[i];
                assertTrue(sweep.candidates().stream()
                        .filter(one -> Math.abs(one.entry().plan().release().end() - end) <= aside)
                        .anyMatch(one -> one.entry().made()
                                ? one.entry().time() == time || series.name().startsWith("slower")
                                : series.name().equals(one.entry().outcome().words())));
            }
        }
        assertEquals(sweep.candidates().size(), marks);
    }

    @Test
    void theTradeOffIsThatOfTheSweep() {
        XyChart chart = charts(SweepPictures.landscape(study, sweep)).get(1);
        Series front = series(chart, "best trade-offs");
        assertEquals(sweep.candidates().stream().filter(Candidate::onFront).count(), front.xs().length);
        assertEquals(entry.time(), Arrays.stream(front.ys()).min().orElseThrow());
    }

    @Test
    void theFrontCapacityIsHighestAtTheMark() {
        BrakingGrip grip = BrakingGrip.of(car, 30);
        XyChart chart = GripPictures.capacity(grip, 8);
        Series front = series(chart, "front axle");
        assertEquals(grip.bestDeceleration(), chart.marks().get(0).at());
        double most = Arrays.stream(front.ys()).max().orElseThrow();
        assertTrue(1e-3 * grip.frontCapacity(grip.bestDeceleration()) >= most);
        for (int i = 0; i < front.xs().length; i += 10) {
            assertEquals(1e-3 * grip.frontCapacity(front.xs()[i]), front.ys()[i]);
        }
    }

    private static Risk risk(double brakePoint, int failed, double time) {
        BrakePlan plan =
                Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, 0, 20)).from(brakePoint);
        return new Risk(
                plan,
                new Proportion(failed, 50),
                Map.of(
                        Outcome.MADE_IT, new Proportion(50 - failed, 50),
                        Outcome.RAN_WIDE, new Proportion(failed, 50),
                        Outcome.SPUN, new Proportion(0, 50),
                        Outcome.LOCKED_UP, new Proportion(0, 50),
                        Outcome.STOPPED, new Proportion(0, 50),
                        Outcome.ROLLED_OVER, new Proportion(0, 50)),
                time,
                0.1);
    }

    /** Of three plans one is beaten in time and risk; the interval is Wilson's of the counts. */
    @Test
    void theRiskCurveHoldsThePlansThatNoneBeats() {
        Choice choice = new Choice(List.of(risk(-90, 1, 20.0), risk(-85, 5, 19.0), risk(-80, 9, 19.5)), true);
        Picture picture = RiskPictures.of(study, choice.tried().get(1), Optional.of(choice), 0.05, "In hand: 2 m.");
        XyChart chart = charts(picture).get(0);
        Series curve = series(chart, "quickest at this risk, with 95 % interval");
        assertArrayEquals(new double[] {2, 10}, curve.xs(), 1e-12);
        assertArrayEquals(new double[] {20, 19}, curve.ys(), 1e-12);
        assertArrayEquals(
                new double[] {18}, series(chart, "slower at the same risk").xs(), 1e-12);
        BarChart endings = (BarChart) picture.rows().get(0).get(0);
        assertEquals(100 * new Proportion(5, 50).high(), endings.bars().get(1).high(), 1e-12);
        assertTrue(picture.caption().contains("5 of 50"), picture.caption());
        assertTrue(picture.caption().contains("20.000 s"), picture.caption());
    }

    private static final TooLate LATE = new TooLate(OptionalInt.of(4), "front", "push");

    @Test
    void theStepsStandInTheirOrder() {
        PracticeSteps plan = new PracticeSteps(
                List.of(
                        new PracticeSteps.Step(risk(-90, 1, 20.0), 0, 0, 0, 0, LATE, LATE, List.of(), List.of()),
                        new PracticeSteps.Step(
                                risk(-85, 2, 19.4), 5, 0, 0, 0.6, LATE, LATE, List.of(Aspect.BRAKE_POINT), List.of())),
                0.5);
        Picture picture = RiskPictures.steps(study, plan, 0.05);
        List<XyChart> charts = charts(picture);
        assertArrayEquals(
                new double[] {0, 5}, series(charts.get(0), "brake point").ys());
        assertArrayEquals(new double[] {6, 6}, charts.get(1).series().get(0).ys());
        assertArrayEquals(
                new double[] {20.0, 19.4}, charts.get(2).series().get(0).ys());
        assertTrue(picture.caption().contains("1 step goes 50 % of the way and gains 0.60 s"), picture.caption());
        Svg.parse(picture.svg());
    }

    /**
     * The tornado's bars are the rows of the sensitivity, in milliseconds and in their order; what has no time is left
     * out.
     */
    @Test
    void theTornadoHoldsTheRows() {
        Sensitivity sensitivity = new Sensitivity(
                List.of(
                        row("mass_kg", "kg", 10, Knob.Kind.WORLD, made(-0.05), made(0.05), 0),
                        row("brake_point_m", "m", 1, Knob.Kind.PLAN, made(0.03), SPUN, Double.NaN),
                        row("power_w", "W", 5000, Knob.Kind.WORLD, made(0.02), made(-0.02), 0.01),
                        row("drag_area_m2", "m²", 0.02, Knob.Kind.WORLD, SPUN, SPUN, Double.NaN)),
                true);
        Picture picture = SetupPictures.tornado(study, entry, sensitivity);
        BarChart tornado = (BarChart) picture.rows().get(0).get(0);
        assertEquals(
                List.of("mass +10 kg", "power +5000 W"),
                tornado.bars().stream().map(BarChart.Bar::name).toList());
        assertEquals(50, tornado.bars().get(0).value(), 1e-9);
        assertEquals(-20, tornado.bars().get(1).value(), 1e-9);
        assertEquals("-20.0 *", tornado.bars().get(1).words());
        BarChart missed = (BarChart) picture.rows().get(1).get(0);
        assertEquals(
                List.of("brake point \u22121 m: +30.0"),
                missed.bars().stream()
                        .map(bar -> bar.name() + ": " + bar.words())
                        .toList());
        assertTrue(picture.caption().contains("These fail: brake point +1 m (spun)."), picture.caption());
    }

    private static final Side SPUN =
            new Side(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Optional.of(Outcome.SPUN));

    private static Side made(double timeChange) {
        return new Side(timeChange, 0, 0, 0, Optional.of(Outcome.MADE_IT));
    }

    private static Sensitivity.Row row(
            String parameter, String unit, double change, Knob.Kind kind, Side less, Side more, double doubt) {
        return new Sensitivity.Row(parameter, unit, change, kind, less, more, more, doubt);
    }
}
