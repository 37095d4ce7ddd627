package org.foreload.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.InvalidValueException;
import org.foreload.envelope.FrictionEnvelope;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.risk.Scatter;
import org.foreload.study.Proportion;
import org.foreload.vehicle.Car;

/**
 * Looks for what a driver could do otherwise in a recorded corner. The corner is driven again in the simulator, on the
 * line that was recorded, with a car that has the limits that were recorded; if that comes close enough to the
 * recording, each {@link Change} is tried by some amounts, alone, and those that gain most without failing too often
 * are given.
 */
public final class Adviser {

    private final Run run;
    private final List<RecordedCorner> corners;
    private final FrictionEnvelope limits;
    private final Optional<Car> car;
    private final AdviceSettings settings;

    /**
     * An adviser for one lap.
     *
     * @param run the lap
     * @param corners its corners
     * @param limits what its car has shown
     * @param car the car, where it is known; else one is fitted
     * @param settings when advice is given
     */
    public Adviser(
            Run run,
            List<RecordedCorner> corners,
            FrictionEnvelope limits,
            Optional<Car> car,
            AdviceSettings settings) {
        this.run = run;
        this.corners = List.copyOf(corners);
        this.limits = limits;
        this.car = car;
        this.settings = settings;
    }

    /**
     * Advice for a corner.
     *
     * @param index of the corner in the list
     * @param scatter of the driver there
     */
    public CornerAdvice of(int index, Scatter scatter) {
        RecordedCorner did = corners.get(index);
        double from = index == 0 ? run.first() : corners.get(index - 1).bend().end();
        double to = index + 1 == corners.size() ? run.last() : begins(corners.get(index + 1));
        if (!did.braked()) {
            return none(did, scatter, Optional.empty(), "the brake was not used");
        }
        if (!DrivenLine.possible(run, did, from, to)) {
            return none(did, scatter, Optional.empty(), "there is no room before the brake point or behind the bend");
        }
        DrivenLine line = DrivenLine.of(run, did, from, to);
        Car begun = car.orElseGet(() -> FittedCar.of(limits, run, line.first(), line.last()));
        ReplicaFit.Fitted fitted;
        try {
            fitted = ReplicaFit.of(run, did, begun, line);
        } catch (InvalidValueException e) {
            return none(did, scatter, Optional.empty(), "the fitted car cannot be slowed for this corner");
        }
        Likeness likeness = fitted.likeness();
        Optional<String> unlike = unlike(likeness);
        if (unlike.isPresent()) {
            return none(did, scatter, Optional.of(likeness), unlike.get());
        }
        return new CornerAdvice(
                did.bend().number(), scatter, Optional.of(likeness), items(did, fitted, scatter), Optional.empty());
    }

    private static double begins(RecordedCorner corner) {
        double turnIn = corner.get(Measure.TURN_IN).value();
        return corner.braked() ? Math.min(turnIn, corner.get(Measure.BRAKE_ON).value()) : turnIn;
    }

    private static CornerAdvice none(RecordedCorner did, Scatter scatter, Optional<Likeness> likeness, String why) {
        return new CornerAdvice(did.bend().number(), scatter, likeness, List.of(), Optional.of(why));
    }

    private Optional<String> unlike(Likeness likeness) {
        if (!likeness.made()) {
            return Optional.of("the fitted car does not make the corner as it was driven: " + likeness.cause());
        }
        boolean like = likeness.speedError() <= settings.speedError()
                && Math.abs(likeness.timeError()) <= settings.timeError();
        return like
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "the simulated run is not like the recorded one: %.2f m/s and %.2f s off, %.2f m/s and %.2f s allowed",
                        likeness.speedError(),
                        likeness.timeError(),
                        settings.speedError(),
                        settings.timeError()));
    }

    private record Tried(Change change, double amount, BrakePlan plan, double gain) {}

    private List<Advice> items(RecordedCorner did, ReplicaFit.Fitted fitted, Scatter scatter) {
        BrakePlan plan = fitted.likeness().plan();
        Replica replica = fitted.replica();
        Replica.Drive base = replica.quickly(plan);
        List<List<Tried>> changes = new ArrayList<>();
        for (Change change : Change.values()) {
            List<Tried> gains = new ArrayList<>();
            for (double amount : change.amounts()) {
                change.made(plan, amount)
                        .map(other -> tried(replica, base, change, amount, other))
                        .filter(one -> one.gain() >= settings.leastGain())
                        .ifPresent(gains::add);
            }
            gains.sort(Comparator.comparingDouble(one -> -one.gain()));
            if (!gains.isEmpty()) {
                changes.add(gains);
            }
        }
        changes.sort(Comparator.comparingDouble(gains -> -gains.get(0).gain()));
        double allowed = settings.failing();
        List<Advice> items = new ArrayList<>();
        GainBand band = new GainBand(did, fitted, limits);
        for (int i = 0; i < changes.size() && items.size() < settings.most(); i++) {
            safe(replica, changes.get(i), scatter, allowed, band).ifPresent(items::add);
        }
        items.sort(Comparator.comparingDouble(one -> -one.gain().value()));
        return items;
    }

    /** Farthest off the line, m, that a change may carry the car beyond where it was. */
    private static final double MORE_DRIFT = 0.3;

    /**
     * How much more of the limits may be used where braking and cornering take alike than the driver has shown: no
     * recording says where a wheel stops before it does.
     */
    private static final double MIXED_MORE = 1.02;

    /**
     * Use there that is within what cars can do however their brakes are shared, shown or not: a little more than the
     * straight line from one limit to the other, which is at 0.71 half-way.
     */
    private static final double MIXED_SAFE = 0.8;

    private Tried tried(Replica replica, Replica.Drive base, Change change, double amount, BrakePlan other) {
        Replica.Drive drive = replica.quickly(other);
        boolean kept = drive.made() && drive.drift() <= base.drift() + MORE_DRIFT;
        return new Tried(change, amount, other, kept ? base.time() - drive.time() : Double.NEGATIVE_INFINITY);
    }

    /** The amount that gains most among those that seldom fail. */
    private Optional<Advice> safe(Replica replica, List<Tried> gains, Scatter scatter, double allowed, GainBand band) {
        for (Tried one : gains) {
            if (replica.mixedUse(one.plan(), limits) > MIXED_MORE * Math.max(MIXED_SAFE, limits.mixedUse())) {
                continue;
            }
            Proportion failed = replica.failures(one.plan(), scatter, settings.samples(), settings.seed());
            if (failed.value() <= allowed) {
                Estimate gain = band.of(one.change(), one.amount(), one.gain());
                return Optional.of(new Advice(one.change(), one.amount(), one.plan(), gain, failed))
                        .filter(item -> item.gain().low() > 0);
            }
        }
        return Optional.empty();
    }
}
