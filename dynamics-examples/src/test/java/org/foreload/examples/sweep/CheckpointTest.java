package org.foreload.examples.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.SweepMemory.Found;

/** Checkpoints: what is kept is recalled, to the last bit. */
class CheckpointTest {

    private static final Request REQUEST = new Request("1", "car", "corner", List.of("settings"));

    private record Kept(Braking braking, Found found) {}

    private static Kept drawn(SplittableRandom random) {
        List<ReleaseShape> shapes = ReleaseShapes.all();
        double start = random.nextDouble(-200, 100);
        Release release =
                new Release(shapes.get(random.nextInt(shapes.size())), start, start + random.nextDouble(0, 80));
        boolean found = random.nextBoolean();
        return new Kept(
                Braking.of(random.nextDouble(0.5, 20), random.nextDouble(), release),
                new Found(random.nextDouble(-300, 0), found));
    }

    @Property(edgeCases = EdgeCasesMode.NONE)
    void whatIsKeptIsRecalled(@ForAll long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        Path file = Files.createTempFile("sweep", ".jsonl");
        try {
            List<Kept> all = new ArrayList<>();
            for (int opened = 0; opened < 3; opened++) {
                try (Checkpoint checkpoint = Checkpoint.open(file, REQUEST)) {
                    assertEquals(all.size(), checkpoint.recalled());
                    for (Kept kept : all) {
                        assertEquals(
                                kept.found(), checkpoint.recall(kept.braking()).orElseThrow());
                    }
                    Kept next = drawn(random);
                    assertTrue(checkpoint.recall(next.braking()).isEmpty());
                    checkpoint.keep(next.braking(), next.found());
                    all.add(next);
                }
            }
        } finally {
            Files.delete(file);
        }
    }
}
