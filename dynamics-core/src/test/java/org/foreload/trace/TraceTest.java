package org.foreload.trace;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.foreload.trace.Trace.Column;
import org.junit.jupiter.api.Test;

/** A run as a table. */
class TraceTest {

    private static final Column WAY = new Column("s_m", "m", new double[] {0, 1, 2});

    private static Column speed(double... values) {
        return new Column("speed_mps", "m/s", values);
    }

    @Test
    void tablesWithTheSameNumbersAreEqual() {
        Trace trace = new Trace(List.of(WAY, speed(10, 11, Double.NaN)));
        Trace same = new Trace(List.of(WAY, speed(10, 11, Double.NaN)));
        assertEquals(trace, same);
        assertEquals(trace.hashCode(), same.hashCode());
        assertNotEquals(trace, new Trace(List.of(WAY, speed(10, 11, 12))));
        assertNotEquals(speed(1), new Column("speed_mps", "km/h", new double[] {1}));
        assertNotEquals(speed(1), new Column("speed", "m/s", new double[] {1}));
    }

    @Test
    void rowsBecomeColumns() {
        Trace.Builder rows = new Trace.Builder().column("s_m", "m").column("speed_mps", "m/s");
        rows.row(0, 10);
        rows.row(1, 11);
        Trace trace = rows.build();
        assertEquals(2, trace.rows());
        assertArrayEquals(new double[] {10, 11}, trace.column("speed_mps").values());
        assertEquals(11, trace.column("speed_mps").at(1));
        assertThrows(IllegalArgumentException.class, () -> rows.row(1));
    }

    @Test
    void aTableKeepsNoHandOnItsArrays() {
        double[] values = {1, 2};
        Column column = speed(values);
        values[0] = 7;
        column.values()[1] = 7;
        assertArrayEquals(new double[] {1, 2}, column.values());
    }

    @Test
    void columnsMustFitTogether() {
        assertThrows(IllegalArgumentException.class, () -> new Trace(List.of()));
        assertThrows(IllegalArgumentException.class, () -> new Trace(List.of(WAY, speed(1))));
        assertThrows(IllegalArgumentException.class, () -> new Trace(List.of(WAY, WAY)));
    }

    /** Who asks for a column that is not there hears which are. */
    @Test
    void aMissingColumnIsNamed() {
        IllegalArgumentException missing =
                assertThrows(IllegalArgumentException.class, () -> new Trace(List.of(WAY)).column("speed_mps"));
        assertEquals("no column speed_mps; there are [s_m]", missing.getMessage());
    }

    /** Common practice, no source: what comes too late is refused when it comes, with its name. */
    @Test
    void aColumnAfterTheFirstRowIsRefused() {
        Trace.Builder rows = new Trace.Builder().column("s_m", "m");
        rows.row(1);
        IllegalStateException late = assertThrows(IllegalStateException.class, () -> rows.column("late", "s"));
        assertTrue(late.getMessage().contains("late"), late.getMessage());
    }
}
