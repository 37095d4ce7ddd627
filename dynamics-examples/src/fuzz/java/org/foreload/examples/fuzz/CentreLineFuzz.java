package org.foreload.examples.fuzz;

import org.foreload.file.CornerFile;
import org.foreload.file.InputException;

/** Any bytes behind {@code centre_line_csv} make a corner or a refusal. */
public final class CentreLineFuzz {

    /** More bytes are cut off: fitting a long line takes its time, and reading it is the same in every row. */
    private static final int MOST = 2000;

    private static final String CORNER = "{\"name\": \"fuzz\", \"approach_speed_mps\": 30, \"approach_length_m\": 100,"
            + " \"exit_length_m\": 100, \"half_width_m\": 5, \"centre_line_csv\": \"line.csv\"}";

    private CentreLineFuzz() {}

    /** One input of the fuzzer. */
    public static void fuzzerTestOneInput(byte[] data) {
        byte[] bytes = data.length > MOST ? java.util.Arrays.copyOf(data, MOST) : data;
        Scratch.write("line.csv", bytes);
        try {
            CornerFuzz.read(
                    CornerFile.parse(CORNER, "fuzz.json", Scratch.directory()).value());
        } catch (InputException refused) {
            OneLineCheck.of(refused);
        }
    }
}
