package org.foreload.examples.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.demo.Demos;
import org.foreload.recording.Channel;
import org.foreload.recording.Recording;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;

/**
 * Two drivers in the demo car, through three demo corners in a row, simulated afresh each time: one carries the brake
 * into the corners, the other brakes earlier, less hard, and is done by turn-in. Both are as slow at the slowest point;
 * what the first gains, half a second or more in each corner, is gained before it.
 */
public final class DemoRuns {

    /** Time in which a foot reaches its peak, s. */
    private static final double BUILD_UP = 0.2;

    /**
     * Where the trailing driver is off the brake, as a share of the way to the apex: less deep than would be quickest
     * in the tight corner, and so deep that the car is nowhere slower than it has to be.
     */
    private static final double TRAILED = 0.45;

    /** Scatter of brake points and of brake off from lap to lap, m, one standard deviation; invented. */
    private static final double BRAKE_SCATTER = 1;

    private static final double RELEASE_SCATTER = 2.5;

    /** A scattered plan that fails is drawn again, nearer to the middle, this often. */
    private static final int MOST_DRAWS = 6;

    private final List<CornerStudy> studies = new ArrayList<>();

    /** The demo car and the demo corners in the order in which they are driven. */
    public DemoRuns() {
        for (String corner : List.of("medium", "hairpin", "fast")) {
            studies.add(CornerStudy.of(
                    Demos.car("car", Demos.DEFAULT_CAR).value(),
                    Demos.corner("corner", corner).value()));
        }
    }

    /** The two drivers. */
    public enum Driver {
        /** Carries the brake into the corner. */
        TRAILING,
        /** Brakes earlier and in a straight line. */
        STRAIGHT
    }

    /** How much earlier than the latest brake point either means to brake, m. */
    private static final double EARLY = 1;

    /** How a driver means to take each corner. */
    public List<MadeRun.Stage> plan(Driver driver) {
        List<MadeRun.Stage> stages = new ArrayList<>();
        for (CornerStudy study : studies) {
            double apex = study.simulator().apex();
            boolean trails = driver == Driver.TRAILING;
            Release release = trails
                    ? new Release(ReleaseShapes.LINEAR, -4, TRAILED * apex)
                    : new Release(ReleaseShapes.LINEAR, -20, 4);
            double peak = (trails ? 0.8 : 0.7) * study.lockLimit();
            Braking braking = Braking.of(peak, BUILD_UP, release);
            BrakePlan latest = study.search().latest(braking).entry().plan();
            stages.add(new MadeRun.Stage(study, latest.withBrakePoint(latest.brakePoint() - EARLY)));
        }
        return stages;
    }

    /**
     * One lap as a driver who scatters drives it.
     *
     * @param stages what is meant
     * @param scatter how much of the usual scatter, zero for none
     * @param seed of the draws
     */
    public static MadeRun lap(List<MadeRun.Stage> stages, double scatter, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<MadeRun.Stage> driven = new ArrayList<>();
        for (MadeRun.Stage stage : stages) {
            double size = scatter;
            MadeRun.Stage drawn = stage;
            for (int draw = 0; draw < MOST_DRAWS; draw++) {
                drawn = drawn(stage, size, random);
                if (stage.study().simulator().probe(drawn.plan()).made()) {
                    break;
                }
                drawn = stage;
                size /= 2;
            }
            driven.add(drawn);
        }
        return MadeRun.drive(driven);
    }

    private static MadeRun.Stage drawn(MadeRun.Stage stage, double size, SplittableRandom random) {
        BrakePlan plan = stage.plan();
        Release release = plan.release();
        double brake = plan.brakePoint() - size * BRAKE_SCATTER * Math.abs(random.nextGaussian());
        double end = release.end() + size * RELEASE_SCATTER * random.nextGaussian();
        Release other = new Release(release.shape(), release.start(), Math.max(release.start() + 1, end));
        return new MadeRun.Stage(stage.study(), plan.withBrakePoint(brake).with(other));
    }

    /** Laps in a demo file. */
    public static final int LAPS = 5;

    /** Rate of its logger, Hz. */
    private static final double RATE = 50;

    /** Seeds of the two drivers' scatter and sensors. */
    private static final long SEED = 20;

    /** A file of {@link #LAPS} laps as a logger would have written it. */
    public RecordedFile file(Driver driver) {
        List<MadeRun.Stage> stages = plan(driver);
        List<RecordedFile.Lap> laps = new ArrayList<>();
        long rows = 0;
        Trace last = null;
        for (int lap = 1; lap <= LAPS; lap++) {
            long seed = SEED * (1 + driver.ordinal()) + lap;
            last = Sensors.usual(RATE).record(lap(stages, 1, seed), seed);
            laps.add(new RecordedFile.Lap(lap, Recording.of(last)));
            rows += last.rows();
        }
        List<RecordedFile.FoundChannel> channels = last.columns().stream()
                .map(column -> new RecordedFile.FoundChannel(
                        Channel.of(column.name())
                                .orElseThrow()
                                .name()
                                .toLowerCase(Locale.ROOT)
                                .replace('_', '-'),
                        column.name(),
                        column.unit(),
                        false,
                        0,
                        0))
                .toList();
        String name = driver == Driver.TRAILING ? "demo run, trail braking" : "demo run, straight-line braking";
        return new RecordedFile(name, laps, channels, List.of(), rows, List.of(), null);
    }
}
