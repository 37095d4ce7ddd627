package org.foreload.lap;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.LongAdder;
import org.foreload.conventions.InvalidValueException;
import org.foreload.entry.EntryResult;
import org.foreload.entry.SimulationSettings;
import org.foreload.lap.Lap.CornerGain;
import org.foreload.load.SampleCars;
import org.foreload.optimum.BestRelease;
import org.foreload.optimum.SampleStudies;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.Test;

class LapTest {

    /** What is tested here holds at any tolerance. */
    private static final SimulationSettings COARSE = new SimulationSettings(1e-4, 1);

    private static CornerStudy study(int number, Corner corner) {
        CornerStudy plain = SampleStudies.roadCar();
        return CornerStudy.of(SampleCars.ROAD_CAR, corner, plain.simulator().driver(), COARSE, plain.allowance());
    }

    private static double exitSpeed(EntryResult entry) {
        var speeds = entry.profile().orElseThrow().column("speed_mps");
        return speeds.at(speeds.size() - 1);
    }

    @Test
    void aBetterExitIsCarriedAsEnergyAndGainsSum() {
        Corner corner = SampleStudies.shortCorner();
        Lap lap = Lap.of(
                new Circuit("twice", List.of(corner, corner)),
                LapTest::study,
                BestRelease.SIMPLE_SHAPES,
                2,
                Sweep.Progress.SILENT);
        assertTrue(lap.complete());
        CornerGain first = lap.corners().get(0);
        CornerGain second = lap.corners().get(1);
        assertEquals(corner.approachSpeed(), first.approachSpeed());
        double best = exitSpeed(first.best().orElseThrow());
        double baseline = exitSpeed(first.baseline().orElseThrow());
        assertEquals(
                corner.approachSpeed() * corner.approachSpeed() + best * best - baseline * baseline,
                second.approachSpeed() * second.approachSpeed(),
                1e-9);
        assertTrue(first.gain() > 0);
        assertEquals(first.gain() + second.gain(), lap.gain(), 1e-12);
        assertEquals(
                first.baseline().orElseThrow().time(),
                second.baseline().orElseThrow().time(),
                "the lap compared with gets the same speeds in the same corner");
    }

    /** Straight-line braking into the first corner is a part of the search for the best release, and driven once. */
    @Test
    void theFirstCornerTakesNoMoreThanItsOwnSearch() {
        LongAdder looks = new LongAdder();
        Corner plain = SampleStudies.shortCorner();
        Corner counted = new Corner(plain.name(), plain.approachSpeed(), counting(plain.path(), looks));
        var best = BestRelease.SIMPLE_SHAPES.find(study(0, counted), 2, Sweep.Progress.SILENT);
        long alone = looks.sumThenReset();
        Lap lap = Lap.of(
                new Circuit("once", List.of(counted)),
                LapTest::study,
                BestRelease.SIMPLE_SHAPES,
                2,
                Sweep.Progress.SILENT);
        assertEquals(alone, looks.sum());
        assertEquals(best.baseline(), lap.corners().get(0).baseline());
    }

    /** A line that counts how often the equations of motion look at it. */
    private static Path counting(Path line, LongAdder looks) {
        return (Path) Proxy.newProxyInstance(
                Path.class.getClassLoader(), new Class<?>[] {Path.class}, (self, method, arguments) -> {
                    if (method.getName().equals("at")) {
                        looks.increment();
                    }
                    return method.invoke(line, arguments);
                });
    }

    /** Who does not brake trails nothing: such a corner gains only by speed handed on to it, and there is none. */
    @Test
    void aCornerWithoutABrakeGainsNothing() {
        Corner wide = new Corner("wide", 28, SegmentPath.of(90, List.of(Segment.arc(25, 250, Turn.LEFT)), 25, 5));
        Lap lap = Lap.of(
                new Circuit("wide", List.of(wide, wide)),
                LapTest::study,
                BestRelease.SIMPLE_SHAPES,
                2,
                Sweep.Progress.SILENT);
        for (CornerGain corner : lap.corners()) {
            assertFalse(corner.best().orElseThrow().braked());
            assertEquals(0, corner.gain());
            assertEquals(28, corner.approachSpeed());
        }
    }

    @Test
    void ranksByGainAndLeavesOutWhatHasNone() {
        EntryResult entry = SampleStudies.roadCar().simulator().probe(SampleStudies.straightLine());
        CornerGain none = new CornerGain("none", 30, Optional.of(entry), Optional.empty());
        CornerGain nothing = new CornerGain("nothing", 30, Optional.of(entry), Optional.of(entry));
        Lap lap = new Lap(List.of(none, nothing), true);
        assertEquals(List.of(nothing, none), lap.ranked());
        assertEquals(0, lap.gain());
        assertEquals(List.of(none), lap.uncounted());
        assertTrue(Double.isNaN(new Lap(List.of(none), true).gain()), "nothing known is not nothing gained");
    }

    @Test
    void aStopKeepsTheCornersThatAreDone() {
        Lap lap = Lap.of(
                new Circuit("stopped", List.of(SampleStudies.corner())),
                LapTest::study,
                BestRelease.SIMPLE_SHAPES,
                1,
                new Sweep.Progress() {
                    @Override
                    public void update(int done, int total) {
                        throw new AssertionError("nothing was to be started");
                    }

                    @Override
                    public boolean stopped() {
                        return true;
                    }
                });
        assertFalse(lap.complete());
        assertTrue(lap.corners().isEmpty());
    }

    @Test
    void refusesACircuitWithoutCorners() {
        assertThrows(InvalidValueException.class, () -> new Circuit("empty", List.of()));
    }
}
