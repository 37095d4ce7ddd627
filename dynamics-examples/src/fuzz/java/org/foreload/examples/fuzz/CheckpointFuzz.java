package org.foreload.examples.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.sweep.Checkpoint;
import org.foreload.examples.sweep.Request;
import org.foreload.file.InputException;
import org.foreload.strategy.SweepMemory.Found;

/**
 * Any bytes, alone or behind a checkpoint's first line, go on or are refused; what goes on keeps what it is told next,
 * and forgets nothing that it knew.
 */
public final class CheckpointFuzz {

    private static final Request REQUEST = new Request("1", "car", "corner", List.of("settings"));

    private static final byte[] HEAD =
            ("{\"foreload_checkpoint\":2,\"version\":\"1\",\"car\":\"car\",\"corner\":\"corner\",\"settings\":\"settings\"}"
                            + "\n")
                    .getBytes(StandardCharsets.UTF_8);

    private static final Braking PLAN = Braking.of(7.25, 0.2, new Release(ReleaseShapes.LINEAR, -10, 30.5));

    private static final Found FOUND = new Found(-93.125, true);

    private CheckpointFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        goesOn(data);
        ByteArrayOutputStream behind = new ByteArrayOutputStream();
        behind.write(HEAD);
        behind.write(data);
        goesOn(behind.toByteArray());
    }

    private static void goesOn(byte[] bytes) throws IOException {
        Path file = Scratch.write("sweep.jsonl", bytes);
        int known;
        try (Checkpoint checkpoint = Checkpoint.open(file, REQUEST)) {
            known = checkpoint.recalled();
            if (checkpoint.recall(PLAN).isPresent()) {
                return;
            }
            checkpoint.keep(PLAN, FOUND);
        } catch (InputException refused) {
            OneLineCheck.of(refused);
            if (!java.util.Arrays.equals(bytes, Files.readAllBytes(file))) {
                throw new IllegalStateException("a refused file was changed");
            }
            return;
        }
        try (Checkpoint again = Checkpoint.open(file, REQUEST)) {
            if (again.recalled() != known + 1
                    || !again.recall(PLAN).orElseThrow().equals(FOUND)) {
                throw new IllegalStateException("forgot: " + again.recalled() + " after " + known);
            }
        }
    }
}
