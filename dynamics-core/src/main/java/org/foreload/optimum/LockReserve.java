package org.foreload.optimum;

import java.util.Objects;
import java.util.stream.DoubleStream;
import org.foreload.braking.Braking;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntryResult.Margins;
import org.foreload.entry.Outcome;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.BrakePointSearch;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Excess;
import org.foreload.strategy.InHand;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.Trial;
import org.foreload.study.Edge;

/**
 * How much harder the brake could be before a wheel stops, and what too little of that is made to cost, so that a
 * search which runs along this limit meets a crease and no cliff: a wheel that stops costs a tenth of a second.
 */
public final class LockReserve {

    /** Share by which the brake must be able to be harder: a wheel that only just turns is a matter of rounding. */
    private static final double LEAST = 0.003;

    /** Seconds per share of brake force that is short: some times what harder braking on the straight gains. */
    private static final double PRICE = 15;

    /** Share of the locking limit with which the search for the hardest braking begins: no wheel stops with it. */
    private static final double FIRST_PEAK = 0.7;

    /** Part by which that goes up or down until one peak keeps the reserve and the next does not. */
    private static final double STRIDE = 1.15;

    /** Shares between which the hardest braking is looked for: a brake that locks nothing there never does. */
    private static final double LEAST_PEAK = 0.1;

    private static final double MOST_PEAK = 2;

    /** Accuracy of the peak and of what it leaves, as shares: a driver's foot scatters by some hundredths. */
    private static final double FINE = 2e-4;

    private final CornerStudy study;
    private final double wanted;

    /** What a study's margin asks for: the hard foot that must be in hand must not stop a wheel. */
    public LockReserve(CornerStudy study) {
        this.study = Objects.requireNonNull(study, "study");
        this.wanted =
                Math.max(LEAST, InHand.HARDER_PER_METRE * study.allowance().inHand());
    }

    /** Share by which the brake must be able to be harder. */
    double wanted() {
        return wanted;
    }

    /**
     * How far an entry goes beyond drift, edge, front and rear while the brake is on, front and rear while it is off,
     * and lock; below zero what it has left. An axle is fullest once on the brake and once more where the line is
     * tightest: two limits, since the larger of both changes with a kink along which neither slope leads. To a lock an
     * entry must keep nearly the reserve: the entry with a hard foot has the last word.
     */
    double[] limits(Trial trial) {
        Excess excess = trial.excess();
        Allowance allowance = study.allowance();
        Margins margins = trial.entry().margins();
        return new double[] {
            excess.drift(),
            excess.edge(),
            allowance.beyondFront(margins.onBrake().front()),
            allowance.beyondRear(margins.onBrake().rear()),
            allowance.beyondFront(margins.offBrake().front()),
            allowance.beyondRear(margins.offBrake().rear()),
            Excess.SHARE_WEIGHT * (KEPT * wanted - trial.entry().lockReserve())
        };
    }

    /**
     * How far a slip goes beyond the edge of the track, m, and a wheel that stops. One that is not forgiven says what
     * ended it, and not by how much, and nothing of the other: NaN.
     */
    static DoubleStream ofSlip(Trial slip) {
        if (slip.met()) {
            return DoubleStream.of(slip.excess().edge(), slip.excess().lock());
        }
        boolean locked = slip.entry().outcome() == Outcome.LOCKED_UP;
        return DoubleStream.of(locked ? Double.NaN : OVER_THE_EDGE, locked ? LOCKED : Double.NaN);
    }

    /** What a slip that ends on the grass is taken to be beyond the edge, m: some steps' worth. */
    private static final double OVER_THE_EDGE = 0.5;

    /**
     * What a slip that stops a wheel is taken to be beyond that limit, in its excess: half a hundredth of the brake.
     */
    private static final double LOCKED = 0.05;

    /** Share of the reserve that {@link #limits} ask for. */
    private static final double KEPT = 0.9;

    /** What an entry that comes too near to a lock counts as slower, s. */
    double price(EntryResult entry) {
        return PRICE * Math.max(0, wanted - entry.lockReserve());
    }

    /**
     * Hardest braking in a straight line, m/s², that keeps the reserve: found by driving, so that it knows of banking,
     * which takes load off the wheels of one side, and of a body that still pitches when the foot is down.
     *
     * @param buildUpTime time in which the foot reaches the peak, s
     */
    public double hardest(double buildUpTime) {
        double limit = study.lockLimit();
        return limit
                * Edge.largest(
                        share -> left(share * limit, buildUpTime), FIRST_PEAK, STRIDE, LEAST_PEAK, MOST_PEAK, FINE);
    }

    /** What the brake could be harder than is asked for, as a share. */
    private double left(double peak, double buildUpTime) {
        BrakePointSearch search = study.search();
        Braking straight = StraightLine.braking(peak, buildUpTime);
        return search.trial(straight.from(search.estimate(straight))).entry().lockReserve() - wanted;
    }
}
