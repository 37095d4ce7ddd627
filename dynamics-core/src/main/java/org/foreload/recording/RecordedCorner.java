package org.foreload.recording;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.foreload.braking.ReleaseShape;

/**
 * One corner of a run, measured.
 *
 * @param bend where it is
 * @param shape the release shape nearest to the driver's; empty if the brake was not used, or the recording has a hole
 *     where it came off
 * @param measures every {@link Measure}; {@link Estimate#NONE} where there is no such number, or it lies in a hole
 * @param axis what all stations of the run are wrong by together
 */
public record RecordedCorner(Bend bend, Optional<ReleaseShape> shape, Map<Measure, Estimate> measures, AxisError axis) {

    /**
     * What the stations of a run are wrong by together: half of intervals of the coverage that the measures have.
     *
     * @param scale of the scale of distances, a share
     * @param from station at which the distances begin, m
     * @param origin of that station, m
     */
    public record AxisError(double scale, double from, double origin) {

        /** What two stations are wrong by alike, m²; of one station with itself the square of its own part. */
        private double shared(double one, double other) {
            return scale * scale * (one - from) * (other - from) + origin * origin;
        }
    }

    /** Copies the measures, in the order in which they are declared; null is refused by the component's name. */
    public RecordedCorner {
        Objects.requireNonNull(bend, "bend");
        Objects.requireNonNull(shape, "shape");
        Objects.requireNonNull(axis, "axis");
        Map<Measure, Estimate> ordered = new EnumMap<>(Measure.class);
        ordered.putAll(Map.copyOf(Objects.requireNonNull(measures, "measures")));
        measures = Collections.unmodifiableMap(ordered);
    }

    /** One measure. */
    public Estimate get(Measure measure) {
        return measures.get(Objects.requireNonNull(measure, "measure"));
    }

    /**
     * A place counted from turn-in, m. What the axis of the run is wrong by up to here, it is wrong by at both places,
     * so that the interval hangs on how far they lie apart and not on the length of the lap before them; and on how
     * well each of them was found.
     *
     * @param place a measure that is a station
     */
    public Estimate fromTurnIn(Measure place) {
        Objects.requireNonNull(place, "place");
        Estimate turnIn = get(Measure.TURN_IN);
        return apart(place, turnIn.value() - turnIn.low(), turnIn.high() - turnIn.value());
    }

    /**
     * A place counted from the station that was found for turn-in, m, on the axis of the corner: as
     * {@link #fromTurnIn}, but how well turn-in was found is not in it. So it lies beside the course as recorded.
     *
     * @param place a measure that is a station
     */
    public Estimate besideTurnIn(Measure place) {
        Objects.requireNonNull(place, "place");
        double turnIn = get(Measure.TURN_IN).value();
        double own = Math.sqrt(axis.shared(turnIn, turnIn));
        return apart(place, own, own);
    }

    /** Distance of a place from turn-in, where turn-in is uncertain by so much either way. */
    private Estimate apart(Measure place, double before, double behind) {
        Estimate there = get(place);
        double turnIn = get(Measure.TURN_IN).value();
        double alike = 2 * axis.shared(there.value(), turnIn);
        double low = half(there.value() - there.low(), behind, alike);
        double high = half(there.high() - there.value(), before, alike);
        double value = there.value() - turnIn;
        return there.known() ? new Estimate(value, value - low, value + high, there.coverage()) : Estimate.NONE;
    }

    private static double half(double one, double other, double alike) {
        return Math.sqrt(Math.max(0, one * one + other * other - alike));
    }

    /** Whether the brake was used, and where it came on and off is known. */
    public boolean braked() {
        return shape.isPresent() && get(Measure.BRAKE_ON).known();
    }
}
