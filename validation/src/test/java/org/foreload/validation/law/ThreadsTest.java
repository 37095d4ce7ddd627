package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Collectors;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.foreload.strategy.ReleaseSweep;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.trace.Trace;
import org.foreload.validation.subject.EntryBench;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sweep gives the same bits on any number of threads. */
class ThreadsTest {

    private static final CornerStudy STUDY = CornerStudy.of(EntryBench.car("neutral"), EntryBench.corner("medium"));

    private static final String ALONE = bits(explore(1));

    private static Exploration explore(int threads) {
        SweepPlan plan = new SweepPlan(
                List.of(ReleaseShapes.LINEAR, ReleaseShapes.SMOOTH),
                List.of(0.7),
                List.of(-0.3, 0.0),
                List.of(0.3, 0.7),
                0.25);
        return new ReleaseSweep(STUDY, plan).run(new Sweep(threads, Sweep.Progress.SILENT));
    }

    /** Every number of an exploration, to the last bit. */
    private static String bits(Exploration found) {
        return found.candidates().stream().map(ThreadsTest::bits).collect(Collectors.joining("\n"));
    }

    private static String bits(Candidate candidate) {
        StringBuilder text = new StringBuilder()
                .append(candidate.entry().plan())
                .append(candidate.entry().outcome())
                .append(candidate.entry().cause())
                .append(candidate.made())
                .append(candidate.inHand())
                .append(candidate.entry().time())
                .append(candidate.entry().minimumSpeed())
                .append(candidate.entry().farthestOffset())
                .append(candidate.onFront());
        for (Trace.Column column :
                candidate.entry().profile().map(Trace::columns).orElse(List.of())) {
            long hash = 17;
            for (double value : column.values()) {
                hash = 31 * hash + Double.doubleToLongBits(value);
            }
            text.append(' ').append(hash);
        }
        return text.toString();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 8})
    void sameBitsOnAnyNumberOfThreads(int threads) {
        assertEquals(ALONE, bits(explore(threads)));
    }
}
