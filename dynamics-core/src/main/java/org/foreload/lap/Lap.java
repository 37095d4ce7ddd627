package org.foreload.lap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.DoubleStream;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.BestRelease;
import org.foreload.optimum.Optimum;
import org.foreload.path.Corner;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.StraightLine;
import org.foreload.study.Sweep;

/**
 * What the best release gains in each corner of a circuit, over straight-line braking. A better exit is carried into
 * the next approach as kinetic energy per mass: the same engine on the same straight adds the same to both laps, and
 * drag takes little of the difference back.
 *
 * @param corners in driving order
 * @param complete whether every corner was searched to the end; false after a stop
 */
public record Lap(List<CornerGain> corners, boolean complete) {

    /** Copies the corners. */
    public Lap {
        corners = List.copyOf(Objects.requireNonNull(corners, "corners"));
    }

    /**
     * One corner.
     *
     * @param name of the corner
     * @param approachSpeed speed at the start of the approach with what the corner before has added, m/s
     * @param best the best entry; empty if no release makes the corner
     * @param baseline the best straight-line braking from the approach speed of the circuit, or the best plan from that
     *     speed where nobody brakes; empty if none makes it
     */
    public record CornerGain(
            String name, double approachSpeed, Optional<EntryResult> best, Optional<EntryResult> baseline) {

        /** Refuses null. */
        public CornerGain {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(best, "best");
            Objects.requireNonNull(baseline, "baseline");
        }

        /** Time gained, s; NaN where an entry is missing. */
        public double gain() {
            return best.isPresent() && baseline.isPresent()
                    ? baseline.get().time() - best.get().time()
                    : Double.NaN;
        }
    }

    /**
     * Time gained over the lap, s: the sum over corners that have both entries, see {@link #uncounted()}; NaN if none
     * has.
     */
    public double gain() {
        double[] known = corners.stream()
                .mapToDouble(CornerGain::gain)
                .filter(gain -> !Double.isNaN(gain))
                .toArray();
        return known.length == 0 ? Double.NaN : DoubleStream.of(known).sum();
    }

    /** The corners that {@link #gain()} leaves out, because no release or no straight-line braking makes them. */
    public List<CornerGain> uncounted() {
        return corners.stream().filter(corner -> Double.isNaN(corner.gain())).toList();
    }

    /** The corners by what is to be gained, most first; corners without a figure last. */
    public List<CornerGain> ranked() {
        return corners.stream()
                .sorted(Comparator.comparingDouble(corner -> -corner.gain())) // It takes NaN for the greatest.
                .toList();
    }

    /**
     * Drives a lap.
     *
     * @param circuit the corners
     * @param study makes the study of one corner: car, driver, margin; the index counts corners from 0, so that errors
     *     can say which one they mean
     * @param search for the best release in each corner
     * @param threads number of threads
     * @param progress hears of corners done in hundredths, and asked whether to go on
     */
    public static Lap of(
            Circuit circuit,
            BiFunction<Integer, Corner, CornerStudy> study,
            BestRelease search,
            int threads,
            Sweep.Progress progress) {
        Objects.requireNonNull(circuit, "circuit");
        Objects.requireNonNull(study, "study");
        Objects.requireNonNull(search, "search");
        Objects.requireNonNull(progress, "progress");
        List<CornerGain> gains = new ArrayList<>();
        boolean complete = true;
        double carried = 0;
        for (int i = 0; i < circuit.corners().size() && !progress.stopped(); i++) {
            Corner given = circuit.corners().get(i);
            double speed = Math.sqrt(Math.max(0, given.approachSpeed() * given.approachSpeed() + carried));
            CornerStudy plain = study.apply(i, given);
            boolean same = speed == given.approachSpeed();
            CornerStudy faster = same ? plain : study.apply(i, new Corner(given.name(), speed, given.path()));
            Optimum optimum = search.find(
                    faster, threads, share(progress, i, circuit.corners().size()));
            complete &= optimum.complete();
            Optional<EntryResult> baseline = optimum.entry()
                    .filter(best -> !best.braked())
                    .map(best -> plain.simulator().run(best.plan()))
                    .filter(plain.allowance()::met)
                    .or(() -> optimum.straightLine(search.buildUpTime())
                            .filter(found -> same)
                            .or(() -> StraightLine.best(
                                    plain, search.buildUpTime(), new Sweep(threads, Sweep.Progress.SILENT)))
                            .map(Finding::entry));
            gains.add(new CornerGain(given.name(), speed, optimum.entry(), baseline));
            carried = optimum.entry().isPresent() && baseline.isPresent()
                    ? square(exitSpeed(optimum.entry().get())) - square(exitSpeed(baseline.get()))
                    : 0;
        }
        return new Lap(gains, complete && gains.size() == circuit.corners().size());
    }

    private static double exitSpeed(EntryResult entry) {
        var speeds = entry.profile().orElseThrow().column("speed_mps");
        return speeds.at(speeds.size() - 1);
    }

    private static double square(double x) {
        return x * x;
    }

    private static Sweep.Progress share(Sweep.Progress progress, int corner, int corners) {
        return new Sweep.Progress() {
            @Override
            public void update(int done, int total) {
                progress.update(100 * corner + (int) (100L * done / total), 100 * corners);
            }

            @Override
            public boolean stopped() {
                return progress.stopped();
            }
        };
    }
}
