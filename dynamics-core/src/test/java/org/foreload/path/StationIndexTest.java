package org.foreload.path;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The index against a search by halving, on lines of all kinds of pieces. */
class StationIndexTest {

    private static final long SEED = 7_001;

    private static int searched(double[] station, double s) {
        int found = Arrays.binarySearch(station, s);
        int piece = found >= 0 ? found : -found - 2;
        return Math.min(piece, station.length - 2);
    }

    private static double[] stations(Random random, int pieces, double spread) {
        double[] station = new double[pieces + 1];
        station[0] = -400 * random.nextDouble();
        for (int i = 1; i <= pieces; i++) {
            station[i] = station[i - 1] + 0.1 + Math.pow(random.nextDouble(), spread) * 100;
        }
        return station;
    }

    @Test
    void itFindsThePieceThatHalvingFinds() {
        Random random = new Random(SEED);
        for (int line = 0; line < 300; line++) {
            double[] station = stations(random, 1 + random.nextInt(line < 100 ? 8 : 200), line % 3 == 0 ? 1 : 6);
            StationIndex index = new StationIndex(station);
            double start = station[0];
            double end = station[station.length - 1];
            for (int i = 0; i < 100; i++) {
                double s = start + (end - start) * random.nextDouble();
                assertEquals(searched(station, s), index.piece(s));
            }
            for (double bound : station) {
                assertEquals(searched(station, bound), index.piece(bound));
                double before = Math.max(start, Math.nextDown(bound));
                assertEquals(searched(station, before), index.piece(before));
                double after = Math.min(end, Math.nextUp(bound));
                assertEquals(searched(station, after), index.piece(after));
            }
        }
    }
}
