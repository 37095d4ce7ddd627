package org.foreload.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.foreload.load.SampleCars;
import org.foreload.path.Corner;
import org.foreload.path.Segment;
import org.foreload.path.SegmentPath;
import org.foreload.path.Turn;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How hard perfect feet may press on an approach that slopes. */
class PeakOnASlopeTest {

    private static final SegmentPath FLAT = SegmentPath.of(90, List.of(Segment.arc(40, 50, Turn.LEFT)), 25, 5);

    private static double peak(SegmentPath path) {
        return Limit.peakDeceleration(SampleCars.pointMass(1.1), new Corner("slope", 28, path));
    }

    /** The friction circle: of μ·cos γ·cos φ, sin φ·cos γ holds the car across, and what is left brakes it. */
    @ParameterizedTest
    @CsvSource({"0.1, 0", "0, 0.2", "-0.05, 0.3"})
    void itIsWhatTheFrictionCircleLeaves(double grade, double banking) {
        double friction = Math.cos(grade) * Math.cos(banking);
        double across = Math.cos(grade) * Math.sin(banking) / 1.1;
        double share = Math.sqrt(friction * friction - across * across);
        assertEquals(share, peak(FLAT.withGrade(grade).withBanking(banking)) / peak(FLAT), 1e-6);
    }
}
