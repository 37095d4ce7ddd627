package org.foreload.stability;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.grip.Axle;
import org.foreload.handling.LateralModel;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/**
 * Stability along one simulated entry: at each row of its profile the lateral motion is linearised about the state that
 * the car really had, with its loads, brake forces, slips and stopped wheels.
 *
 * @param rows one per row of the profile
 * @param least the moment of least stability between the brake point and the apex or the minimum of speed, whichever is
 *     later; for an entry that was not made, up to its end
 * @param unstable every stretch of the whole run in which the car is unstable, the least stable first
 * @param loss where stability was lost for good; empty if the entry ended stable
 * @param firstSaturated the axle that first had no more lateral force to give, because it was saturated or one of its
 *     wheels locked; empty if neither was
 * @param verdict in one sentence
 */
public record EntryStability(
        List<StabilityRow> rows,
        StabilityEvent least,
        List<UnstableStretch> unstable,
        Optional<StabilityEvent> loss,
        Optional<Axle> firstSaturated,
        String verdict) {

    /** Copies the lists. */
    public EntryStability {
        Objects.requireNonNull(least, "least");
        Objects.requireNonNull(loss, "loss");
        Objects.requireNonNull(firstSaturated, "firstSaturated");
        Objects.requireNonNull(verdict, "verdict");
        rows = List.copyOf(Objects.requireNonNull(rows, "rows"));
        unstable = List.copyOf(Objects.requireNonNull(unstable, "unstable"));
    }

    /**
     * Reads a finished entry, one linear model for each row of its profile.
     *
     * @param car the car that drove it
     * @param entry a run with profile
     * @throws IllegalArgumentException if the entry has no profile
     */
    public static EntryStability of(Car car, EntryResult entry) {
        Objects.requireNonNull(car, "car");
        Objects.requireNonNull(entry, "entry");
        Trace profile =
                entry.profile().orElseThrow(() -> new IllegalArgumentException("stability needs a run with profile"));
        List<StabilityRow> rows = new ArrayList<>();
        for (int i = 0; i < profile.rows(); i++) {
            rows.add(new StabilityRow(
                    profile.column("s_m").at(i),
                    profile.column("time_s").at(i),
                    LateralModel.at(ProfilePoint.at(car, profile, i)).growthRate(),
                    Math.max(0, 1 - profile.column("front_utilisation").at(i)),
                    Math.max(0, 1 - profile.column("rear_utilisation").at(i))));
        }
        double from = entry.plan().brakePoint();
        double to = entry.made() || entry.outcome() == Outcome.LOCKED_UP
                ? Math.max(
                        entry.event(EntryEvent.Kind.APEX)
                                .map(EntryEvent::station)
                                .orElse(Double.POSITIVE_INFINITY),
                        entry.minimumSpeedAt())
                : Double.POSITIVE_INFINITY;
        int least = -1;
        for (int i = 0; i < rows.size(); i++) {
            boolean inside = rows.get(i).station() >= from && rows.get(i).station() <= to;
            if (inside
                    && (least < 0 || rows.get(i).growthRate() > rows.get(least).growthRate())) {
                least = i;
            }
        }
        least = Math.max(least, 0);
        StabilityEvent leastEvent = event(StabilityEvent.Kind.LEAST_STABLE, car, profile, rows, least);
        Optional<StabilityEvent> loss = loss(car, profile, rows);
        List<UnstableStretch> unstable =
                UnstableStretch.all(rows, row -> InstabilityCause.of(ProfilePoint.at(car, profile, row)));
        return new EntryStability(
                rows, leastEvent, unstable, loss, firstSaturated(entry), verdict(entry, leastEvent, unstable, loss));
    }

    /** The start of the unstable stretch in which the entry ended, with the cause where it was worst. */
    private static Optional<StabilityEvent> loss(Car car, Trace profile, List<StabilityRow> rows) {
        int lost = rows.size();
        int worst = rows.size() - 1;
        while (lost > 0 && !rows.get(lost - 1).stable()) {
            lost--;
            worst = rows.get(lost).growthRate() > rows.get(worst).growthRate() ? lost : worst;
        }
        if (lost == rows.size()) {
            return Optional.empty();
        }
        String cause = InstabilityCause.of(ProfilePoint.at(car, profile, worst));
        return Optional.of(new StabilityEvent(StabilityEvent.Kind.TURNS_UNSTABLE, rows.get(lost), cause));
    }

    private static StabilityEvent event(
            StabilityEvent.Kind kind, Car car, Trace profile, List<StabilityRow> rows, int row) {
        return new StabilityEvent(kind, rows.get(row), InstabilityCause.of(ProfilePoint.at(car, profile, row)));
    }

    private static String verdict(
            EntryResult entry, StabilityEvent least, List<UnstableStretch> unstable, Optional<StabilityEvent> loss) {
        Optional<EntryEvent> spin = entry.event(EntryEvent.Kind.SPIN);
        if (spin.isPresent() && loss.isPresent()) {
            return String.format(
                    Locale.ROOT,
                    "From %s m on the car stays unstable; it spins %.2f s later, at %s m. Cause: %s.",
                    Tenths.of(loss.get().row().station()),
                    spin.get().time() - loss.get().row().time(),
                    Tenths.of(spin.get().station()),
                    loss.get().cause());
        }
        if (unstable.isEmpty()) {
            return "The car is stable throughout, and least so at "
                    + Tenths.of(least.row().station()) + " m. Cause: " + least.cause() + ". " + nearest(least.row());
        }
        UnstableStretch worst = unstable.get(0);
        String others = unstable.stream()
                .skip(1)
                .map(one -> one.place() + " (" + one.worst().margins() + ")")
                .collect(Collectors.joining(" and "));
        return "The car is unstable " + worst.place() + ", most of all at "
                + Tenths.of(worst.worst().station())
                + " m; on that stretch a disturbance would double " + Tenths.of(worst.doublings())
                + " times with the steering held fixed. Cause: " + worst.cause() + ". " + nearest(worst.worst())
                + (others.isEmpty() ? "" : " It is also unstable " + others + ".");
    }

    private static String nearest(StabilityRow row) {
        return "At that place the " + (row.nearest() == Axle.FRONT ? "front" : "rear")
                + " axle is the closer to its limit (" + row.margins() + ").";
    }

    private static Optional<Axle> firstSaturated(EntryResult entry) {
        return entry.events().stream()
                .map(event -> switch (event.kind()) {
                    case FRONT_LOCKS, FRONT_SATURATES -> Axle.FRONT;
                    case REAR_LOCKS, REAR_SATURATES -> Axle.REAR;
                    default -> null;
                })
                .filter(axle -> axle != null)
                .findFirst();
    }
}
