package org.foreload.examples.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.LongFunction;
import java.util.function.Predicate;
import org.foreload.advice.Change;
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
        Told told = told("with a margin", Nearness.WITH_MARGIN, FIRST);
        assertTrue(told.withheld() <= 0.2 * told.corners(), told.withheld() + " of " + told.corners() + " withheld");
        assertTrue(told.single().size() >= DRIVERS, told.single().size() + " items");
        told.single().hold(0.98, 0.8, 0.85);
        told.combined().hold(0.98, 0.8, 0.85);
    }

    /** Where little is left to gain a prediction is less sure; what is told is quicker all the same. */
    @Test
    void driversWithLittleInHandGainWhatTheyAreTold() {
        Told told = told("little in hand", Nearness.LITTLE_IN_HAND, FIRST + 300);
        assertTrue(told.single().size() >= DRIVERS, told.single().size() + " items");
        told.single().hold(0.9, 0.75, 0.8);
    }

    /** Between a margin and the limit. */
    @Test
    void driversSomeMetresBeforeTheirLimitGainWhatTheyAreTold() {
        Told told = told("some metres before the limit", Nearness.SOME_METRES, FIRST + 700);
        told.single().hold(0.9, 0.6, 0.7);
    }

    /** Who has nothing in hand is told nothing that makes him slower, but for one item in ten corners. */
    @Test
    void driversAtTheirLimitAreNotSentInFaster() {
        Told told = told("at the limit", Nearness.AT_THE_LIMIT, FIRST + 100);
        assertTrue(told.withheld() >= 0.85 * told.corners(), told.withheld() + " of " + told.corners() + " withheld");
        long slower = told.single().items().stream()
                .filter(item -> !(item.truth() > 0))
                .count();
        assertTrue(slower <= 0.1 * told.corners(), slower + " items are not quicker");
    }

    /**
     * Who brakes softly and early to the speed of the limit is to brake harder and later to it: each such change is
     * quicker, and so is what else is advised where no wait shows.
     */
    @Test
    void driversWhoBrakeSoftlyToTheirLimitAreToBrakeHarder() {
        Told told = told("softly to the limit", AdviceStudyTest::soft, FIRST + 900);
        assertTrue(told.harder().size() >= DRIVERS, told.harder().size() + " items");
        told.harder().hold(1, 0.9, 0.9);
        told.single().hold(0.98, 0.8, 0.85);
    }

    private static List<MadeRun.Stage> soft(long driver) {
        SplittableRandom random = new SplittableRandom(-driver);
        return stages(driver, Nearness.AT_THE_LIMIT).stream()
                .map(stage -> SoftBraking.of(stage, 0.7 + 0.2 * random.nextDouble()))
                .toList();
    }

    /** What decides in a hairpin is how a car bears brake and cornering together, of which a fitted car knows least. */
    @Test
    void inHairpinsIntervalsHold() {
        Told told = told("in hairpins", Nearness.WITH_MARGIN, Bends.HAIRPINS, FIRST + 500);
        assertTrue(told.single().size() >= DRIVERS, told.single().size() + " items");
        told.single().hold(0.98, 0.8, 0.85);
    }

    /**
     * What some drivers were told.
     *
     * @param corners that were driven
     * @param withheld corners without advice, or without any that lets the car come faster
     * @param single changes
     * @param harder of these, later and harder to the same speed
     * @param combined two changes together
     */
    private record Told(int corners, int withheld, Items single, Items harder, Items combined) {}

    private static Told told(String who, Nearness nearness, int first) {
        return told(who, nearness, Bends.ANY, first);
    }

    private static Told told(String who, Nearness nearness, Bends bends, int first) {
        return told(who, driver -> stages(driver, nearness, bends), first);
    }

    private static Told told(String who, LongFunction<List<MadeRun.Stage>> drivers, int first) {
        List<Item> items = new ArrayList<>();
        int corners = 0;
        int withheld = 0;
        for (int driver = first; driver < first + DRIVERS; driver++) {
            AdvisedRun run = AdvisedRun.of(drivers.apply(driver), 5, 50, 1000L * driver, Optional.empty());
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
        StudyLog.line("advice, %s: %d corners, %d without", who, corners, withheld);
        Items single = new Items(
                who + ", single changes",
                items.stream().filter(item -> !item.told().combined()).toList());
        Items combined = new Items(
                who + ", two changes together",
                items.stream().filter(item -> item.told().combined()).toList());
        Items harder = new Items(
                who + ", later and harder",
                single.items().stream()
                        .filter(item -> item.told().steps().get(0).change() == Change.LATER_AND_HARDER)
                        .toList());
        single.log();
        harder.log();
        combined.log();
        harder.hold(1, 0, 0.85);
        return new Told(corners, withheld, single, harder, combined);
    }

    /** Advice of one kind. */
    private record Items(String name, List<Item> items) {

        int size() {
            return items.size();
        }

        private long count(Predicate<Item> which) {
            return items.stream().filter(which).count();
        }

        void log() {
            StudyLog.line(
                    "advice, %s: %d items; the true car makes %d of them, is quicker in %d, predictions near in %d, intervals"
                            + " hold in %d",
                    name,
                    items.size(),
                    count(item -> !Double.isNaN(item.truth())),
                    count(item -> item.truth() > 0),
                    count(Item::near),
                    count(Item::held));
        }

        /** At least these shares are quicker, near and held. */
        void hold(double quicker, double near, double held) {
            assertTrue(count(item -> item.truth() > 0) >= quicker * size(), name + ": quicker");
            assertTrue(count(Item::near) >= near * size(), name + ": near");
            assertTrue(count(Item::held) >= held * size(), name + ": held");
        }
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

        /** Hardly a margin: what an axle's last per cents leave, and the edge of the road. */
        static final Nearness LITTLE_IN_HAND = new Nearness(new Allowance(0.5, 0.5, 0.01, 0.05, 0), -0.3, 0.7);

        /**
         * One to four metres earlier than the last brake point that makes the corner within half a metre of the line.
         */
        static final Nearness SOME_METRES = new Nearness(Allowance.NO_MARGIN, 1, 4);

        /** Nothing in hand: some brake later than ever makes the corner within half a metre of the line. */
        static final Nearness AT_THE_LIMIT = new Nearness(Allowance.NO_MARGIN, -0.3, 0.7);
    }

    /**
     * The corners that are made up.
     *
     * @param least radius, m
     * @param most radius, m
     * @param shortest turn, degrees
     * @param longest turn, degrees
     */
    record Bends(double least, double most, double shortest, double longest) {

        static final Bends ANY = new Bends(25, 100, 60, 150);

        static final Bends HAIRPINS = new Bends(16, 22, 150, 180);
    }

    static List<MadeRun.Stage> stages(long driver, Nearness nearness) {
        return stages(driver, nearness, Bends.ANY);
    }

    private static List<MadeRun.Stage> stages(long driver, Nearness nearness, Bends bends) {
        SplittableRandom random = new SplittableRandom(driver);
        Car car = Demos.car("car", random.nextInt(2) == 0 ? "light" : "road").value();
        List<MadeRun.Stage> stages = new ArrayList<>();
        while (stages.size() < 2) {
            stage(car, random, nearness, bends).ifPresent(stages::add);
        }
        return stages;
    }

    /** A corner and a driver there; nothing if that release makes the corner from nowhere. */
    private static Optional<MadeRun.Stage> stage(Car car, SplittableRandom random, Nearness nearness, Bends bends) {
        double radius = bends.least() + (bends.most() - bends.least()) * random.nextDouble();
        double angle = Math.toRadians(bends.shortest() + (bends.longest() - bends.shortest()) * random.nextDouble());
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
