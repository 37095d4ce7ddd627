package org.foreload.examples.own;

import java.util.List;
import java.util.Locale;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.tyre.Tyre;
import org.foreload.tyre.TyreLaws;
import org.foreload.vehicle.Car;

/** A tyre from outside the core: held against the laws, put on a demo car, driven through a demo corner. */
public final class OwnTyre {

    private OwnTyre() {}

    /** Laws that this example's tyre breaks: none. */
    static List<String> brokenLaws() {
        return TyreLaws.broken(tyre(), 500, 2000, 6000);
    }

    private static Tyre tyre() {
        return new ExponentialTyre(1.15, 18, 22, 0.3);
    }

    /** One entry on it, braked in good time. */
    static EntryResult entry() {
        Car car = Demos.car("--demo-car", "road").value().withTyres(tyre(), tyre());
        Corner corner = Demos.corner("--demo-corner", "medium").value();
        CornerStudy study = CornerStudy.of(car, corner);
        Release release = new Release(ReleaseShapes.LINEAR, -5, 25);
        return study.simulator()
                .run(Braking.of(0.6 * study.lockLimit(), 0.25, release).from(-160));
    }

    /** Runs the example and prints what came of it. */
    public static void main(String[] args) {
        EntryResult entry = entry();
        System.out.printf(
                Locale.ROOT,
                "laws broken: %s%n%s in %.3f s, slowest at %.1f m/s%n",
                brokenLaws(),
                entry.outcome().words(),
                entry.time(),
                entry.minimumSpeed());
    }
}
