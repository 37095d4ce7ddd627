package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.advice.Advice;
import org.foreload.advice.AdviceSettings;
import org.foreload.advice.Adviser;
import org.foreload.advice.Change;
import org.foreload.advice.CornerAdvice;
import org.foreload.advice.DriverScatter;
import org.foreload.advice.Habit;
import org.foreload.advice.Likeness;
import org.foreload.envelope.EnvelopeSettings;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Cleaning;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.RecordedCorners;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.foreload.risk.Scatter;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import org.foreload.vehicle.Driveline;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Advice to a made driver, whose car and road are known: what it is truly worth is found by driving it. The same over
 * many drivers is a study.
 */
class RecordedAdviceTest {

    private static List<MadeRun.Stage> stages;
    private static AdvisedRun advised;

    @BeforeAll
    static void advise() {
        stages = MadeDrivers.plan(DemoRuns.Driver.STRAIGHT);
        advised = AdvisedRun.of(stages, 5, 50, 1, Optional.empty());
    }

    /** The car and the line that were fitted give the recorded speeds again. */
    @Test
    void theRecordedRunIsDrivenAgain() {
        assertEquals(3, advised.advice().corners().size());
        for (CornerAdvice corner : advised.advice().corners()) {
            assertEquals(Optional.empty(), corner.withheld());
            Likeness likeness = corner.likeness().orElseThrow();
            assertTrue(likeness.made());
            assertTrue(likeness.speedError() < 0.5, likeness.toString());
            assertTrue(Math.abs(likeness.timeError()) < 0.2, likeness.toString());
        }
    }

    /** Agreed on beforehand: within a quarter or 0.03 s, and intervals that hold; one item in four may be off. */
    @Test
    void gainsAreThoseOfTheTrueCar() {
        List<AdvisedRun.Item> items = advised.items();
        List<String> lines = items.stream().map(AdvisedRun.Item::line).toList();
        assertTrue(items.size() >= 3, lines.toString());
        assertTrue(items.stream().allMatch(item -> item.truth() > 0), lines.toString());
        assertTrue(items.stream().filter(AdvisedRun.Item::near).count() >= 0.75 * items.size(), lines.toString());
        assertTrue(items.stream().filter(AdvisedRun.Item::held).count() >= 0.75 * items.size(), lines.toString());
    }

    /** A driver who is off the brake by turn-in has all of the braking to move, and the true car is quicker for it. */
    @Test
    void whoIsOffTheBrakeAtTurnInMayMoveAllOfIt() {
        List<AdvisedRun.Item> moved = advised.items().stream()
                .filter(item -> !item.told().combined())
                .filter(item -> item.told().steps().get(0).change() == Change.BRAKING)
                .toList();
        assertFalse(moved.isEmpty());
        for (AdvisedRun.Item item : moved) {
            assertTrue(item.told().steps().get(0).amount() > 0, item.line());
            assertTrue(item.truth() > 0 && item.near(), item.line());
        }
    }

    @Test
    void itemsAreRankedAndKeepTheRiskAllowed() {
        for (CornerAdvice corner : advised.advice().corners()) {
            double before = Double.POSITIVE_INFINITY;
            for (var item : corner.items()) {
                assertTrue(item.gain().low() <= before);
                assertTrue(item.gain().low() > 0);
                assertTrue(item.failed().value() <= AdviceSettings.STANDARD.failing());
                before = item.gain().low();
            }
            long pairs = corner.items().stream().filter(Advice::combined).count();
            assertTrue(pairs <= 1);
            assertTrue(corner.items().size() - pairs <= AdviceSettings.STANDARD.most());
        }
    }

    /** A car that is fitted to one corner does not know what another shape is worth. */
    @Test
    void aSingleCornerGetsNoAdviceOnShape() {
        for (MadeRun.Stage alone : stages) {
            List<AdvisedRun.Item> items =
                    AdvisedRun.of(List.of(alone), 5, 50, 1, Optional.empty()).items();
            assertTrue(items.stream()
                    .flatMap(item -> item.told().steps().stream())
                    .noneMatch(step -> step.change() == Change.SHAPE));
        }
    }

    /**
     * Two changes together stand in the list only where they gain more than any single one beyond doubt, and the first
     * of them is an item of its own. The true car gains more by both than by the first alone.
     */
    @Test
    void twoChangesTogetherGainMoreThanEither() {
        AdvisedRun run = AdvisedRun.of(stages, 5, 50, 3, Optional.empty());
        List<AdvisedRun.Item> pairs =
                run.items().stream().filter(item -> item.told().combined()).toList();
        assertFalse(pairs.isEmpty());
        for (AdvisedRun.Item pair : pairs) {
            List<AdvisedRun.Item> single = run.items().stream()
                    .filter(item ->
                            item.corner() == pair.corner() && !item.told().combined())
                    .toList();
            double best = single.stream()
                    .mapToDouble(item -> item.told().gain().value())
                    .max()
                    .orElseThrow();
            assertTrue(pair.told().gain().value() > best, pair.line());
            AdvisedRun.Item first = single.stream()
                    .filter(item -> item.told()
                            .steps()
                            .get(0)
                            .equals(pair.told().steps().get(0)))
                    .findFirst()
                    .orElseThrow();
            assertTrue(pair.truth() > first.truth(), pair.line());
            assertTrue(pair.near() && pair.held(), pair.line());
        }
    }

    /** A car with a tenth of the power does not come as fast as was recorded: no advice, and it is said why. */
    @Test
    void aCarThatCannotHaveBeenTheOneIsRefused() {
        Car car = stages.get(0).study().simulator().car();
        Car weak = car.with(new Driveline(13_000, car.driveline().drivenAxle()));
        AdvisedRun run = AdvisedRun.of(stages.subList(0, 1), 5, 50, 1, Optional.of(weak));
        CornerAdvice corner = run.advice().corners().get(0);
        assertEquals(List.of(), corner.items());
        assertTrue(corner.withheld().orElseThrow().contains("not like the recorded one"), corner.toString());
    }

    /** The true car, given as a file would be, does as well as a fitted one. */
    @Test
    void theTrueCarIsDrivenAgain() {
        Car car = stages.get(0).study().simulator().car();
        AdvisedRun run = AdvisedRun.of(stages.subList(0, 1), 5, 50, 1, Optional.of(car));
        Likeness likeness = run.advice().corners().get(0).likeness().orElseThrow();
        assertTrue(likeness.made() && likeness.speedError() < 0.5, likeness.toString());
        run.items().forEach(item -> assertTrue(item.near(), item.line()));
    }

    /**
     * The made driver's brake point strays by half a normal law of 1 m, a standard deviation of 0.60 m, and the end of
     * the release by 2.5 m. Of twelve laps the standard deviation is known within a half (chi-squared law, 98 %).
     */
    @Test
    void theScatterOverTheLapsIsTheDrivers() {
        List<RecordedCorner> laps = new ArrayList<>();
        for (int lap = 0; lap < 12; lap++) {
            MadeRun made = DemoRuns.lap(stages.subList(0, 1), 1, 70 + lap);
            Recording recording = Recording.of(Sensors.usual(50).record(made, lap));
            Cleaning cleaning = lap == 0 ? Cleaning.STANDARD : Cleaning.STANDARD.withoutResamples();
            laps.add(MeasuredLap.of(new RecordedFile.Lap(lap, recording), cleaning)
                    .corners()
                    .get(0));
        }
        Scatter scatter = DriverScatter.of(laps.get(0), laps).scatter();
        assertEquals(0.60, scatter.brakePoint(), 0.30, scatter.toString());
        assertEquals(2.5, scatter.releaseTiming(), 1.25, scatter.toString());
        assertTrue(scatter.peak() < 0.02, scatter.toString());
        assertEquals(DriverScatter.PRACTISED, DriverScatter.of(laps.get(0), laps.subList(0, 2)));
    }

    /** A run of one lap, hardly worked, has no limits to show. */
    @Test
    void aRunThatShowsNoLimitsGetsNoAdvice() {
        MadeRun made = DemoRuns.lap(stages.subList(0, 1), 0, 1);
        RecordedFile.Lap lap =
                new RecordedFile.Lap(1, Recording.of(Sensors.usual(50).record(made, 1)));
        RecordedFile file = new RecordedFile("made", List.of(lap), List.of(), List.of(), 0, List.of(), null);
        Sweep sweep = new Sweep(1, Sweep.Progress.SILENT);
        ChosenLap chosen = ChosenLap.of(List.of(file), sweep).get(0);
        CornerAdvice corner =
                LapAdvice.of(chosen, Optional.empty(), sweep).corners().get(0);
        String why = corner.withheld().orElseThrow();
        assertTrue(why.contains("limits") && why.contains("moments") && why.contains("--car"), why);
    }

    /**
     * How wide the intervals of the recording and of the limits are asked for says nothing of the gains: to a driver of
     * one corner, recorded once, the same advice with the same intervals.
     */
    @Test
    void adviceIsTheSameWhateverTheCoverageOfTheRecording() {
        List<Recording> laps = new ArrayList<>();
        for (int lap = 0; lap < 5; lap++) {
            MadeRun made = DemoRuns.lap(stages.subList(0, 1), 1, 1 + lap);
            laps.add(Recording.of(Sensors.usual(50).record(made, 1 + lap)));
        }
        List<Advice> narrow = covering(laps, 0.5);
        List<Advice> wide = covering(laps, 0.99);
        assertFalse(narrow.isEmpty());
        assertEquals(narrow.size(), wide.size());
        for (int i = 0; i < narrow.size(); i++) {
            assertEquals(narrow.get(i).gain().value(), wide.get(i).gain().value(), 1e-9);
            assertEquals(narrow.get(i).gain().low(), wide.get(i).gain().low(), 1e-3);
            assertEquals(narrow.get(i).gain().high(), wide.get(i).gain().high(), 1e-3);
        }
    }

    private static List<Advice> covering(List<Recording> laps, double coverage) {
        List<Run> runs = laps.stream()
                .map(lap -> Run.of(lap, new Cleaning(0.1, 0.005, coverage, 40, 1)))
                .toList();
        FrictionEnvelope limits = FrictionEnvelope.of(runs, new EnvelopeSettings(0.95, coverage, 40, 1));
        List<RecordedCorner> corners = RecordedCorners.of(runs.get(0));
        return new Adviser(runs.get(0), corners, limits, Optional.empty(), AdviceSettings.STANDARD)
                .of(0, new Habit(DriverScatter.PRACTISED, 0))
                .items();
    }

    /** One lap of one corner shows no limits; with the true car they are known, and gains are those of that car. */
    @Test
    void aShortRunOfAKnownCarGetsAdvice() {
        Car car = stages.get(0).study().simulator().car();
        AdvisedRun run = AdvisedRun.of(stages.subList(0, 1), 1, 50, 1, Optional.of(car));
        assertEquals(Optional.empty(), run.advice().limits());
        assertFalse(run.items().isEmpty(), run.advice().toString());
        for (AdvisedRun.Item item : run.items()) {
            assertTrue(item.truth() > 0 && item.near() && item.held(), item.line());
        }
    }
}
