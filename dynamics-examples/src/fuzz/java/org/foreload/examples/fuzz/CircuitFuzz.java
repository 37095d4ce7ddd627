package org.foreload.examples.fuzz;

import java.nio.charset.StandardCharsets;
import org.foreload.file.CircuitFile;
import org.foreload.file.InputException;
import org.foreload.lap.Circuit;

/** Any bytes make a circuit or a refusal; the lines of its corners can be read everywhere. */
public final class CircuitFuzz {

    private CircuitFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) {
        try {
            Circuit circuit = CircuitFile.parse(
                            new String(data, StandardCharsets.UTF_8), "fuzz.json", Scratch.directory())
                    .value();
            circuit.corners().forEach(CornerFuzz::read);
        } catch (InputException refused) {
            OneLineCheck.of(refused);
        }
    }
}
