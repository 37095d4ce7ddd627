package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.Tyre;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Suspension.Response;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the time above the bound is made of. */
class RemainderTest {

    /** Two searches of one thing end within some hundredths of a second of each other. */
    private static final double LUCK = 0.03;

    private static final BestRelease EACH = new BestRelease(1, 0, 20, 0);

    private static final Corner SHORT = new Corner(
            "short",
            28,
            SegmentPath.of(
                    90,
                    List.of(
                            Segment.spiralIn(15, 35, Turn.LEFT),
                            Segment.arc(25, 35, Turn.LEFT),
                            Segment.spiralOut(15, 35, Turn.LEFT)),
                    25,
                    5));

    /** The road car on springs that do not move and tyres that do not lag. */
    private static Car withoutLags() {
        Car car = SampleCars.ROAD_CAR;
        return car.with(car.suspension().withPitch(Response.RIGID).withRoll(Response.RIGID))
                .withTyres(withoutLag(car.frontTyre()), withoutLag(car.rearTyre()));
    }

    private static Tyre withoutLag(Tyre tyre) {
        return ((FrictionTyre) tyre).withRelaxationLength(0);
    }

    private static CornerStudy study(Car car) {
        return CornerStudy.of(
                car, SHORT, DriverSettings.practised(), new SimulationSettings(1e-4, 1), Allowance.NO_MARGIN);
    }

    private static EntryResult straightLine(CornerStudy study) {
        Braking braking = Braking.of(0.8 * study.lockLimit(), 0.25, new Release(ReleaseShapes.ABRUPT, 0, 0));
        return study.latest(braking).entry();
    }

    /** What no search could take away is left to the driver. */
    @Test
    void stoppedAtOnceItLeavesAllToTheDriver() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        EntryResult entry = straightLine(study);
        Remainder remainder = Remainder.of(study, entry, EACH, 1, new Sweep.Progress() {
            @Override
            public void update(int done, int total) {}

            @Override
            public boolean stopped() {
                return true;
            }
        });
        assertFalse(remainder.complete());
        assertEquals(entry.time() - study.bound().time(), remainder.gap(), 1e-12);
        assertEquals(1, remainder.parts().size());
        assertEquals(
                "driver, sideslip and cornering drag", remainder.parts().get(0).cause());
        assertEquals(remainder.gap(), remainder.parts().get(0).time(), 1e-12);
    }

    /** The gap is that of entry and bound, and the parts are kept as they were given. */
    @Test
    void whatIsReadOffTheParts() {
        List<Remainder.Part> parts = new ArrayList<>(List.of(new Remainder.Part("tyre lags", 0.125)));
        Remainder remainder = new Remainder(8, 8.5, parts, true);
        parts.clear();
        assertEquals(0.5, remainder.gap());
        assertEquals(List.of(new Remainder.Part("tyre lags", 0.125)), remainder.parts());
    }

    @Tag("long")
    @Test
    void aCarWithoutLagsLosesNothingToThem() {
        CornerStudy study = study(withoutLags());
        Remainder remainder = Remainder.of(study, straightLine(study), EACH, 2, Sweep.Progress.SILENT);
        List<Remainder.Part> parts = remainder.parts();
        assertTrue(remainder.complete());
        assertEquals(6, parts.size());
        assertEquals("pitch and roll lags", parts.get(1).cause());
        assertEquals(0, parts.get(1).time(), LUCK);
        assertEquals("tyre lags", parts.get(2).cause());
        assertEquals(0, parts.get(2).time(), LUCK);
        assertTrue(parts.get(0).time() > LUCK, "braking that ends before the corner leaves something to its release");
        assertTrue(parts.get(5).time() > 0, "no entry is quicker than the bound");
    }

    /** The release of the best entry is no cause of the time above the bound; all others sum to that time. */
    @Tag("long")
    @Test
    void theBestEntryLosesNothingToItsRelease() {
        CornerStudy study = study(SampleCars.ROAD_CAR);
        EntryResult best = EACH.find(study, 2, Sweep.Progress.SILENT).entry().orElseThrow();
        Remainder remainder = Remainder.ofBest(study, best, EACH, 2, Sweep.Progress.SILENT);
        assertEquals(
                List.of(
                        "pitch and roll lags",
                        "tyre lags",
                        "brake build-up and lag",
                        "margin kept on the exit",
                        "driver, sideslip and cornering drag"),
                remainder.parts().stream().map(Remainder.Part::cause).toList());
        assertEquals(
                best.time() - study.bound().time(),
                remainder.parts().stream().mapToDouble(Remainder.Part::time).sum(),
                1e-9);
        assertTrue(remainder.parts().get(4).time() > 0, "no entry is quicker than the bound");
    }
}
