package org.foreload.optimum;

import java.util.Arrays;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;

/**
 * What is left of a release from where the foot comes down within it, as a shape of its own. What lies before that is
 * never driven: a search over free shapes that had to carry it along would waste its values on it.
 *
 * @param original the whole release
 * @param from where the rest begins, as a share of the release, above 0 and below 1; something is left there
 */
record RestOfRelease(ReleaseShape original, double from) implements ReleaseShape {

    /** The same entry, said without what is never driven; plans that reach their peak are returned as they are. */
    static BrakePlan of(BrakePlan plan) {
        Release release = plan.release();
        double reached = release.remaining(plan.brakePoint());
        if (plan.brakePoint() <= release.start() || reached <= 0) {
            return plan;
        }
        double from = (plan.brakePoint() - release.start()) / (release.end() - release.start());
        return new Braking(
                        plan.peakDeceleration() * reached,
                        plan.buildUpTime(),
                        new Release(new RestOfRelease(release.shape(), from), plan.brakePoint(), release.end()),
                        plan.pickUp(),
                        plan.disturbance())
                .from(plan.brakePoint());
    }

    @Override
    public String name() {
        return original.name();
    }

    @Override
    public double remaining(double u) {
        double inside = Math.max(0, Math.min(1, u));
        return original.remaining(from + inside * (1 - from)) / original.remaining(from);
    }

    @Override
    public double[] kinks() {
        return Arrays.stream(original.kinks())
                .filter(kink -> kink > from)
                .map(kink -> (kink - from) / (1 - from))
                .toArray();
    }
}
