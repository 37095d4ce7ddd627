package org.foreload.strategy;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.conventions.Checks;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.ideal.IdealProfile;
import org.foreload.path.Path;

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

    /** Farthest that an answer may be before its guess, m: so far from it, nobody would call the release one. */
    private static final double FARTHEST = 120;

    /** Farthest, m, that a plan moves to an earlier brake point to have enough in hand. */
    private static final double FARTHEST_WITH_SLIP = 20;

    /** Time, s, that braking earlier than estimated may cost: a release that needs more is no good one. */
    static final double WORTH_LOOKING = 0.3;

    /** Nobody gives more time, s, in one corner for more in hand. */
    static final double WORTH_A_CHOICE = 0.5;

    private final EntrySimulator simulator;
    private final Allowance allowance;
    private final BrakePointEstimate estimate;
    private final boolean stoppable;

    /** Searches with this simulator for this margin; the bound says where to start. */
    public BrakePointSearch(IdealProfile bound, EntrySimulator simulator, Allowance allowance) {
        this(bound, simulator, allowance, false);
    }

    /**
     * @param stoppable whether an interrupt of the thread that searches ends a search by a
     *     {@link CancellationException}; where the search is a part of an answer that keeps what was found, it does not
     */
    BrakePointSearch(IdealProfile bound, EntrySimulator simulator, Allowance allowance, boolean stoppable) {
        Objects.requireNonNull(bound, "bound");
        this.simulator = Objects.requireNonNull(simulator, "simulator");
        this.allowance = Objects.requireNonNull(allowance, "allowance");
        this.stoppable = stoppable;
        this.estimate = new BrakePointEstimate(
                bound, simulator.car(), simulator.corner().path());
    }

    /**
     * Brake point, m, of a car of constant brake force that comes out of the release a little slower than the bound.
     */
    public double estimate(Braking braking) {
        Objects.requireNonNull(braking, "braking");
        return estimate.of(braking);
    }

    /** One plan held against the margin, whatever it has in hand; computed coarsely. */
    public Trial trial(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return allowance.trial(simulator.probe(plan));
    }

    /** The same with the foot a metre early: who is a little early must keep the margin, too. */
    public Trial early(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return trial(plan.withBrakePoint(plan.brakePoint() - BrakePointWalk.SOLID));
    }

    /** The latest brake point that keeps the margin, found from the {@link #estimate}. */
    public Trial latest(Braking braking) {
        return latest(braking, estimate(braking));
    }

    /**
     * The latest brake point that keeps the margin and has in hand what is asked for.
     *
     * @param braking how the driver brakes
     * @param guess brake point, m; the nearer it is, the fewer trials
     * @return the entry from there, computed coarsely; if there is none, the one that came closest
     * @throws org.foreload.conventions.InvalidValueException if the guess is not a finite number
     */
    public Trial latest(Braking braking, double guess) {
        Objects.requireNonNull(braking, "braking");
        Checks.finite("guess", guess);
        return latest(walk(braking, last(braking), FARTHEST, this::trial), braking, guess);
    }

    /**
     * How far before its estimate a brake point is worth looking for, m: to where braking earlier alone costs
     * {@value #WORTH_LOOKING} s, since a release that needs more is no good one.
     */
    private double worthwhile() {
        return Math.min(FARTHEST, WORTH_LOOKING / estimate.earlierCosts());
    }

    private Trial latest(BrakePointWalk nominal, Braking braking, double guess) {
        int from = BrakePointWalk.decimetre(guess);
        return hopeless(nominal, from).orElseGet(() -> withInHand(nominal, braking, nominal.latest(from)));
    }

    /**
     * The last of all brake points that keep the margin and have in hand what is asked for: for a plan that is handed
     * over, and what takes some hundreds of trials. Keeping the margin may come and go with the brake point: beyond the
     * answer of {@link #latest(Braking)} every decimetre is tried, {@value #FAR_ON} m on; where that finds none, every
     * one from {@value #FAR_BACK} m before the {@link #estimate} to {@value #FAR_BEYOND} m beyond it.
     *
     * @param braking how the driver brakes
     * @return the entry from there, computed coarsely; if there is none, the one that came closest
     */
    public Trial lastOfAll(Braking braking) {
        Objects.requireNonNull(braking, "braking");
        BrakePointWalk walk = walk(braking, last(braking), FARTHEST, this::trial);
        Trial latest = latest(walk, braking, estimate(braking));
        double from = latest.met() ? latest.point() : estimate(braking) - FAR_BACK;
        double to = latest.met() ? latest.point() + FAR_ON : estimate(braking) + FAR_BEYOND;
        int end = Math.max(walk.earliest(), BrakePointWalk.decimetre(from));
        for (int point = Math.min(last(braking), BrakePointWalk.decimetre(to)); point > end; point--) {
            if (keepsAll(walk, point)) {
                return walk.at(point);
            }
        }
        return latest;
    }

    /**
     * The quickest of all brake points up to the last that keeps the margin: with drift on the way out, or where weak
     * brakes leave the car to crawl, an earlier one may be quicker. It is looked for {@value #FAR_ON} m back, and on to
     * where braking earlier alone costs {@value #WORTH_LOOKING} s: in half metres, and in decimetres around those that
     * are less than {@value #NEARLY} s slower than the quickest, whether they keep the margin or not.
     *
     * @param last the {@link #lastOfAll}, which keeps the margin
     * @return {@code last} itself where none is quicker
     */
    public Trial quickestOfAll(Trial last) {
        Objects.requireNonNull(last, "last");
        Braking braking = last.entry().plan().braking();
        BrakePointWalk walk = walk(braking, last(braking), FARTHEST, this::trial);
        int latest = BrakePointWalk.decimetre(last.point());
        double back = Math.max(FAR_ON, worthwhile());
        int first = Math.max(walk.earliest(), latest - (int) (10 * back));
        int step = (int) (10 * HALF);
        Trial best = last;
        for (int point = latest - step; point >= first; point -= step) {
            best = quicker(walk, point, best);
        }
        double nearly = best.entry().time() + NEARLY;
        for (int middle = latest; middle >= first; middle -= step) {
            if (walk.at(middle).made() && walk.at(middle).entry().time() < nearly) {
                int end = Math.max(first, middle - step);
                for (int point = Math.min(latest, middle + step) - 1; point > end; point--) {
                    best = quicker(walk, point, best);
                }
            }
        }
        return best;
    }

    private Trial quicker(BrakePointWalk walk, int point, Trial than) {
        boolean quicker = walk.at(point).entry().time() < than.entry().time();
        return quicker && keepsAll(walk, point) ? walk.at(point) : than;
    }

    /** Time, s, that half a metre of brake point may win. */
    private static final double NEARLY = 0.02;

    private boolean keepsAll(BrakePointWalk walk, int point) {
        return walk.isSolid(point)
                && InHand.forgives(simulator, walk.at(point).entry().plan(), allowance.inHand());
    }

    /**
     * Brake points before that of a plan at which the margin is missed, between two that keep it: where keeping it
     * comes and goes.
     *
     * @param from the first of them, m
     * @param to the last, m
     */
    public record Missed(double from, double to) {}

    /**
     * The nearest stretch, within {@value #FAR_ON} m before the brake point of a plan that keeps the margin, that
     * misses it, whatever it has in hand; looked for in half metres.
     */
    public Optional<Missed> missedBefore(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        double first = simulator.corner().path().start();
        double from = Double.NaN;
        double to = Double.NaN;
        for (double back = HALF; back <= FAR_ON && plan.brakePoint() - back > first; back += HALF) {
            double point = plan.brakePoint() - back;
            boolean met = trial(plan.withBrakePoint(point)).met();
            if (met && !Double.isNaN(to)) {
                return Optional.of(new Missed(from, to));
            }
            if (!met) {
                from = point;
                to = Double.isNaN(to) ? point : to;
            }
        }
        return Optional.empty();
    }

    /** Step, m, in which missed stretches are looked for: no driver aims finer. */
    private static final double HALF = 0.5;

    /** How far beyond its answer the last of all is looked for, m. */
    private static final double FAR_ON = 12;

    /** How far before the estimate one is looked for where the search finds none, m: cars that crawl round. */
    private static final double FAR_BACK = 80;

    /** How far beyond the estimate one is looked for then, m. */
    private static final double FAR_BEYOND = 40;

    /**
     * The quickest brake point that keeps the margin and has in hand what is asked for: the latest, but where the last
     * decimetres of drift cost more time on the way out than the later brake gains on the way in. It is looked for up
     * to where braking earlier than the {@link #estimate} alone costs {@value #WORTH_LOOKING} s.
     */
    public Trial quickest(Braking braking) {
        Objects.requireNonNull(braking, "braking");
        BrakePointWalk nominal = walk(braking, last(braking), worthwhile(), this::trial);
        int from = BrakePointWalk.decimetre(estimate(braking));
        return hopeless(nominal, from).orElseGet(() -> {
            Trial quickest = withInHand(nominal, braking, nominal.quickest(from));
            // Where a later one forgives more, as on a car with downforce, which locks its wheels as it slows.
            return quickest.met() || !(nominal.latestMet() > quickest.point())
                    ? quickest
                    : withInHand(nominal, braking, nominal.latest(from));
        });
    }

    /**
     * The trial from the guess, if a foot that is harder by what must be in hand stops a wheel on the straight: from
     * everywhere it does.
     */
    private Optional<Trial> hopeless(BrakePointWalk nominal, int guess) {
        Trial first = nominal.first(guess);
        double asked = InHand.HARDER_PER_METRE * allowance.inHand();
        BrakePlan plan = first.entry().plan();
        if (!(first.entry().lockReserve() < asked) || plan.peakDeceleration() * (1 + asked) < cannotLock()) {
            return Optional.empty();
        }
        Trial hard = Slip.HARD_PEAK.trial(simulator, plan, allowance.inHand());
        return hard.lockedStraight() ? Optional.of(first.failed()) : Optional.empty();
    }

    /** Deceleration, m/s², below which no wheel stops on the straight, whatever the speed. */
    private double cannotLock() {
        Path path = simulator.corner().path();
        double fast =
                CornerStudy.lockLimit(simulator.car(), path, simulator.corner().approachSpeed());
        double slow = CornerStudy.lockLimit(simulator.car(), path, estimate.slowest());
        return WHILE_LOAD_MOVES * Math.min(fast, slow);
    }

    /** Share of its limit, with the load settled, that a car can brake with while the load still moves. */
    private static final double WHILE_LOAD_MOVES = 0.95;

    /** Earlier, where need be, until what must be in hand is: until no slip asks for an earlier point than the last. */
    private Trial withInHand(BrakePointWalk nominal, Braking braking, Trial nominally) {
        Trial found = nominally;
        Slip[] slips = Slip.values();
        int kept = found.met() && allowance.inHand() > 0 ? 0 : slips.length;
        for (int i = 0; kept < slips.length; i = (i + 1) % slips.length) {
            Slip slip = slips[i];
            kept++;
            if (slip == Slip.LATE_BRAKE && nominal.latestMade() >= found.point() + allowance.inHand()) {
                continue; // Driven already.
            }
            int point = BrakePointWalk.decimetre(found.point());
            Trial keeps = walk(
                            braking, point, FARTHEST_WITH_SLIP, plan -> slip.trial(simulator, plan, allowance.inHand()))
                    .latest(point);
            if (!keeps.met()) {
                return found.failed();
            }
            int earlier = BrakePointWalk.decimetre(keeps.point());
            if (earlier < point) {
                found = nominal.at(earlier);
                kept = 1;
                if (!found.met()) {
                    return found;
                }
            }
        }
        return found;
    }

    /**
     * The answer of the search, and the entry from a metre earlier, driven with full accuracy. Where the corner is made
     * by so little that the coarser trial made what this does not, a little earlier is tried.
     *
     * @return not found if the search has no answer or none that keeps its margin at full accuracy
     */
    public Finding confirmed(Trial latest) {
        Objects.requireNonNull(latest, "latest");
        Braking braking = latest.entry().plan().braking();
        EntryResult entry = simulator.run(latest.entry().plan());
        if (!latest.met()) {
            return new Finding(entry, false, Double.NaN);
        }
        int point = BrakePointWalk.decimetre(latest.point());
        boolean met = isSolid(entry);
        for (int back = 1; !met && back <= MOST_BACK; back *= 2) {
            point -= back;
            entry = simulator.run(braking.from(point / 10.0));
            met = isSolid(entry);
        }
        if (!met) {
            return new Finding(entry, false, Double.NaN);
        }
        double inHand = inHand(entry.plan());
        return inHand >= allowance.inHand() ? new Finding(entry, true, inHand) : new Finding(entry, false, Double.NaN);
    }

    private boolean isSolid(EntryResult entry) {
        if (!allowance.met(entry)) {
            return false;
        }
        BrakePlan plan = entry.plan();
        double earlier = Math.max(
                simulator.corner().path().start() + SHORTEST_APPROACH, plan.brakePoint() - BrakePointWalk.SOLID);
        return allowance.met(simulator.run(plan.withBrakePoint(earlier)));
    }

    /** Distance of the earliest brake point that is tried from the start of the line, m. */
    private static final double SHORTEST_APPROACH = 0.1;

    /** Longest single step back, in decimetres, to confirm an answer. */
    private static final int MOST_BACK = 16;

    /**
     * Least distance, m, to the edge of the track that the car keeps with what must be in hand given away: late on the
     * brake, late off it, or too hard; negative infinity if it then does not make the corner, infinite if nothing must
     * be in hand.
     */
    public double leftWithNothingInHand(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
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

    /**
     * The plan with each error that it must forgive, held against making the corner and no more; none where nothing
     * must be in hand.
     */
    public List<Trial> slips(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return allowance.inHand() > 0
                ? Arrays.stream(Slip.values())
                        .map(slip -> slip.trial(simulator, plan, allowance.inHand()))
                        .toList()
                : List.of();
    }

    /** Metres in hand of a plan: see {@link InHand}. */
    public double inHand(BrakePlan plan) {
        Objects.requireNonNull(plan, "plan");
        return InHand.of(simulator, plan);
    }

    private BrakePointWalk walk(Braking braking, int last, double farthest, Function<BrakePlan, Trial> asked) {
        Function<BrakePlan, Trial> question = stoppable ? asked.compose(BrakePointWalk::uninterrupted) : asked;
        int earliest = BrakePointWalk.decimetre(simulator.corner().path().start()) + 1;
        return new BrakePointWalk(braking, earliest, last, farthest, estimate.earlierCosts(), question);
    }

    /** Last brake point, in decimetres: the foot comes down before the brake is off. */
    private static int last(Braking braking) {
        return BrakePointWalk.decimetre(braking.release().end());
    }
}
