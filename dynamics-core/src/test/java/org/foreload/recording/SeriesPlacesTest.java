package org.foreload.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Places looked up together are those that are looked up one by one. */
class SeriesPlacesTest {

    @Test
    void manyPlacesAreReadAsEachAlone() {
        SplittableRandom random = new SplittableRandom(3);
        double[] axis = new double[200];
        double[] values = new double[axis.length];
        for (int i = 1; i < axis.length; i++) {
            axis[i] = axis[i - 1] + (i % 7 == 0 ? 1e-6 : random.nextDouble());
            values[i] = random.nextGaussian();
        }
        double[] places = new double[900];
        places[0] = -3;
        for (int k = 1; k < places.length; k++) {
            places[k] = k % 5 == 0 ? axis[Math.min(199, Series.index(axis, places[k - 1]) + 1)] : places[k - 1] + 0.15;
        }
        double[] read = Series.places(axis, places).read(values);
        for (int k = 0; k < places.length; k++) {
            assertEquals(Series.at(axis, values, places[k]), read[k]);
        }
    }
}
