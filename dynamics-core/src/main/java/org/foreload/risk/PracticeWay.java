package org.foreload.risk;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.entry.EntryResult;
import org.foreload.strategy.InHand;
import org.foreload.study.Sweep;

/**
 * The way from one plan to another by steps that change one thing each, where that can be. What the plans differ in is
 * cut into parts; every combination of parts is a plan, and a step goes from one plan to any that lies farther along in
 * one aspect, or in several. Of all ways whose plans keep the margin and the accepted risk, the one is taken along
 * which no step brakes later than the plan before forgives, or is beyond that by least; of those the one along which
 * every step gains, or is short of a gain by least; of those the one with the fewest steps that ask for too much at
 * once; of those the one with the most even steps; of those the one that gains soonest.
 */
final class PracticeWay {

    /** Most plans that are looked at. */
    private static final int MOST_PLANS = 1000;

    /** Time that may be lost and still count as no slower, s: half of what is printed. */
    private static final double AS_QUICK = 0.005;

    /** Least that a step gains, s: what is printed. A step that gains nothing is no step. */
    private static final double LEAST_GAIN = 0.01;

    /** Least that a step gains which asks for two things at once, s: less is not worth the trouble. */
    private static final double WORTH_TWO = 0.02;

    /** Deviations of the brake point that a step leaves room for: of a normal law one try in 44 is later. */
    private static final double OVERDONE = 2;

    /** Sums of shares and times that differ by less are the same. */
    private static final double ROUNDING = 1e-9;

    private final RiskStudy risks;
    private final BrakePlan now;
    private final BrakePlan target;
    private final int most;
    private final double accepted;
    private final Sweep sweep;
    private final int[] parts;
    private final int[] strides;
    private final double inHand;
    private final double[][] shares;
    private final Map<Integer, Driven> driven = new HashMap<>();
    private final Map<Integer, TooLate> late = new HashMap<>();
    private final EntryResult[] entries;
    private final double[] times;
    private final boolean[] open;

    /** How much later, m, the step after each plan may brake; no limit until that plan's late brake was looked at. */
    private final double[] room;

    /** How a plan turns out for the driver, and whether it may be a step. */
    private record Driven(Risk risk, boolean kept) {}

    /**
     * One step of the way.
     *
     * @param tooLate what becomes of its brake point when that is missed, with the foot with which failures are counted
     * @param beyond how much later it brakes than the plan before leaves room for, m; 0 where it keeps within
     * @param alone what each thing that changes would have done by itself; empty where only one does
     */
    record Leg(Risk risk, TooLate tooLate, double beyond, List<Aspect> changed, List<PracticeSteps.Alone> alone) {}

    private PracticeWay(
            RiskStudy risks, BrakePlan now, BrakePlan target, int most, double accepted, Sweep sweep, double inHand) {
        this.risks = risks;
        this.now = now;
        this.target = target;
        this.most = most;
        this.accepted = accepted;
        this.sweep = sweep;
        this.inHand = inHand;
        this.parts = parts(now, target, risks.scatter(), most);
        this.strides = new int[parts.length];
        int plans = 1;
        for (int i = 0; i < parts.length; i++) {
            strides[i] = plans;
            plans *= parts[i] + 1;
        }
        this.entries = new EntryResult[plans];
        this.times = new double[plans];
        this.open = new boolean[plans];
        this.room = new double[plans];
        Arrays.fill(room, Double.POSITIVE_INFINITY);
        this.shares = new double[plans][parts.length];
        for (int plan = 0; plan < plans; plan++) {
            for (int i = 0; i < parts.length; i++) {
                shares[plan][i] = shareOf(plan, i);
            }
        }
    }

    /**
     * Finds the way.
     *
     * @param first how the plan of now turns out
     * @param firstLate what becomes of it when its brake point is missed
     * @param target a plan within the accepted risk
     * @param most steps, 1 or more
     * @return steps in their order; empty after a stop
     */
    static Optional<List<Leg>> find(
            RiskStudy risks, Risk first, TooLate firstLate, BrakePlan target, int most, double accepted, Sweep sweep) {
        BrakePlan now = first.plan();
        var simulator = risks.study().simulator();
        double asked = risks.study().allowance().inHand();
        double inHand =
                asked > 0 ? Math.min(asked, Math.min(InHand.of(simulator, now), InHand.of(simulator, target))) : 0;
        PracticeWay way = new PracticeWay(risks, now, target, most, accepted, sweep, inHand);
        way.driven.put(0, new Driven(first, true));
        way.late(0, firstLate);
        return way.probe() ? way.legs() : Optional.empty();
    }

    /**
     * Into how many parts each aspect is cut; none so small that it drowns in what the driver strays by. Where all of
     * the way does, it is one step.
     */
    private static int[] parts(BrakePlan now, BrakePlan target, Scatter scatter, int most) {
        double[] apart = apart(now, target, scatter);
        if (Arrays.stream(apart).allMatch(one -> one < 1)) {
            double[] exactly = apart(now, target, Scatter.NONE);
            return Arrays.stream(exactly).mapToInt(one -> one < 1 ? 0 : 1).toArray();
        }
        long differing = Arrays.stream(apart).filter(one -> one >= 1).count();
        int finest = (int) Math.floor(Math.pow(MOST_PLANS, 1.0 / differing) + ROUNDING) - 1;
        finest -= finest > most ? finest % most : 0; // A multiple of the steps, so that they can be even.
        int limit = finest;
        return Arrays.stream(apart).mapToInt(one -> (int) Math.min(one, limit)).toArray();
    }

    /** How far two plans differ in each aspect, in the least steps of a driver who strays so. */
    private static double[] apart(BrakePlan now, BrakePlan target, Scatter scatter) {
        return Arrays.stream(Aspect.values())
                .mapToDouble(one -> one.apart(now, target) / one.least(scatter, target.peakDeceleration()) + ROUNDING)
                .toArray();
    }

    private double share(int plan, int aspect) {
        return shares[plan][aspect];
    }

    private double shareOf(int plan, int aspect) {
        if (parts[aspect] == 0) {
            return plan == 0 ? 0 : 1; // Less than a driver would notice: it goes along with the first step.
        }
        return (double) (plan / strides[aspect] % (parts[aspect] + 1)) / parts[aspect];
    }

    private BrakePlan plan(int plan) {
        return PracticeSteps.between(now, target, share(plan, 0), share(plan, 1), share(plan, 2));
    }

    private int last() {
        return times.length - 1;
    }

    /** Drives each plan once without scatter; false after a stop. */
    private boolean probe() {
        List<Integer> all = IntStream.range(0, times.length).boxed().toList();
        List<Optional<EntryResult>> probed =
                sweep.run(all, one -> risks.study().simulator().probe(plan(one)));
        for (int i = 0; i < times.length; i++) {
            if (probed.get(i).isEmpty()) {
                return false;
            }
            EntryResult entry = probed.get(i).get();
            entries[i] = entry;
            BrakePlan plan = entry.plan();
            times[i] = entry.time();
            open[i] = i == 0
                    || i == last()
                    || plan.brakePoint() < plan.release().start()
                            && risks.study().allowance().met(entry);
        }
        return true;
    }

    /** Drives the plans of the best way with scatter until all of them may be steps. */
    private Optional<List<Leg>> legs() {
        List<Integer> way = best();
        while (!late.keySet().containsAll(way)) {
            for (int plan : way) {
                Optional<Driven> one = driven(plan);
                if (one.isEmpty()) {
                    return Optional.empty();
                }
                if (one.get().kept() && !late.containsKey(plan)) {
                    late(plan, TooLate.of(risks, plan(plan)));
                }
            }
            way = best();
        }
        List<Leg> legs = new ArrayList<>();
        for (int i = 1; i < way.size(); i++) {
            Optional<Leg> leg = leg(way.get(i - 1), way.get(i));
            if (leg.isEmpty()) {
                return Optional.empty();
            }
            legs.add(leg.get());
        }
        return Optional.of(legs);
    }

    private Optional<Driven> driven(int plan) {
        if (!driven.containsKey(plan)) {
            Optional<Risk> found = risks.of(plan(plan), sweep);
            if (found.isEmpty()) {
                return Optional.empty();
            }
            Risk risk = found.get();
            boolean kept = plan == last()
                    || risk.failed().value() <= accepted
                            && InHand.forgives(risks.study().simulator(), risk.plan(), inHand);
            driven.put(plan, new Driven(risk, kept));
            open[plan] &= kept;
        }
        return Optional.of(driven.get(plan));
    }

    /**
     * Notes what a plan forgives. Whoever brakes at the next step's place while all else is still as before, and
     * overdoes that, must make the corner. Where nobody brakes there is no such place.
     */
    private void late(int plan, TooLate one) {
        late.put(plan, one);
        BrakePlan from = plan(plan);
        if (from.brakePoint() >= from.release().end()) {
            return;
        }
        Scatter scatter = risks.scatter();
        room[plan] = Math.max(
                Aspect.BRAKE_POINT.least(scatter, target.peakDeceleration()),
                one.forgiven() - OVERDONE * scatter.brakePoint());
    }

    private Optional<Leg> leg(int from, int to) {
        List<Aspect> changed = new ArrayList<>();
        for (Aspect aspect : Aspect.values()) {
            if (parts[aspect.ordinal()] > 0 && share(to, aspect.ordinal()) > share(from, aspect.ordinal())) {
                changed.add(aspect);
            }
        }
        List<PracticeSteps.Alone> alone = new ArrayList<>();
        for (Aspect aspect : changed.size() > 1 ? changed : List.<Aspect>of()) {
            int one = alone(from, to, aspect.ordinal());
            if (open[one] && driven(one).isEmpty()) {
                return Optional.empty();
            }
            alone.add(new PracticeSteps.Alone(aspect, entries[one], open[one], times[from] - times[one]));
        }
        return Optional.of(new Leg(driven.get(to).risk(), late.get(to), tooFar(from, to), changed, alone));
    }

    /** Cheapest way to each plan by each number of steps; costs are compared one after the other. */
    private List<Integer> best() {
        double[][][] costs = new double[most + 1][times.length][];
        int[][] before = new int[most + 1][times.length];
        costs[0][0] = new double[5];
        int steps = 0;
        for (int k = 1; k <= most; k++) {
            for (int to = 1; to < times.length; to++) {
                for (int from = 0; open[to] && from < to; from++) {
                    if (costs[k - 1][from] == null || !beyond(from, to)) {
                        continue;
                    }
                    double[] cost = cost(costs[k - 1][from], from, to);
                    if (costs[k][to] == null || cheaper(cost, costs[k][to])) {
                        costs[k][to] = cost;
                        before[k][to] = from;
                    }
                }
            }
            double[] there = costs[k][last()];
            if (there != null && (steps == 0 || cheaper(there, costs[steps][last()]))) {
                steps = k;
            }
        }
        List<Integer> way = new ArrayList<>();
        for (int plan = last(); steps >= 0; plan = before[steps][plan], steps--) {
            way.add(0, plan);
        }
        return way;
    }

    private boolean beyond(int from, int to) {
        for (int i = 0; i < parts.length; i++) {
            if (parts[i] > 0 && share(to, i) < share(from, i)) {
                return false;
            }
        }
        return true;
    }

    private double[] cost(double[] until, int from, int to) {
        double sum = 0;
        double largest = 0;
        int changed = 0;
        for (int i = 0; i < parts.length; i++) {
            double moved = parts[i] > 0 ? share(to, i) - share(from, i) : 0;
            sum += moved;
            largest = Math.max(largest, moved);
            changed += moved > 0 ? 1 : 0;
        }
        double load = sum + (sum - largest);
        boolean together = changed > 1;
        boolean tooMuch = changed > 2 || together && needless(from, to);
        return new double[] {
            until[0] + tooFar(from, to),
            until[1] + lost(from, to, together),
            until[2] + (tooMuch ? 1 : 0),
            until[3] + load * load,
            until[4] + times[to]
        };
    }

    /** How much later a step brakes than the plan before leaves room for, m. */
    private double tooFar(int from, int to) {
        int point = Aspect.BRAKE_POINT.ordinal();
        double later = parts[point] == 0
                ? 0
                : (share(to, point) - share(from, point)) * (target.brakePoint() - now.brakePoint());
        return Math.max(0, later - room[from]);
    }

    /** Whether one of several changes could be a step by itself. */
    private boolean needless(int from, int to) {
        for (int i = 0; i < parts.length; i++) {
            int one = alone(from, to, i);
            if (one != from && open[one] && times[one] - times[from] <= AS_QUICK) {
                return true;
            }
        }
        return false;
    }

    /** The plan of a step of which only one aspect is carried out. */
    private int alone(int from, int to, int aspect) {
        int stride = strides[aspect];
        int size = parts[aspect] + 1;
        return from + (to / stride % size - from / stride % size) * stride;
    }

    /**
     * Time lost, s, and what the step is short of the least that it must gain; with scatter, where both plans were
     * driven so.
     */
    private double lost(int from, int to, boolean together) {
        boolean both = driven.containsKey(from) && driven.containsKey(to);
        double slower = both
                ? driven.get(to).risk().meanTime() - driven.get(from).risk().meanTime()
                : times[to] - times[from];
        double gained = together ? WORTH_TWO : LEAST_GAIN;
        return Math.max(0, slower + gained);
    }

    private static boolean cheaper(double[] a, double[] b) {
        for (int i = 0; i < a.length; i++) {
            if (Math.abs(a[i] - b[i]) > ROUNDING) {
                return a[i] < b[i];
            }
        }
        return false;
    }
}
