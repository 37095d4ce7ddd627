package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.vehicle.Aerodynamics;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Chassis;
import org.foreload.vehicle.Driveline;
import org.foreload.vehicle.Driveline.DrivenAxle;
import org.foreload.vehicle.Suspension;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Test;

/** What a descent keeps on its way down, and that nothing quicker lies right beside where it ends. */
class ReleaseDescentTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar().with(Allowance.STANDARD);

    private static final int ENTRIES = 100;

    private static BrakePlan start(ReleaseShape shape) {
        double apex = STUDY.simulator().apex();
        Finding start =
                STUDY.latest(Braking.of(0.6 * STUDY.lockLimit(), 0.25, new Release(shape, -0.1 * apex, 0.7 * apex)));
        assertTrue(start.found());
        return start.entry().plan();
    }

    private static double time(BrakePlan plan) {
        return STUDY.search().trial(plan).entry().time();
    }

    private static boolean keepsAll(BrakePlan plan) {
        return STUDY.search().trial(plan).met()
                && STUDY.search()
                        .trial(plan.withBrakePoint(plan.brakePoint() - 1))
                        .met()
                && STUDY.search().leftWithNothingInHand(plan) >= 0;
    }

    @Test
    void whatItFindsIsQuickerAndKeepsAllThatIsAsked() {
        for (ReleaseShape shape : new ReleaseShape[] {ReleaseShapes.LINEAR, ReleaseShapes.PROGRESSIVE}) {
            BrakePlan start = start(shape);
            BrakePlan found =
                    new ReleaseDescent(STUDY, start, ENTRIES).quicker().orElseThrow();
            assertTrue(time(found) < time(start) - 0.02, shape.name() + ": " + time(found) + " from " + time(start));
            assertTrue(keepsAll(found), shape.name());
            assertEquals(shape, found.release().shape());
            assertEquals(
                    found, new ReleaseDescent(STUDY, start, ENTRIES).quicker().orElseThrow());
        }
    }

    /** The same with each number moved both ways: what keeps all that is asked gains no more than some hundredths. */
    @Test
    void besideItNothingIsMuchQuicker() {
        BrakePlan found = new ReleaseDescent(STUDY, start(ReleaseShapes.PROGRESSIVE), ENTRIES)
                .quicker()
                .orElseThrow();
        Release release = found.release();
        double least = Stream.of(-1, 1)
                .flatMap(side -> Stream.of(
                        found.withBrakePoint(found.brakePoint() + 0.2 * side),
                        found.withPeakDeceleration(found.peakDeceleration() + 0.05 * side),
                        with(found, release.start() + 0.5 * side, release.end()),
                        with(found, release.start(), release.end() + 0.5 * side)))
                .filter(ReleaseDescentTest::keepsAll)
                .mapToDouble(ReleaseDescentTest::time)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        assertTrue(least > time(found) - 0.02, least + " beside " + time(found));
    }

    private static BrakePlan with(BrakePlan plan, double start, double end) {
        return plan.braking()
                .with(new Release(plan.release().shape(), start, end))
                .from(plan.brakePoint());
    }

    /**
     * Where a bend tightens, the rear axle is fullest twice: on the brake in the wide part, and at the tightest place
     * with the brake off. A descent goes down along both: the best linear release of a sweep of 1 722, refined, takes
     * 0.22 s less than the start.
     */
    @Test
    void itGoesOnWhereAnAxleIsEquallyFullTwice() {
        Car car = new Car(
                "electric car",
                new Chassis(1900, 2.9, 1.48, 0.43, 3000, 1.6, 1.6),
                new Suspension(0.56, 0, 0, new Response(1.6, 0.4), new Response(1.8, 0.35)),
                new Aerodynamics(0.52, 0, 0, 1.2, 0),
                0.6,
                new Driveline(300_000, DrivenAxle.ALL, 2500),
                new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.05, 0.1, 4700, 0.5, 17, 20),
                new FrictionTyre(new SlipCurve.Brush(), 1.1, 1.1, 0.1, 4700, 0.5, 20, 22));
        Corner tightens = new Corner(
                "tightening bend",
                50,
                SegmentPath.of(
                        250,
                        List.of(
                                Segment.spiralIn(20, 90, Turn.RIGHT),
                                Segment.arc(Math.toRadians(35) * 90, 90, Turn.RIGHT),
                                Segment.spiralBetween(25, 90, 40, Turn.RIGHT),
                                Segment.arc(Math.toRadians(45) * 40, 40, Turn.RIGHT),
                                Segment.spiralOut(20, 40, Turn.RIGHT)),
                        150,
                        5));
        CornerStudy study = CornerStudy.of(car, tightens);
        BrakePlan start = Braking.of(4.93, 0.25, new Release(ReleaseShapes.LINEAR, -11.5, 40.4))
                .from(-165.6);
        BrakePlan found = new ReleaseDescent(study, start, 160).quicker().orElseThrow();
        double gain = study.search().trial(start).entry().time()
                - study.search().trial(found).entry().time();
        assertTrue(gain > 0.2, "gains " + gain);
        Margins margins = study.search().trial(found).entry().margins();
        assertEquals(margins.onBrake().rear(), margins.offBrake().rear(), 0.01);
    }

    /** From an entry that ends in the grass nothing leads down. */
    @Test
    void aStartThatDoesNotMakeTheCornerIsNone() {
        BrakePlan late = start(ReleaseShapes.LINEAR).withBrakePoint(-5);
        EntryResult entry = STUDY.simulator().probe(late);
        assertTrue(!entry.made());
        assertEquals(Optional.empty(), new ReleaseDescent(STUDY, late, ENTRIES).quicker());
    }
}
