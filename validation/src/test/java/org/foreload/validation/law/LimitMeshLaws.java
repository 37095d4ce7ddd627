package org.foreload.validation.law;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import org.foreload.limit.Band;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitResult;
import org.foreload.validation.law.Possible.Case;

/** What holds of meshes; apart from {@link LimitLaws}, so that the two take the processors side by side. */
@Domain(Possible.class)
@Domain(DomainContext.Global.class)
class LimitMeshLaws {

    /** A mesh finer by half: a millisecond, and what each search leaves where the time is flat. */
    @Property(tries = LimitLaws.TRIES, seed = LimitLaws.SEED)
    void aFinerMeshTakesAsLong(@ForAll Case one) {
        aFinerMeshTakesAsLong(one, LimitLaws.COARSE);
    }

    static void aFinerMeshTakesAsLong(Case one, LimitOptions options) {
        Optional<LimitResult> usual = LimitLaws.solved(one, one.corner(), Band.within(0.15), options);
        LimitOptions finer = new LimitOptions(options.intervals() * 3 / 2, options.tolerance(), 300);
        Optional<LimitResult> fine = LimitLaws.solved(one, one.corner(), Band.within(0.15), finer);
        Assume.that(usual.isPresent() && fine.isPresent());
        assertEquals(usual.get().time(), fine.get().time(), 1e-3 + LimitLaws.LEFT);
    }
}
