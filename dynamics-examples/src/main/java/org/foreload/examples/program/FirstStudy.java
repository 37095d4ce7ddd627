package org.foreload.examples.program;

import java.nio.file.Path;
import java.util.Locale;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.file.CarFile;
import org.foreload.file.CornerFile;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;

/** Two ways of coming off the brake, compared, in ten lines. */
public final class FirstStudy {

    private FirstStudy() {}

    /**
     * Compares a trailed release with straight-line braking.
     *
     * @param carFile a car
     * @param cornerFile a corner
     * @return the gain in words
     */
    public static String gain(Path carFile, Path cornerFile) {
        // README: begin
        Car car = CarFile.read(carFile).value();
        Corner corner = CornerFile.read(cornerFile).value();
        CornerStudy study = CornerStudy.of(car, corner);
        double apex = study.simulator().apex();
        double peak = 0.8 * study.lockLimit();
        Release trailed = new Release(ReleaseShapes.PROGRESSIVE, 0, 0.6 * apex);
        Release straight = new Release(ReleaseShapes.ABRUPT, 0, 0);
        EntryResult best = study.latest(Braking.of(peak, 0.25, trailed)).entry();
        EntryResult plain = study.latest(Braking.of(peak, 0.25, straight)).entry();
        return String.format(Locale.ROOT, "trailing gains %.2f s", plain.time() - best.time());
        // README: end
    }
}
