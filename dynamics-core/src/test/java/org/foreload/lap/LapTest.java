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
import org.junit.jupiter.api.BeforeAll;
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

    private static final Corner CORNER = SampleStudies.shortCorner();

    private static final LongAdder LOOKS = new LongAdder();

    /** The same corner; counted is how often the equations of motion look at it. */
    private static final Corner COUNTED =
            new Corner(CORNER.name(), CORNER.approachSpeed(), counting(CORNER.path(), LOOKS));

    private static Lap twice;

    private static long looksOfLap;

    /** Two that come to the approach at once both drive it: then a count hangs on chance. */
    private static final int ONE_THREAD = 1;

    /** Not while the class is being loaded: the threads of a search would wait for the end of that. */
    @BeforeAll
    static void drive() {
        twice = Lap.of(
                new Circuit("twice", List.of(COUNTED, CORNER)),
                LapTest::study,
                BestRelease.SIMPLE_SHAPES,
                ONE_THREAD,
                Sweep.Progress.SILENT);
        looksOfLap = LOOKS.sumThenReset();
    }

    @Test
    void aBetterExitIsCarriedAsEnergyAndGainsSum() {
        assertTrue(twice.complete());
        CornerGain first = twice.corners().get(0);
        CornerGain second = twice.corners().get(1);
        assertEquals(CORNER.approachSpeed(), first.approachSpeed());
        double best = exitSpeed(first.best().orElseThrow());
        double baseline = exitSpeed(first.baseline().orElseThrow());
        assertEquals(
                CORNER.approachSpeed() * CORNER.approachSpeed() + best * best - baseline * baseline,
                second.approachSpeed() * second.approachSpeed(),
                1e-9);
        assertTrue(first.gain() > 0);
        assertEquals(first.gain() + second.gain(), twice.gain(), 1e-12);
        assertEquals(
                first.baseline().orElseThrow().time(),
                second.baseline().orElseThrow().time(),
                "the lap compared with gets the same speeds in the same corner");
    }

    /** Straight-line braking into the first corner is a part of the search for the best release, and driven once. */
    @Test
    void theFirstCornerTakesNoMoreThanItsOwnSearch() {
        var alone = BestRelease.SIMPLE_SHAPES.find(study(0, COUNTED), ONE_THREAD, Sweep.Progress.SILENT);
        assertEquals(LOOKS.sum(), looksOfLap);
        assertEquals(alone.baseline(), twice.corners().get(0).baseline());
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

    /** However much a corner loses, it has a figure. */
    @Test
    void aCornerThatLosesComesBeforeOneWithoutAFigure() {
        EntryResult quick = SampleStudies.roadCar().simulator().probe(SampleStudies.straightLine());
        EntryResult slow = SampleStudies.withTime(quick, quick.time() + 1.5);
        CornerGain none = new CornerGain("none", 30, Optional.of(quick), Optional.empty());
        CornerGain loses = new CornerGain("loses", 30, Optional.of(slow), Optional.of(quick));
        CornerGain gains = new CornerGain("gains", 30, Optional.of(quick), Optional.of(slow));
        assertEquals(-1.5, loses.gain(), 1e-12);
        assertEquals(List.of(gains, loses, none), new Lap(List.of(none, loses, gains), true).ranked());
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
