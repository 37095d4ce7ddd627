package org.foreload.examples.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.recording.ChosenLap;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.MadeDrivers;
import org.foreload.examples.recording.MadeRun;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.examples.recording.Sensors;
import org.foreload.file.InputException;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.foreload.recording.Channel;
import org.foreload.recording.Recording;
import org.foreload.recording.Run;
import org.foreload.study.Sweep;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A made lap through three demo corners, laid on each of them: the truth is where the simulator had its turn-in. */
class OwnEntryTest {

    private static final List<String> CORNERS = List.of("medium", "hairpin", "fast");

    private static final int LAPS = 6;

    private static final List<MadeRun> MADE = new ArrayList<>();

    private static final List<ChosenLap> LOGGED = new ArrayList<>();

    @BeforeAll
    static void drive() {
        for (int lap = 0; lap < LAPS; lap++) {
            DemoRuns.Driver driver = DemoRuns.Driver.values()[lap % 2];
            MadeRun made = DemoRuns.lap(MadeDrivers.plan(driver), 1, 300 + lap);
            RecordedFile.Lap logged =
                    new RecordedFile.Lap(1, Recording.of(Sensors.usual(50).record(made, 300 + lap)));
            RecordedFile file = new RecordedFile("made", List.of(logged), List.of(), List.of(), 0, List.of(), null);
            MADE.add(made);
            LOGGED.add(ChosenLap.of(List.of(file), new Sweep(1, Sweep.Progress.SILENT))
                    .get(0));
        }
    }

    private static Path path(String corner) {
        return Demos.corner("corner", corner).value().path();
    }

    /** True station, m, at a station of the logged run: by the time at which it was there. */
    private static double station(MadeRun made, Run run, double logged) {
        double at = run.timeAt(logged);
        double[] time = made.truth().column(Channel.TIME.field()).values();
        double[] station = made.truth().column(Channel.DISTANCE.field()).values();
        int i = 1;
        while (i < time.length - 1 && time[i] < at) {
            i++;
        }
        double share = (at - time[i - 1]) / (time[i] - time[i - 1]);
        return station[i - 1] + share * (station[i] - station[i - 1]);
    }

    /** The axes lie on each other within a metre nine times in ten, as the sheet says. */
    @Test
    void turnInIsWhereTheSimulatorHadIt() {
        int near = 0;
        List<String> lines = new ArrayList<>();
        for (int lap = 0; lap < LAPS; lap++) {
            for (int c = 0; c < CORNERS.size(); c++) {
                OwnEntry own = OwnEntry.of("made", LOGGED.get(lap), path(CORNERS.get(c)), OptionalInt.empty());
                assertEquals(c, own.index(), CORNERS.get(c));
                double off = station(MADE.get(lap), own.lap().run(), own.turnIn())
                        - MADE.get(lap).corners().get(c).turnIn();
                lines.add(CORNERS.get(c) + " " + off);
                near += Math.abs(off) <= OwnEntry.AXIS_ERROR ? 1 : 0;
            }
        }
        assertTrue(near >= 0.9 * LAPS * CORNERS.size(), lines.toString());
    }

    @Test
    void aCornerThatTheLapDoesNotHaveIsNotTakenForAnother() {
        // Left and right at once: none of the three turns both ways.
        Path other = SegmentPath.of(
                100, List.of(new Segment.Arc(60, 30, Turn.LEFT), new Segment.Arc(60, 30, Turn.RIGHT)), 100, 5);
        InputException refused = assertThrows(
                InputException.class, () -> OwnEntry.of("made", LOGGED.get(0), other, OptionalInt.empty()));
        assertTrue(refused.getMessage().contains("no recorded corner is like"), refused.getMessage());
        assertTrue(OwnEntry.of("made", LOGGED.get(0), other, OptionalInt.of(2)).unlike() > OwnEntry.LIKE);
    }
}
