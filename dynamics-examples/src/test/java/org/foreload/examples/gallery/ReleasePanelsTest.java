package org.foreload.examples.gallery;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Units;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.XyChart;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.junit.jupiter.api.Test;

/** The releases of one peak, of which one keeps too little margin. */
class ReleasePanelsTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", Demos.DEFAULT_CAR).value(),
            Demos.corner("", Demos.DEFAULT_CORNER).value());

    private static EntryResult ending(double end) {
        return STUDY.latest(Braking.of(6, 0.25, new Release(ReleaseShapes.LINEAR, 0, end)))
                .entry();
    }

    /** A release of which the table says that it leaves too little margin is not drawn like one that is kept. */
    @Test
    void whatLeavesTooLittleMarginHasAMarkOfItsOwn() {
        List<EntryResult> entries = List.of(ending(4), ending(8), ending(12));
        assertTrue(entries.stream().allMatch(EntryResult::made));
        XyChart all = map(entries, -1);
        assertEquals(List.of("made it", "this release"), names(all));
        XyChart chart = map(entries, 2);
        assertEquals(List.of("made it", "made it, too little margin", "this release"), names(chart));
        assertArrayEquals(new double[] {4, 8}, chart.series().get(0).xs());
        assertArrayEquals(new double[] {12}, chart.series().get(1).xs());
        assertEquals(Marks.TOO_LITTLE_MARGIN, chart.series().get(1).style());
    }

    private static XyChart map(List<EntryResult> entries, int narrow) {
        List<Finding> findings = IntStream.range(0, entries.size())
                .mapToObj(i -> new Finding(entries.get(i), i != narrow, 5))
                .toList();
        return new ReleasePanels(STUDY, findings, 0, Units.SI).map(0, findings.size());
    }

    private static List<String> names(XyChart chart) {
        return chart.series().stream().map(XyChart.Series::name).toList();
    }
}
