package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
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
import org.foreload.limit.LimitResult;
import org.foreload.path.Corner;
import org.foreload.validation.law.Possible.Case;

/** What holds of perfect hands and feet, whatever the car and the corner. */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class LimitLaws {

    /** Few, as each takes a second or two. */
    private static final int TRIES = 6;

    private static final String SEED = "17";

    private static final LimitOptions USUAL = LimitOptions.STANDARD;

    /** A slope that is left when the search ends is worth less than this, s. */
    private static final double LEFT = 2e-3;

    /** Empty if the corner cannot be driven from that speed at all, or no optimum is found. */
    private static Optional<LimitResult> solved(Case one, Corner corner, Band band, LimitOptions options) {
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
        Optional<LimitResult> narrow = solved(one, one.corner(), Band.within(0.15), USUAL);
        Optional<LimitResult> wide = solved(one, one.corner(), Band.within(0.6), USUAL);
        if (narrow.isPresent() && wide.isPresent()) {
            assertTrue(
                    wide.get().time() <= narrow.get().time() + LEFT,
                    () -> wide.get().time() + " after " + narrow.get().time());
        }
    }

    @Property(tries = TRIES, seed = SEED)
    void theMirroredCornerTakesTheSameTime(@ForAll Case one) {
        Corner mirrored = new Corner(
                "mirrored", one.corner().approachSpeed(), one.corner().path().mirrored());
        Optional<LimitResult> ours = solved(one, one.corner(), Band.within(0.3), USUAL);
        Optional<LimitResult> other = solved(one, mirrored, Band.within(0.3), USUAL);
        if (ours.isPresent() && other.isPresent()) {
            assertEquals(ours.get().time(), other.get().time(), LEFT);
        }
    }

    /** A mesh half as fine again: a millisecond, and what each search leaves. */
    @Property(tries = TRIES, seed = SEED)
    void aFinerMeshTakesAsLong(@ForAll Case one) {
        Optional<LimitResult> usual = solved(one, one.corner(), Band.within(0.15), USUAL);
        Optional<LimitResult> fine =
                solved(one, one.corner(), Band.within(0.15), new LimitOptions(225, USUAL.tolerance(), 300));
        if (usual.isPresent() && fine.isPresent()) {
            assertEquals(usual.get().time(), fine.get().time(), 1e-3 + LEFT);
        }
    }

    /**
     * The quasi-steady bound on the way that was driven uses all the grip and has no lags. Load that rings and slip
     * that lags can help for some tenths of a second, within a hundredth of the time.
     */
    @Property(tries = TRIES, seed = SEED)
    void neverMuchQuickerThanTheBoundOnItsOwnWay(@ForAll Case one) {
        solved(one, one.corner(), Band.road(), USUAL).ifPresent(result -> {
            Corner own = new Corner("own way", one.corner().approachSpeed(), result.way());
            double bound = IdealEntry.solve(one.car(), own).time();
            assertTrue(result.time() >= 0.99 * bound, () -> result.time() + " against " + bound);
        });
    }
}
