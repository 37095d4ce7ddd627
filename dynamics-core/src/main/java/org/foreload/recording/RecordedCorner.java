package org.foreload.recording;

import java.util.Map;
import java.util.Optional;
import org.foreload.braking.ReleaseShape;

/**
 * One corner of a run, measured.
 *
 * @param bend where it is
 * @param shape the release shape nearest to the driver's; empty if the brake was not used
 * @param measures every {@link Measure}; {@link Estimate#NONE} where there is no such number
 */
public record RecordedCorner(Bend bend, Optional<ReleaseShape> shape, Map<Measure, Estimate> measures) {

    /** Copies the measures. */
    public RecordedCorner {
        measures = Map.copyOf(measures);
    }

    /** One measure. */
    public Estimate get(Measure measure) {
        return measures.get(measure);
    }

    /** Whether the brake was used. */
    public boolean braked() {
        return shape.isPresent();
    }
}
