package org.foreload.optimum;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.Rounds;

/** Entries that nobody drives: time and one limit are known functions of the point, so that the best one is known. */
final class MadeUpEntries implements EntryAtPoint.Source {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    /** Four variables: linear releases. */
    static final ReleaseSpace SPACE = ReleaseSpace.of(
            STUDY,
            new Release(ReleaseShapes.LINEAR, 0, 20),
            1.1 * STUDY.lockLimit(),
            0.25,
            Optional.of(ReleaseShapes.LINEAR));

    private final ToDoubleFunction<double[]> time;
    private final ToDoubleFunction<double[]> limit;
    private final Predicate<double[]> made;
    private final boolean onTheEdge;
    private final Rounds rounds;
    private final List<double[]> points = new ArrayList<>();
    private final List<Double> asked = new ArrayList<>();

    private MadeUpEntries(
            ToDoubleFunction<double[]> time,
            ToDoubleFunction<double[]> limit,
            Predicate<double[]> made,
            boolean onTheEdge,
            Rounds rounds) {
        this.time = time;
        this.limit = limit;
        this.made = made;
        this.onTheEdge = onTheEdge;
        this.rounds = rounds;
    }

    /** Entries that all make the corner and are far within each limit. */
    static MadeUpEntries of(ToDoubleFunction<double[]> time, Rounds rounds) {
        return new MadeUpEntries(time, x -> -1, x -> true, false, rounds);
    }

    MadeUpEntries with(ToDoubleFunction<double[]> otherLimit) {
        return new MadeUpEntries(time, otherLimit, made, onTheEdge, rounds);
    }

    MadeUpEntries madeWhere(Predicate<double[]> here) {
        return new MadeUpEntries(time, limit, here, onTheEdge, rounds);
    }

    MadeUpEntries withNothingInHand() {
        return new MadeUpEntries(time, limit, made, true, rounds);
    }

    /** Time, s, that rises as the square of the distance from a point, by a hundredth at one unit. */
    static ToDoubleFunction<double[]> bowl(double... bottom) {
        return x -> {
            double sum = 0;
            for (int i = 0; i < x.length; i++) {
                sum += (x[i] - bottom[i]) * (x[i] - bottom[i]);
            }
            return 8 + 0.01 * sum;
        };
    }

    @Override
    public ReleaseSpace space() {
        return SPACE;
    }

    @Override
    public boolean onTheEdge() {
        return onTheEdge;
    }

    @Override
    public int driven() {
        return points.size();
    }

    @Override
    public double[] point(BrakePlan plan) {
        return SPACE.point(plan, 0);
    }

    @Override
    public EntryAtPoint at(double[] x, double than) {
        points.add(x.clone());
        asked.add(than);
        rounds.count();
        double first = Math.max(-1, Math.min(1, limit.applyAsDouble(x)));
        boolean makes = made.test(x);
        return new EntryAtPoint(
                x, makes, time.applyAsDouble(x), new double[] {first, -1}, makes ? first : 1, new double[0]);
    }

    /** Where an entry was asked for, in their order. */
    List<double[]> points() {
        return points;
    }

    /** Below which times, s, it was asked what an entry forgives. */
    List<Double> asked() {
        return asked;
    }
}
