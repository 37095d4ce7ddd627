package org.foreload.study;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Slopes that learn: the secant condition and the least change of Broyden's rule, by hand. */
class SlopesTest {

    private static final double[] STEP = {3, 4};

    private final Slopes known = new Slopes(new double[] {1, 2}, new double[][] {{0, 1}, {1, 0}, {2, 2}});

    /** 11 is what the slopes say of the step, 36 what it came to: 25 more, one of the step's length squared. */
    @Test
    void afterAStepTheCostIsRightForIt() {
        Slopes learned = known.learned(STEP, 36, new double[0]);
        assertEquals(11, known.change(STEP));
        assertEquals(36, learned.change(STEP), 1e-12);
        assertArrayEquals(new double[] {1 + 3, 2 + 4}, learned.cost(), 1e-12);
        double[] across = {-4, 3};
        assertEquals(known.change(across), learned.change(across), 1e-12);
        assertArrayEquals(new double[] {1, 2}, known.cost(), "what was known stays");
    }

    @Test
    void eachLimitLearnsWhatIsKnownOfIt() {
        Slopes learned = known.learned(STEP, 11, new double[] {4 - 25, Double.NaN});
        assertArrayEquals(new double[] {-3, 1 - 4}, learned.limits()[0], 1e-12);
        assertArrayEquals(new double[] {1, 0}, learned.limits()[1]);
        assertArrayEquals(new double[] {2, 2}, learned.limits()[2]);
        assertArrayEquals(new double[] {0, 1}, known.limits()[0]);
    }
}
