package org.foreload.strategy;

import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.ideal.IdealProfile;

/**
 * The one search for brake points. It holds entries against what is allowed by how far they go beyond it, their
 * {@link Excess}, and looks in whole decimetres, in which plans are given.
 *
 * <p>Making a corner is not monotone in the brake point: too late, the car runs wide or spins; too early, it crawls or
 * stops. From a guess the search climbs to the first later point that fails, or goes back to the first earlier one that
 * keeps the margin, by steps that grow; then it closes in on the change by false position on the excess, halving where
 * that is slow. A brake point counts only if the margin is kept from a metre earlier too.
 *
 * <p>What a plan must have in hand is asked in the same way: the entries of a driver who is a little late, comes off
 * the brake late or brakes too hard must still make the corner.
 */
public final class BrakePointSearch {

    /** How much later, m, than the estimate most brake points are. */
    private static final double USUALLY_LATER = 1.5;

    private final EntrySimulator simulator;
    private final Allowance allowance;
    private final BrakePointEstimate estimate;

    /** Searches with this simulator for this margin; the bound says where to start. */
    public BrakePointSearch(IdealProfile bound, EntrySimulator simulator, Allowance allowance) {
        this.simulator = simulator;
        this.allowance = allowance;
        this.estimate = new BrakePointEstimate(bound, simulator.car());
    }

    /**
     * Brake point, m, of a car of constant brake force that comes out of the release a little slower than the bound.
     */
    public double estimate(Braking braking) {
        return estimate.of(braking);
    }

    /** One plan held against the margin, whatever it has in hand; computed coarsely. */
    public Trial trial(BrakePlan plan) {
        return allowance.trial(simulator.probe(plan));
    }

    /** The latest brake point that keeps the margin, found from the {@link #estimate}. */
    public Trial latest(Braking braking) {
        return latest(braking, estimate(braking) + USUALLY_LATER);
    }

    /**
     * The latest brake point that keeps the margin and has in hand what is asked for.
     *
     * @param braking how the driver brakes
     * @param guess brake point, m; the nearer it is, the fewer trials
     * @return the entry from there, computed coarsely; if there is none, the one that came closest
     */
    public Trial latest(Braking braking, double guess) {
        return latest(walk(braking, this::trial), braking, guess);
    }

    /**
     * The quickest brake point that keeps the margin and has in hand what is asked for: the latest, but where the last
     * decimetres of drift cost more time on the way out than the later brake gains on the way in.
     */
    public Trial quickest(Braking braking) {
        BrakePointWalk nominal = walk(braking, this::trial);
        Trial latest = latest(nominal, braking, estimate(braking) + USUALLY_LATER);
        if (!latest.met()) {
            return latest;
        }
        Trial quickest = nominal.quickest(latest);
        boolean kept =
                quickest == latest || leftWithNothingInHand(quickest.entry().plan()) >= 0;
        return kept ? quickest : latest;
    }

    private Trial latest(BrakePointWalk nominal, Braking braking, double guess) {
        Trial found = nominal.latest(BrakePointWalk.decimetre(guess), last(braking));
        if (!found.met() || !(allowance.inHand() > 0)) {
            return found;
        }
        for (boolean moved = true; moved; ) {
            moved = false;
            for (Slip slip : Slip.values()) {
                if (slip == Slip.LATE_BRAKE && nominal.latestMade() >= found.point() + allowance.inHand()) {
                    continue; // Driven already.
                }
                BrakePointWalk slipped = walk(braking, plan -> slip.trial(simulator, plan, allowance.inHand()));
                Trial keeps = slipped.latest(
                        BrakePointWalk.decimetre(found.point()), BrakePointWalk.decimetre(found.point()));
                if (!keeps.met()) {
                    return new Trial(found.point(), found.entry(), Excess.NOT_MADE);
                }
                int point = BrakePointWalk.decimetre(keeps.point());
                if (point < BrakePointWalk.decimetre(found.point())) {
                    found = nominal.at(point);
                    moved = true;
                    if (!found.met()) {
                        return found;
                    }
                }
            }
        }
        return found;
    }

    /**
     * The answer of the search driven with full accuracy. Where the corner is made by so little that the coarser trial
     * made what this does not, a little earlier is tried.
     *
     * @return not found if the search has no answer or none that keeps its margin at full accuracy
     */
    public Finding confirmed(Trial latest) {
        Braking braking = latest.entry().plan().braking();
        EntryResult entry = simulator.run(latest.entry().plan());
        if (!latest.met()) {
            return new Finding(entry, false, Double.NaN);
        }
        int point = BrakePointWalk.decimetre(latest.point());
        for (int back = 1; !allowance.met(entry) && back <= MOST_BACK; back *= 2) {
            point -= back;
            entry = simulator.run(braking.from(point / 10.0));
        }
        if (!allowance.met(entry)) {
            return new Finding(entry, false, Double.NaN);
        }
        double inHand = inHand(entry.plan());
        return inHand >= allowance.inHand() ? new Finding(entry, true, inHand) : new Finding(entry, false, Double.NaN);
    }

    /** Longest single step back, in decimetres, to confirm an answer. */
    private static final int MOST_BACK = 16;

    /**
     * Least distance, m, to the edge of the track that the car keeps with what must be in hand given away: late on the
     * brake, late off it, or too hard; negative infinity if it then does not make the corner, infinite if nothing must
     * be in hand.
     */
    public double leftWithNothingInHand(BrakePlan plan) {
        double left = Double.POSITIVE_INFINITY;
        if (allowance.inHand() > 0) {
            for (Slip slip : Slip.values()) {
                Trial trial = slip.trial(simulator, plan, allowance.inHand());
                if (!trial.met()) {
                    return Double.NEGATIVE_INFINITY;
                }
                left = Math.min(left, -trial.excess().edge());
            }
        }
        return left;
    }

    /** Metres in hand of a plan: see {@link InHand}. */
    public double inHand(BrakePlan plan) {
        return InHand.of(simulator, plan);
    }

    private BrakePointWalk walk(Braking braking, Function<BrakePlan, Trial> question) {
        return new BrakePointWalk(braking, simulator.corner().path().start(), question);
    }

    /** Last brake point, in decimetres: the foot comes down before the brake is off. */
    private static int last(Braking braking) {
        return BrakePointWalk.decimetre(braking.release().end());
    }
}
