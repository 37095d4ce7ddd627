package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.driver.DriverSettings;
import org.foreload.driver.SpeedPlan;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.junit.jupiter.api.Test;

/** Both wheels of an axle stop together where nothing tells them apart. */
class LockTogetherTest {

    private static EntryResult run(Path path) {
        Corner corner = new Corner("bend", 40, path);
        SpeedPlan exit = new SpeedPlan(new double[] {100, 250}, new double[] {15, 20});
        // Rear wheels of this car stop at about 1.1 g; asked for more, and released well before the bend.
        BrakePlan plan =
                Braking.of(13, 0.2, new Release(ReleaseShapes.LINEAR, -95, -70)).from(-120);
        return new EntrySimulator(
                        SampleCars.ROAD_CAR, corner, DriverSettings.practised(), exit, SimulationSettings.STANDARD)
                .run(plan);
    }

    private static Path path() {
        return SegmentPath.of(
                150,
                List.of(
                        Segment.spiralIn(40, 80, Turn.LEFT),
                        Segment.arc(40, 80, Turn.LEFT),
                        Segment.spiralOut(40, 80, Turn.LEFT)),
                130,
                5);
    }

    @Test
    void onAStraightTheCarStaysOnItsLine() {
        EntryResult entry = run(path());
        List<EntryEvent> stops = entry.events().stream()
                .filter(event -> event.kind() == EntryEvent.Kind.REAR_LOCKS)
                .toList();
        assertEquals(2, stops.size(), entry.events().toString());
        assertEquals(stops.get(0).station(), stops.get(1).station(), 1e-3);
        double[] offset = entry.profile().orElseThrow().column("offset_m").values();
        double[] s = entry.profile().orElseThrow().column("s_m").values();
        for (int i = 0; i < s.length && s[i] < -30; i++) {
            assertEquals(0, offset[i], 1e-9, "offset at " + s[i]);
        }
    }

    @Test
    void theMirroredBendGivesTheMirroredRun() {
        EntryResult left = run(path());
        EntryResult right = run(path().mirrored());
        assertEquals(left.outcome(), right.outcome());
        assertEquals(left.time(), right.time(), 1e-6);
        assertEquals(left.farthestOffset(), right.farthestOffset(), 1e-6);
    }
}
