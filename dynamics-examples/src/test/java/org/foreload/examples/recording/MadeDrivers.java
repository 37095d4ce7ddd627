package org.foreload.examples.recording;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.foreload.examples.recording.DemoRuns.Driver;

/** What the made drivers mean to do, worked out once for all tests: it takes seconds, and is the same each time. */
public final class MadeDrivers {

    private static final Map<Driver, List<MadeRun.Stage>> PLANS = new EnumMap<>(Driver.class);

    private MadeDrivers() {}

    /** How a driver means to take each of the three corners. */
    public static synchronized List<MadeRun.Stage> plan(Driver driver) {
        return PLANS.computeIfAbsent(driver, one -> new DemoRuns().plan(one));
    }
}
