package org.foreload.validation.law;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.limit.LimitOptions;
import org.foreload.validation.law.Possible.Case;

/** {@link LimitLaws} and {@link LimitMeshLaws} for more cases, on the usual mesh. */
@Tag("long")
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class MoreLimitLaws {

    private static final int TRIES = 6;

    private static final String SEED = "17";

    @Property(tries = TRIES, seed = SEED)
    void aWiderBandIsNeverSlower(@ForAll Case one) {
        LimitLaws.aWiderBandIsNeverSlower(one, LimitOptions.STANDARD);
    }

    @Property(tries = TRIES, seed = SEED)
    void noBandLeavesTheRoad(@ForAll Case one) {
        LimitLaws.noBandLeavesTheRoad(one, LimitOptions.STANDARD);
    }

    @Property(tries = TRIES, seed = SEED)
    void theLastMetresAreDrivenAsThoseBefore(@ForAll Case one) {
        LimitLaws.theLastMetresAreDrivenAsThoseBefore(one, LimitOptions.STANDARD);
    }

    @Property(tries = TRIES, seed = SEED)
    void theMirroredCornerTakesTheSameTime(@ForAll Case one) {
        LimitLaws.theMirroredCornerTakesTheSameTime(one, LimitOptions.STANDARD);
    }

    @Property(tries = TRIES, seed = SEED)
    void aFinerMeshTakesAsLong(@ForAll Case one) {
        LimitMeshLaws.aFinerMeshTakesAsLong(one, LimitOptions.STANDARD);
    }

    @Property(tries = TRIES, seed = SEED)
    void neverMuchQuickerThanTheBoundOnItsOwnWay(@ForAll Case one) {
        LimitLaws.neverMuchQuickerThanTheBoundOnItsOwnWay(one, LimitOptions.STANDARD);
    }
}
