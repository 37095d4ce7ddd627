package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.foreload.conventions.InvalidValueException;
import org.foreload.file.InputException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the core refuses is refused in the words of the user. */
class BlameTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            yaw_inertia_kg_m2  | demo car light: yaw_inertia_kg_m2: 0: must be a number above 0
            approach_speed_mps | demo corner medium: approach_speed_mps: 0: must be a number above 0
            release_end        | --release-end: 0: must be a number above 0
            """)
    void theSourceOfTheFieldIsNamed(String field, String line) {
        Blame blame = new Blame(new CarOptions(), new CornerOptions());
        InputException refusal = assertThrows(
                InputException.class,
                () -> blame.compute(() -> {
                    throw new InvalidValueException(field, 0, "a number above 0");
                }));
        assertEquals(line, refusal.line());
    }
}
