package org.foreload.examples.answer;

import java.util.Optional;
import org.foreload.strategy.CornerStudy;

/** Why no release that was tried makes a corner, where the corner itself is the cause. */
public final class WhyMissed {

    private WhyMissed() {}

    /** A sentence with the cause; empty where none is known. */
    public static Optional<String> of(CornerStudy study) {
        return ShortApproach.of(study).or(() -> BankedStraight.of(study));
    }
}
