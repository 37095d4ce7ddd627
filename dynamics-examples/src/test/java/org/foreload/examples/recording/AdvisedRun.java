package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.advice.Advice;
import org.foreload.advice.CornerAdvice;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.entry.EntryResult;
import org.foreload.recording.Recording;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;

/**
 * A made driver who was advised, and what the advice is truly worth: the same change to the true plan, driven with the
 * true car on the true road.
 *
 * @param advice corner by corner
 * @param items every item with its truth
 */
public record AdvisedRun(LapAdvice advice, List<Item> items) {

    /**
     * One item.
     *
     * @param corner counted from 0
     * @param told the advice
     * @param truth what it is worth, s; NaN if the true car does not make the corner then
     * @param cause how the true entry ended
     */
    public record Item(int corner, Advice told, double truth, String cause) {

        /** Whether the prediction is near enough: within a quarter or three hundredths of a second. */
        public boolean near() {
            double off = Math.abs(told.gain().value() - truth);
            return off <= Math.max(0.03, 0.25 * Math.abs(truth));
        }

        /** Whether the interval holds the truth. */
        public boolean held() {
            return told.gain().holds(truth);
        }

        /** For a log. */
        public String line() {
            return String.format(
                    java.util.Locale.ROOT,
                    "corner %d, %s: told %.3f (%.3f to %.3f) s, truly %.3f s, fails %.2f, %s",
                    corner + 1,
                    told.steps().stream()
                            .map(step -> String.format(
                                    java.util.Locale.ROOT,
                                    "%s %+.1f (%+.2f)",
                                    step.change(),
                                    step.amount(),
                                    step.harder()))
                            .collect(java.util.stream.Collectors.joining(" and ")),
                    told.gain().value(),
                    told.gain().low(),
                    told.gain().high(),
                    truth,
                    told.failed().value(),
                    cause);
        }
    }

    /**
     * Records laps of a driver, and advises on the quickest.
     *
     * @param stages what the driver means to do
     * @param laps how many are driven
     * @param rate of the logger, Hz
     * @param seed of scatter and noise
     * @param car given to the adviser, or none
     */
    public static AdvisedRun of(List<MadeRun.Stage> stages, int laps, double rate, long seed, Optional<Car> car) {
        List<MadeRun> made = new ArrayList<>();
        List<RecordedFile.Lap> recorded = new ArrayList<>();
        for (int lap = 0; lap < laps; lap++) {
            made.add(DemoRuns.lap(stages, 1, seed + lap));
            recorded.add(new RecordedFile.Lap(
                    lap + 1, Recording.of(Sensors.usual(rate).record(made.get(lap), seed + lap))));
        }
        RecordedFile file = new RecordedFile("made", recorded, List.of(), List.of(), 0, List.of(), null);
        Sweep sweep = new Sweep(1, Sweep.Progress.SILENT);
        ChosenLap chosen = ChosenLap.of(List.of(file), sweep).get(0);
        LapAdvice advice = LapAdvice.of(chosen, car, sweep);
        MadeRun driven = made.get((int) chosen.lap().number() - 1);
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < advice.corners().size() && advice.corners().size() == stages.size(); i++) {
            CornerAdvice corner = advice.corners().get(i);
            BrakePlan plan = plan(stages.get(i).plan(), driven.corners().get(i));
            for (Advice told : corner.items()) {
                item(i, told, stages.get(i), plan).ifPresent(items::add);
            }
        }
        return new AdvisedRun(advice, items);
    }

    /** What was done in the lap: the plan that was meant, as it was missed. */
    private static BrakePlan plan(BrakePlan meant, MadeRun.Corner did) {
        Release release = meant.release();
        return meant.withBrakePoint(did.brakeOn() - did.turnIn())
                .with(new Release(release.shape(), release.start(), did.releaseEnd() - did.turnIn()));
    }

    private static Optional<Item> item(int corner, Advice told, MadeRun.Stage stage, BrakePlan plan) {
        return told.applied(plan).map(other -> {
            EntryResult before = stage.study().simulator().run(plan);
            EntryResult after = stage.study().simulator().run(other);
            double truth = after.made() ? before.time() - after.time() : Double.NaN;
            return new Item(corner, told, truth, after.cause());
        });
    }
}
