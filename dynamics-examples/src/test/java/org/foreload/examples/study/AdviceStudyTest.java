package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.recording.AdvisedRun;
import org.foreload.examples.recording.AdvisedRun.Item;
import org.foreload.examples.recording.MadeRun;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Made drivers of two cars, each in two random corners with a release of their own, recorded over five laps at 50 Hz
 * and advised: what each item is truly worth is found with the true car on the true road. Agreed on beforehand:
 * predictions within a quarter or 0.03 s, intervals that hold nine times in ten.
 */
@Tag("long")
class AdviceStudyTest {

    private static final int DRIVERS = Integer.getInteger("advice.drivers", 30);

    private static final int FIRST = Integer.getInteger("advice.first", 101);

    private static final List<ReleaseShape> SHAPES =
            List.of(ReleaseShapes.LINEAR, ReleaseShapes.HELD, ReleaseShapes.PROGRESSIVE, ReleaseShapes.SMOOTH);

    @Test
    void predictedGainsAreThoseOfTheTrueCar() {
        List<Item> items = new ArrayList<>();
        int corners = 0;
        int withheld = 0;
        for (int driver = FIRST; driver < FIRST + DRIVERS; driver++) {
            AdvisedRun run =
                    AdvisedRun.of(stages(driver, Nearness.WITH_MARGIN), 5, 50, 1000L * driver, Optional.empty());
            for (var corner : run.advice().corners()) {
                corners++;
                withheld += corner.withheld().isPresent() ? 1 : 0;
                int number = driver;
                corner.withheld().ifPresent(why -> StudyLog.line("advice, driver %d: withheld, %s", number, why));
            }
            for (Item item : run.items()) {
                StudyLog.line("advice, driver %d, %s", driver, item.line());
            }
            items.addAll(run.items());
        }
        StudyLog.line("advice: %d corners, %d without", corners, withheld);
        assertTrue(withheld <= 0.2 * corners, withheld + " of " + corners + " withheld");
        List<Item> single =
                items.stream().filter(item -> !item.told().combined()).toList();
        assertTrue(single.size() >= DRIVERS, single.size() + " items");
        hold("single changes", single);
        hold(
                "two changes together",
                items.stream().filter(item -> item.told().combined()).toList());
    }

    private static void hold(String name, List<Item> items) {
        long made = items.stream().filter(item -> !Double.isNaN(item.truth())).count();
        long near = items.stream().filter(Item::near).count();
        long held = items.stream().filter(Item::held).count();
        long gained = items.stream().filter(item -> item.truth() > 0).count();
        StudyLog.line(
                "advice, %s: %d items; the true car makes %d of them, is quicker in %d, predictions near in %d, intervals"
                        + " hold in %d",
                name, items.size(), made, gained, near, held);
        assertTrue(made >= 0.95 * items.size(), made + " made of " + items.size());
        assertTrue(near >= 0.8 * items.size(), near + " near of " + items.size());
        assertTrue(held >= 0.85 * items.size(), held + " held of " + items.size());
    }

    /**
     * How near to the last brake point drivers brake.
     *
     * @param allowance what that brake point leaves in hand
     * @param least how much earlier than that they brake at least, m; negative is later
     * @param most how much earlier at most, m
     */
    record Nearness(Allowance allowance, double least, double most) {

        /** With a margin that people keep, and some metres more. */
        static final Nearness WITH_MARGIN = new Nearness(Allowance.STANDARD, 1, 10);

        /** Nothing in hand: some brake later than ever makes the corner within half a metre of the line. */
        static final Nearness AT_THE_LIMIT = new Nearness(Allowance.NO_MARGIN, -0.3, 0.7);
    }

    static List<MadeRun.Stage> stages(long driver, Nearness nearness) {
        SplittableRandom random = new SplittableRandom(driver);
        Car car = Demos.car("car", random.nextInt(2) == 0 ? "light" : "road").value();
        List<MadeRun.Stage> stages = new ArrayList<>();
        while (stages.size() < 2) {
            stage(car, random, nearness).ifPresent(stages::add);
        }
        return stages;
    }

    /** A corner and a driver there; nothing if that release makes the corner from nowhere. */
    private static Optional<MadeRun.Stage> stage(Car car, SplittableRandom random, Nearness nearness) {
        double radius = 25 + 75 * random.nextDouble();
        double angle = Math.toRadians(60 + 90 * random.nextDouble());
        double spiral = radius * (0.4 + 0.4 * random.nextDouble());
        Turn turn = random.nextInt(2) == 0 ? Turn.LEFT : Turn.RIGHT;
        double arc = Math.max(5, radius * angle - spiral);
        SegmentPath path = SegmentPath.of(
                300,
                List.of(
                        Segment.spiralIn(spiral, radius, turn),
                        Segment.arc(arc, radius, turn),
                        Segment.spiralOut(spiral, radius, turn)),
                200,
                6);
        CornerStudy study = CornerStudy.of(
                car,
                new Corner("a corner", 45 + 10 * random.nextDouble(), path),
                DriverSettings.practised(),
                SimulationSettings.STANDARD,
                nearness.allowance());
        double apex = study.simulator().apex();
        double peak = (0.6 + 0.2 * random.nextDouble()) * study.lockLimit();
        double start = -25 * random.nextDouble();
        double end = 3 + 0.6 * apex * random.nextDouble();
        ReleaseShape shape = SHAPES.get(random.nextInt(SHAPES.size()));
        var latest = study.latest(Braking.of(peak, 0.2, new Release(shape, start, end)));
        double early = nearness.least() + (nearness.most() - nearness.least()) * random.nextDouble();
        BrakePlan plan = latest.entry().plan();
        BrakePlan driven = plan.withBrakePoint(plan.brakePoint() - early);
        return latest.found() && study.simulator().probe(driven).made()
                ? Optional.of(new MadeRun.Stage(study, driven))
                : Optional.empty();
    }
}
