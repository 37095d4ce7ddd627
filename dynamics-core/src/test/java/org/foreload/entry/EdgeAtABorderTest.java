package org.foreload.entry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.driver.DriverSettings;
import org.foreload.entry.EntryEvent.Kind;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.trace.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A track that becomes narrow all at once, just where the equations switch: whoever is farther off the line than that
 * has left it there. The offsets come from the same entry on a track that stays wide.
 */
class EdgeAtABorderTest {

    private static final Path WIDE = SampleRun.CORNER.path();

    /** The end of the arc, m, after a spiral of 30 m and an arc of 75 m: there the car is off its line. */
    private static final double BORDER = 105;

    /** The sample corner's line on a track that is this wide, m, to either side from a station on. */
    private record Narrowed(double from, boolean included, double width) implements Path {

        private double width(double s) {
            return s > from || included && s == from ? width : WIDE.widthLeft(s);
        }

        @Override
        public double start() {
            return WIDE.start();
        }

        @Override
        public double end() {
            return WIDE.end();
        }

        @Override
        public double curvature(double s) {
            return WIDE.curvature(s);
        }

        @Override
        public double curvatureGradient(double s) {
            return WIDE.curvatureGradient(s);
        }

        @Override
        public double heading(double s) {
            return WIDE.heading(s);
        }

        @Override
        public Point position(double s) {
            return WIDE.position(s);
        }

        @Override
        public double grade(double s) {
            return 0;
        }

        @Override
        public double banking(double s) {
            return 0;
        }

        @Override
        public double widthLeft(double s) {
            return width(s);
        }

        @Override
        public double widthRight(double s) {
            return width(s);
        }

        @Override
        public double exitStraight() {
            return WIDE.exitStraight();
        }

        @Override
        public double[] kinks() {
            return WIDE.kinks();
        }
    }

    private static EntrySimulator on(Path path) {
        return SampleRun.simulator(SampleRun.CAR, new Corner("narrow", 45, path));
    }

    /** Distance off the line at the border, m, on the wide track. */
    private static double offLine() {
        EntryResult entry = SampleRun.simulator(SampleRun.CAR).run(SampleRun.PLAN);
        assertEquals(Outcome.MADE_IT, entry.outcome());
        Trace trace = entry.profile().orElseThrow();
        double[] stations = trace.column("s_m").values();
        int row = 0;
        while (Math.abs(stations[row] - BORDER) > 1e-6) {
            row++;
        }
        return Math.abs(trace.column("offset_m").at(row));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aStepThatLeavesTheCarOutsideEndsTheRun(boolean included) {
        double off = offLine();
        assertTrue(off > 0.01, "too near the line: " + off);
        EntrySimulator narrow = on(new Narrowed(BORDER, included, off / 2));
        EntryResult run = narrow.run(SampleRun.PLAN);
        assertEquals(Outcome.RAN_WIDE, run.outcome());
        assertFalse(run.made());
        // As narrow from the border on: it is seen there, to the tenth of a millimetre.
        assertEquals(BORDER, run.event(Kind.TRACK_EDGE).orElseThrow().station(), 2e-4);
        assertEquals(-off / 2, run.margins().edge(), 0.02 * off);
        EntryResult probe = narrow.probe(SampleRun.PLAN);
        assertEquals(Outcome.RAN_WIDE, probe.outcome());
        assertEquals(BORDER, probe.event(Kind.TRACK_EDGE).orElseThrow().station(), 2e-4);
    }

    /** One that leaves it inside changes nothing. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aStepThatLeavesTheCarInsideDoesNot(boolean included) {
        EntryResult wide = SampleRun.simulator(SampleRun.CAR).run(SampleRun.PLAN);
        EntrySimulator narrow = on(new Narrowed(BORDER, included, wide.farthestOffset() + 0.1));
        EntryResult run = narrow.run(SampleRun.PLAN);
        assertEquals(Outcome.MADE_IT, run.outcome());
        assertEquals(wide.time(), run.time());
        assertEquals(Outcome.MADE_IT, narrow.probe(SampleRun.PLAN).outcome());
    }

    /** No width at all: nobody is on such a track. */
    @Test
    void withoutWidthTheRunEndsWhereItBegins() {
        EntrySimulator none = on(new Narrowed(WIDE.start(), true, 0));
        EntrySimulator reacting = none.with(DriverSettings.reacting());
        for (EntryResult entry :
                new EntryResult[] {none.run(SampleRun.PLAN), none.probe(SampleRun.PLAN), reacting.run(SampleRun.PLAN)
                }) {
            assertEquals(Outcome.RAN_WIDE, entry.outcome());
            assertEquals(
                    WIDE.start(), entry.event(Kind.TRACK_EDGE).orElseThrow().station());
            assertEquals(Double.NaN, entry.time());
            assertFalse(entry.braked());
        }
    }
}
