package org.foreload.comparison;

import java.util.Objects;
import org.foreload.recording.Estimate;
import org.foreload.recording.RecordedCorner;

/**
 * What one corner makes of the gap. Times are those of the first run less those of the second: positive where the first
 * is slower. The corner begins and ends halfway between a bend of either run and where either brakes for the next, be
 * that in both runs or in one.
 *
 * @param number counted from 1 on the common part of the road
 * @param gap in the whole corner, s
 * @param toTurnIn up to turn-in, s
 * @param toApex from turn-in to the apex, s
 * @param toExit from the apex on, s
 * @param first what the first driver did
 * @param second what the second did
 */
public record CornerGap(
        int number,
        Estimate gap,
        Estimate toTurnIn,
        Estimate toApex,
        Estimate toExit,
        RecordedCorner first,
        RecordedCorner second) {

    /** Refuses null by the component's name. */
    public CornerGap {
        Objects.requireNonNull(gap, "gap");
        Objects.requireNonNull(toTurnIn, "toTurnIn");
        Objects.requireNonNull(toApex, "toApex");
        Objects.requireNonNull(toExit, "toExit");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
    }
}
