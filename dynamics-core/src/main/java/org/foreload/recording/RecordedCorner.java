package org.foreload.recording;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.foreload.braking.ReleaseShape;

/**
 * One corner of a run, measured.
 *
 * @param bend where it is
 * @param shape the release shape nearest to the driver's; empty if the brake was not used, or the recording has a hole
 *     where it came off
 * @param measures every {@link Measure}; {@link Estimate#NONE} where there is no such number, or it lies in a hole
 */
public record RecordedCorner(Bend bend, Optional<ReleaseShape> shape, Map<Measure, Estimate> measures) {

    /** Copies the measures, in the order in which they are declared. */
    public RecordedCorner {
        Map<Measure, Estimate> ordered = new EnumMap<>(Measure.class);
        ordered.putAll(Map.copyOf(measures));
        measures = Collections.unmodifiableMap(ordered);
    }

    /** One measure. */
    public Estimate get(Measure measure) {
        return measures.get(measure);
    }

    /** Whether the brake was used, and where it came on and off is known. */
    public boolean braked() {
        return shape.isPresent() && get(Measure.BRAKE_ON).known();
    }
}
