package org.foreload.examples.recording;

import static org.foreload.examples.recording.RecordingFileTest.read;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import org.foreload.recording.Channel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A single row at another time or place than its neighbours. */
class OutOfOrderTest {

    private static final int ROWS = 300;

    /** Thirty seconds at 10 Hz and 20 m/s, of which one row has another time, or is at another distance. */
    private static String table(int row, double time, double distance) {
        StringBuilder text = new StringBuilder("time_s,distance (m),speed_mps,brake,lateral_acceleration_mps2\n");
        for (int i = 0; i < ROWS; i++) {
            double t = i == row ? time : 50 + 0.1 * i;
            double s = i == row ? distance : 2.0 * i;
            double brake = i > 100 && i < 150 ? 40 : 0;
            text.append(String.format(
                    Locale.ROOT, "%.2f,%.2f,%.3f,%.1f,%.3f%n", t, s, 20 + 0.01 * (i % 7), brake, Math.sin(0.02 * i)));
        }
        return text.toString();
    }

    private static void assertOneRowLess(RecordedFile file, String reason) {
        assertEquals(1, file.laps().size());
        assertEquals(ROWS - 1, file.laps().get(0).recording().rows());
        assertEquals(List.of(new RecordedFile.Unused(122, 122, "", "", reason)), file.leftOut());
    }

    /** Before the run began, seconds back, a second or a minute ahead, and days ahead. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 55, 63.3, 120, 90_000})
    void aTimeOutOfOrderCostsItsRowAndNoLap(double time) {
        assertOneRowLess(read(table(120, time, 240)), "time out of order");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 100, 300, 5000})
    void aDistanceOutOfOrderCostsItsRowAndNoLap(double distance) {
        assertOneRowLess(read(table(120, 62, distance)), "distance out of order");
    }

    /** A clock of the day, and a counter of milliseconds with 16 bits, full in mid-lap. Arithmetic. */
    @ParameterizedTest
    @ValueSource(doubles = {86_400, 65.536})
    void aClockThatIsFullGoesOn(double full) {
        StringBuilder text = new StringBuilder("time_s,speed_mps,brake,lateral_acceleration_mps2\n");
        for (int i = 0; i < ROWS; i++) {
            double t = (full - 12 + 0.1 * i) % full;
            text.append(String.format(
                    Locale.ROOT, "%.3f,%.3f,%d,%.3f%n", t, 20 + 0.01 * (i % 7), i % 3, Math.sin(0.02 * i)));
        }
        RecordedFile file = read(text.toString());
        assertEquals(List.of(), file.leftOut());
        assertEquals(1, file.laps().size());
        double[] time = file.laps().get(0).recording().column(Channel.TIME);
        assertEquals(ROWS, time.length);
        assertEquals(0.1 * (ROWS - 1), time[ROWS - 1] - time[0], 1e-3);
    }

    /** A lap whose own clock begins anew when another time than a full one has passed. */
    @Test
    void aClockThatIsNotFullBeginsALap() {
        String one = table(-1, 0, 0).replaceAll(",[0-9.]+,20", ",,20");
        RecordedFile file = read(one + one.substring(one.indexOf('\n') + 1));
        assertEquals(2, file.laps().size());
    }

    /** Two laps whose distance begins anew, and two whose clock does: neither begin is out of order. */
    @Test
    void aLapThatBeginsAnewIsNotOutOfOrder() {
        String one = table(-1, 0, 0);
        String again = one.substring(one.indexOf('\n') + 1);
        RecordedFile file = read(one + again);
        assertEquals(List.of(), file.leftOut());
        assertEquals(2, file.laps().size());
        for (RecordedFile.Lap lap : file.laps()) {
            assertEquals(ROWS, lap.recording().rows());
            assertEquals(50, lap.recording().column(Channel.TIME)[0]);
        }
    }
}
