package org.foreload.examples.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.foreload.advice.CornerAdvice;
import org.foreload.comparison.Comparison;
import org.foreload.examples.answer.CompareAnswer;
import org.foreload.examples.output.Format;
import org.foreload.recording.Recording;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Advice whose search was stopped: an answer cut short says so. Common practice, no source. */
class StoppedAdviceTest {

    private static RecordedFile file;
    private static ChosenLap chosen;
    private static CornerAdvice whole;
    private static int asked;

    @BeforeAll
    static void record() {
        List<MadeRun.Stage> stages = MadeDrivers.plan(DemoRuns.Driver.STRAIGHT).subList(0, 1);
        List<RecordedFile.Lap> laps = new ArrayList<>();
        for (int lap = 0; lap < 5; lap++) {
            MadeRun made = DemoRuns.lap(stages, 1, 1 + lap);
            laps.add(
                    new RecordedFile.Lap(lap + 1, Recording.of(Sensors.usual(50).record(made, 1 + lap))));
        }
        file = new RecordedFile("made", laps, List.of(), List.of(), 0, List.of(), null);
        chosen =
                ChosenLap.of(List.of(file), new Sweep(1, Sweep.Progress.SILENT)).get(0);
        Stop never = new Stop(Integer.MAX_VALUE);
        whole = advice(never).corners().get(0);
        asked = never.asked.get();
    }

    private static LapAdvice advice(Sweep.Progress progress) {
        return LapAdvice.of(chosen, Optional.empty(), new Sweep(1, progress));
    }

    /** Stops once it has been asked some times. */
    private static final class Stop implements Sweep.Progress {

        private final int after;
        private final AtomicInteger asked = new AtomicInteger();

        Stop(int after) {
            this.after = after;
        }

        @Override
        public void update(int done, int total) {
            // Only the stop counts.
        }

        @Override
        public boolean stopped() {
            return asked.incrementAndGet() > after;
        }
    }

    /** Wherever the stop comes, short of the last work, the reason is that; what was found stays. */
    @Test
    void aStopIsTheReason() {
        assertTrue(whole.items().size() > 1 && whole.withheld().isEmpty(), whole.toString());
        int found = 0;
        for (int after = 0; after < asked; after++) {
            CornerAdvice cut = advice(new Stop(after)).corners().get(0);
            assertTrue(cut.withheld().orElse("none").contains("stopped"), after + " of " + asked + ": " + cut);
            found = Math.max(found, cut.items().size());
        }
        assertTrue(found > 1, found + " items in the longest search that was stopped");
        assertEquals(whole, advice(new Stop(asked)).corners().get(0));
    }

    /** An interrupt is a stop. */
    @Test
    void anInterruptIsTheReason() {
        Thread caller = Thread.currentThread();
        CornerAdvice cut = advice((done, total) -> caller.interrupt()).corners().get(0);
        assertTrue(Thread.interrupted());
        assertTrue(cut.withheld().orElse("none").contains("stopped"), cut.toString());
    }

    /** A comparison does not say that nothing was found where nobody looked to the end. */
    @Test
    void aComparisonSaysIt() {
        String none = printed(advice(new Stop(3)));
        assertTrue(none.contains("Corner 1: no advice, because the search for it was stopped."), none);
        assertFalse(none.contains("no single change was found"), none);
        String some = printed(advice(new Stop(asked - 1)));
        assertTrue(some.contains("Corner 1: no more advice, because the search for it was stopped."), some);
    }

    private static String printed(LapAdvice advice) {
        MeasuredLap lap = chosen.lap();
        Comparison comparison = Comparison.of(lap.run(), lap.corners(), lap.run(), lap.corners());
        return Format.TABLE
                .render(CompareAnswer.of(file, lap, file, lap, comparison, advice))
                .replaceAll("\\s+", " ");
    }
}
