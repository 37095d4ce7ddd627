package org.foreload.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;

/** One thing that a driver can do otherwise; all else stays as it was. */
public enum Change {
    /** Where the foot comes down, m; positive is later. */
    BRAKE_POINT(Measure.BRAKE_ON, "m", 2, 4, -2, -4) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            return Optional.of(plan.withBrakePoint(plan.brakePoint() + amount))
                    .filter(other -> other.brakePoint() < other.release().start());
        }
    },
    /** Where all of the braking lies, brake point, release point and brake off alike, m; positive is later. */
    BRAKING(Measure.BRAKE_ON, "m", 4, 8, -4, -8) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            Release old = plan.release();
            Release moved = new Release(old.shape(), old.start() + amount, old.end() + amount);
            return Optional.of(plan.withBrakePoint(plan.brakePoint() + amount).with(moved));
        }
    },
    /**
     * Where the foot comes down, m, positive is later; and so much harder with it that the car is as fast as before
     * where the brake is off.
     */
    LATER_AND_HARDER(Measure.BRAKE_ON, "m", 4, 8, 12) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            return BRAKE_POINT.made(plan, amount);
        }
    },
    /** How hard, m/s²; positive is harder. */
    PEAK(Measure.PEAK_DECELERATION, "m/s²", 0.3, 0.6, -0.3, -0.6) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            return Optional.of(plan.withPeakDeceleration(Math.max(1, plan.peakDeceleration() + amount)));
        }
    },
    /** Where the release begins, m; positive is later. */
    RELEASE_POINT(Measure.FIRST_EASE, "m", -4, -8, 4, 8) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            Release old = plan.release();
            double start = old.start() + amount;
            return start < old.end() && start > plan.brakePoint()
                    ? Optional.of(plan.with(new Release(old.shape(), start, old.end())))
                    : Optional.empty();
        }
    },
    /** Where the brake is off, m; positive is later. */
    BRAKE_OFF(Measure.RELEASE_END, "m", -4, -8, 4, 8) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            Release old = plan.release();
            double end = old.end() + amount;
            return end > old.start() + 1
                    ? Optional.of(plan.with(new Release(old.shape(), old.start(), end)))
                    : Optional.empty();
        }
    },
    /** In which shape the brake comes off; the amount counts the ready shapes from zero. */
    SHAPE(null, "", shapes()) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            Release old = plan.release();
            ReleaseShape shape = ReleaseShapes.all().get((int) amount);
            boolean other =
                    !shape.equals(old.shape()) && !shape.equals(ReleaseShapes.ABRUPT) && old.end() > old.start();
            return other ? Optional.of(plan.with(new Release(shape, old.start(), old.end()))) : Optional.empty();
        }
    },
    /** Where the throttle is picked up, m; positive is later. */
    PICK_UP(Measure.PICK_UP, "m", -4, -8, 4, 8) {
        @Override
        Optional<BrakePlan> made(BrakePlan plan, double amount) {
            double from = plan.drivenFrom() + amount;
            double end = plan.release().end();
            if (from > end) {
                return Optional.of(plan.withPickUp(from));
            }
            // No earlier than brake off: a driver who coasted may leave that out, another has nothing to leave out.
            boolean coasted = plan.drivenFrom() > end;
            return coasted && from > end - 4
                    ? Optional.of(Braking.of(plan.peakDeceleration(), plan.buildUpTime(), plan.release())
                            .from(plan.brakePoint()))
                    : Optional.empty();
        }
    };

    /** What is changed, as recordings measure it; null for the shape. */
    private final Measure measure;

    private final String unit;
    private final double[] amounts;

    Change(Measure measure, String unit, double... amounts) {
        this.measure = measure;
        this.unit = unit;
        this.amounts = amounts;
    }

    private static double[] shapes() {
        double[] counted = new double[ReleaseShapes.all().size()];
        for (int i = 0; i < counted.length; i++) {
            counted[i] = i;
        }
        return counted;
    }

    /** Unit of the amount; empty for a plain number. */
    public String unit() {
        return unit;
    }

    /** What was done in a corner, in the unit of the change, places from turn-in; NaN if unknown. Not of the shape. */
    double measured(RecordedCorner did) {
        return (this == PEAK ? did.get(measure) : did.fromTurnIn(measure)).value();
    }

    /** Amounts that are tried: steps that a driver can aim for, and no leaps. */
    List<Double> amounts() {
        List<Double> list = new ArrayList<>();
        for (double amount : amounts) {
            list.add(amount);
        }
        return list;
    }

    /** The least amount either way; of the shapes all. */
    List<Double> smallest() {
        double least = amounts().stream().mapToDouble(Math::abs).min().orElseThrow();
        return amounts().stream()
                .filter(amount -> this == SHAPE || Math.abs(amount) == least)
                .toList();
    }

    /** A plan with this change and nothing else; empty where there is no such plan. */
    abstract Optional<BrakePlan> made(BrakePlan plan, double amount);
}
