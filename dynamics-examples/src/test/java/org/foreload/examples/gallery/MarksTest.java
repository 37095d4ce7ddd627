package org.foreload.examples.gallery;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.foreload.entry.Outcome;
import org.foreload.examples.picture.Style;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MarksTest {

    /** One picture shows where a plan turns in and how the entry ended. */
    @ParameterizedTest
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "MADE_IT")
    void anEndLooksLikeNoPlace(Outcome outcome) {
        List<Style.Marker> black =
                List.of(Marks.TURN_IN.marker(), Marks.APEX.marker(), Marks.SLOWEST.marker(), Marks.BEST.marker());
        assertFalse(black.contains(Marks.failed(outcome).marker()), () -> outcome + " looks like a place");
    }
}
