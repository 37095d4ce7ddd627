package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.conventions.InvalidValueException;
import org.foreload.ideal.IdealEntry;
import org.foreload.limit.Band;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitPoint;
import org.foreload.limit.LimitResult;
import org.foreload.line.RoadLine;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.validation.law.Possible.Case;

/** What holds of perfect hands and feet, whatever the car and the corner. */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class LimitLaws {

    /** Few, as each takes a second or two; {@link MoreLimitLaws} tries more. */
    static final int TRIES = 2;

    static final String SEED = "17";

    /** Two thirds of the usual mesh: the laws hold on any. */
    static final LimitOptions COARSE = new LimitOptions(100, LimitOptions.STANDARD.tolerance(), 300);

    /** A slope that is left when the search ends is worth less than this, s. */
    static final double LEFT = 2e-3;

    /** How far a bound may be passed, m: the tolerance of the search, in its unit of 1 m, with room. */
    private static final double EDGE = 1e-3;

    /** Acceleration, m/s², to which the coarse mesh of a straight follows a line that bends. */
    private static final double AGREED = 0.3;

    /** Empty if the corner cannot be driven from that speed at all, or no optimum is found. */
    static Optional<LimitResult> solved(Case one, Corner corner, Band band, LimitOptions options) {
        try {
            Hands hands = Hands.practised(Limit.peakDeceleration(one.car(), corner));
            LimitResult result = Limit.solve(one.car(), corner, band, hands, options, (step, residual) -> {});
            return Optional.of(result).filter(LimitResult::converged);
        } catch (InvalidValueException cannotBeDriven) {
            return Optional.empty();
        }
    }

    @Property(tries = TRIES, seed = SEED)
    void aWiderBandIsNeverSlower(@ForAll Case one) {
        aWiderBandIsNeverSlower(one, COARSE);
    }

    static void aWiderBandIsNeverSlower(Case one, LimitOptions options) {
        Optional<LimitResult> narrow = solved(one, one.corner(), Band.within(0.15), options);
        Optional<LimitResult> wide = solved(one, one.corner(), Band.within(0.6), options);
        Assume.that(narrow.isPresent() && wide.isPresent());
        assertTrue(
                wide.get().time() <= narrow.get().time() + LEFT,
                () -> wide.get().time() + " after " + narrow.get().time());
    }

    @Property(tries = TRIES, seed = SEED)
    void noBandLeavesTheRoad(@ForAll Case one) {
        noBandLeavesTheRoad(one, COARSE);
    }

    static void noBandLeavesTheRoad(Case one, LimitOptions options) {
        Path path = one.corner().path();
        Optional<LimitResult> found = solved(one, one.corner(), Band.within(2 * path.widthLeft(0)), options);
        Assume.that(found.isPresent());
        for (LimitPoint point : found.get().points()) {
            double s = point.station();
            assertTrue(
                    point.offset() <= path.widthLeft(s) + EDGE && point.offset() >= -path.widthRight(s) - EDGE,
                    () -> point + " on a road of " + path.widthLeft(s) + " m to each side");
        }
    }

    @Property(tries = TRIES, seed = SEED)
    void theLastMetresAreDrivenAsThoseBefore(@ForAll Case one) {
        theLastMetresAreDrivenAsThoseBefore(one, COARSE);
    }

    /** The brake is off at the end, and speed changes as the deceleration says: v dv = −d ds (kinematics). */
    static void theLastMetresAreDrivenAsThoseBefore(Case one, LimitOptions options) {
        Optional<LimitResult> found = solved(one, one.corner(), Band.within(0.15), options);
        Assume.that(found.isPresent());
        List<LimitPoint> points = found.get().points();
        for (int i = points.size() - 4; i + 1 < points.size(); i++) {
            LimitPoint from = points.get(i);
            LimitPoint to = points.get(i + 1);
            double rise = (to.speed() * to.speed() - from.speed() * from.speed()) / 2;
            double mean = rise / (to.station() - from.station());
            assertEquals(-(from.deceleration() + to.deceleration()) / 2, mean, AGREED, () -> from + " to " + to);
            assertEquals(0, to.brake(), AGREED, to::toString);
        }
    }

    @Property(tries = TRIES, seed = SEED)
    void theMirroredCornerTakesTheSameTime(@ForAll Case one) {
        theMirroredCornerTakesTheSameTime(one, COARSE);
    }

    static void theMirroredCornerTakesTheSameTime(Case one, LimitOptions options) {
        Corner mirrored = new Corner(
                "mirrored", one.corner().approachSpeed(), one.corner().path().mirrored());
        Optional<LimitResult> ours = solved(one, one.corner(), Band.within(0.3), options);
        Optional<LimitResult> other = solved(one, mirrored, Band.within(0.3), options);
        Assume.that(ours.isPresent() && other.isPresent());
        assertEquals(ours.get().time(), other.get().time(), LEFT);
    }

    /**
     * The quasi-steady bound on the way that was driven uses all the grip and has no lags. Load that rings and slip
     * that lags can help for some tenths of a second, within a hundredth of the time.
     */
    @Property(tries = TRIES, seed = SEED)
    void neverMuchQuickerThanTheBoundOnItsOwnWay(@ForAll Case one) {
        neverMuchQuickerThanTheBoundOnItsOwnWay(one, COARSE);
    }

    static void neverMuchQuickerThanTheBoundOnItsOwnWay(Case one, LimitOptions options) {
        Optional<LimitResult> found = solved(one, one.corner(), Band.road(), options);
        Assume.that(found.isPresent());
        LimitResult result = found.get();
        RoadLine line = RoadLine.driven(one.corner().path(), result);
        Corner own = new Corner("own way", one.corner().approachSpeed(), line.line());
        double bound = IdealEntry.solve(one.car(), own).time();
        assertTrue(result.time() >= 0.99 * bound, () -> result.time() + " against " + bound);
    }
}
