package org.foreload.integrate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Steps lent from one integration to another. */
class MarkTest {

    private static final double[] START = {1, 0, 0.2};

    /** An oscillator, and a value that runs after it. */
    private static final DecayingSystem SYSTEM = new DecayingSystem() {
        @Override
        public int size() {
            return START.length;
        }

        @Override
        public void rates(double t, double[] y, double[] rate) {
            rate[0] = y[1];
            rate[1] = -y[0];
            rate[2] = 3 * (y[0] - y[2]);
        }

        @Override
        public int[] decaying() {
            return new int[] {2};
        }

        @Override
        public void decay(double t, double[] y, double[] decay) {
            decay[0] = 3;
        }
    };

    private final List<Mark> marks = new ArrayList<>();
    private Integration lending;

    private static Integration integration(StepObserver observer, Crossing... crossings) {
        double[] tolerances = {1e-6, 1e-6, 1e-6};
        return new Integration(SYSTEM, new Accuracy(tolerances, 0.01, 1, 1, 1e-9, 100_000), observer, crossings);
    }

    private Stop lend(Crossing... crossings) {
        lending = integration(step -> marks.add(lending.mark()), crossings);
        lending.begin(0, START);
        marks.add(lending.mark());
        return lending.advance(20);
    }

    /** Where the end is far enough, what follows is the same to the bit. */
    @Test
    void anIntegrationGoesOnFromTheMarkOfAnother() {
        assertEquals(Stop.REACHED, lend());
        int served = 0;
        for (double end = 0.01; end < 20; end += 0.37) {
            Integration whole = integration(step -> {});
            whole.begin(0, START);
            whole.advance(end);
            for (Mark mark : marks) {
                if (mark.servesEnd(end)) {
                    served++;
                    assertTrue(mark.at() < end);
                    Integration borrowing = integration(step -> {});
                    borrowing.resume(mark);
                    assertEquals(Stop.REACHED, borrowing.advance(end));
                    for (int i = 0; i < START.length; i++) {
                        assertEquals(whole.state(i), borrowing.state(i), 0, "from " + mark.at() + " to " + end);
                    }
                    assertEquals(whole.at(), borrowing.at(), 0);
                }
            }
        }
        assertTrue(served > 500, served + " served");
        assertFalse(marks.get(marks.size() - 2).servesEnd(1e9), "its last steps looked to its own end");
    }

    /** What ends one integration at a crossing ends the other there, too: it does not begin beyond. */
    @Test
    void nobodyGoesOnFromACrossing() {
        Crossing falls = (t, y) -> y[0];
        assertEquals(Stop.CROSSED, lend(falls));
        assertEquals(Math.PI / 2, lending.at(), 1e-5);
        assertFalse(marks.get(marks.size() - 1).servesEnd(20));
        Mark before = marks.get(marks.size() - 2);
        assertTrue(before.servesEnd(20));
        Integration borrowing = integration(step -> {}, falls);
        borrowing.resume(before);
        assertEquals(Stop.CROSSED, borrowing.advance(20));
        assertEquals(lending.at(), borrowing.at(), 0);
    }

    /** Who watches may end an advance between two steps; what follows is the same to the bit. */
    @Test
    void anAdvanceThatIsStoppedGoesOnLater() {
        lend();
        Integration[] watched = new Integration[1];
        watched[0] = integration(step -> {
            if (step.end() > 7) {
                watched[0].stop();
            }
        });
        watched[0].begin(0, START);
        assertEquals(Stop.ASKED, watched[0].advance(20));
        double first = watched[0].at();
        assertEquals(
                first,
                marks.stream().mapToDouble(Mark::at).filter(t -> t > 7).min().orElseThrow());
        assertEquals(Stop.ASKED, watched[0].advance(20));
        assertTrue(watched[0].at() > first);
        Stop last = Stop.ASKED;
        while (last == Stop.ASKED && watched[0].at() < 20) {
            last = watched[0].advance(20);
        }
        assertEquals(lending.state(0), watched[0].state(0), 0);
        assertEquals(lending.evaluations(), watched[0].evaluations());
    }

    /** A step that is kept says the same when others have been taken. */
    @Test
    void aStepThatIsKeptStaysAsItIs() {
        List<Step> kept = new ArrayList<>();
        List<double[]> then = new ArrayList<>();
        Integration integration = integration(step -> {
            double[] middle = new double[START.length];
            step.state((step.start() + step.end()) / 2, middle);
            kept.add(step.kept());
            then.add(middle);
        });
        integration.begin(0, START);
        integration.advance(20);
        assertTrue(kept.size() > 20);
        for (int i = 0; i < kept.size(); i++) {
            double middle = (kept.get(i).start() + kept.get(i).end()) / 2;
            double[] now = new double[START.length];
            kept.get(i).state(middle, now);
            assertArrayEquals(then.get(i), now, 0);
            assertEquals(Math.cos(middle), now[0], 1e-4);
        }
    }
}
