package org.foreload.examples.manual;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class RenewalTest {

    private static final List<String> PRINTED = List.of(
            "a car in a corner",
            "",
            "It takes 16.31 s.",
            "In hand: 5 m.",
            "",
            "shape   time",
            "held    16.31",
            "smooth  16.40");

    @Test
    void numbersAreRenewedAndWhatIsLeftOutStaysOut() {
        assertEquals(
                List.of("…", "It takes 16.31 s.", "…"), Renewal.of(List.of("…", "It takes 16.37 s.", "…"), PRINTED));
        assertEquals(
                List.of("…", "shape   time", "held    16.31", "…"),
                Renewal.of(List.of("…", "shape   time", "linear  16.37", "…"), PRINTED));
    }

    @Test
    void aPageThatShowsAllGoesOnToShowAll() {
        assertEquals(PRINTED, Renewal.of(List.of("a car in a corner", "", "It takes 16.37 s."), PRINTED));
    }

    @Test
    void aSentenceThatIsBrokenAnewKeepsAllItsLines() {
        List<String> printed = List.of(
                "x", "It takes 16.3 s and is", "10.35 s quicker than straight-line", "  braking.", "In hand: 4 m.");
        assertEquals(
                List.of(
                        "…",
                        "It takes 16.3 s and is",
                        "10.35 s quicker than straight-line",
                        "  braking.",
                        "In hand: 4 m.",
                        "…"),
                Renewal.of(
                        List.of(
                                "…",
                                "It takes 16.3 s and is",
                                "9.35 s quicker than straight-line braking.",
                                "In hand: 4 m.",
                                "…"),
                        printed));
    }
}
