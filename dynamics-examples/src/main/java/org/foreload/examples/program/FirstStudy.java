package org.foreload.examples.program;

import java.nio.file.Path;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.file.CarFile;
import org.foreload.examples.file.CornerFile;
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
        double peak = 0.75 * study.lockLimit();
        Release trailed =
                new Release(ReleaseShapes.SMOOTH, 0, 0.7 * study.simulator().apex());
        Release straight = new Release(ReleaseShapes.ABRUPT, 0, 0);
        double quick =
                study.latest(new BrakePlan(0, peak, 0.25, trailed)).entry().time();
        double slow =
                study.latest(new BrakePlan(0, peak, 0.25, straight)).entry().time();
        return "trailing gains %.2f s; the bound is %.2f s"
                .formatted(slow - quick, study.bound().time());
        // README: end
    }
}
