package org.foreload.risk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import java.util.stream.LongStream;
import org.foreload.braking.BrakePlan;
import org.foreload.conventions.InvalidValueException;
import org.foreload.strategy.CornerStudy;
import org.foreload.study.LowDiscrepancy;
import org.foreload.study.Proportion;
import org.junit.jupiter.api.Test;

/**
 * What single draws make of a plan. A draw has six coordinates, in the order of the deviations of {@link Scatter} and
 * then the frequency of the swing; each is the share of all that lies below.
 */
class RiskDrawsTest {

    private static final int BRAKE_POINT = 0;
    private static final int PEAK = 1;
    private static final int GRIP = 4;

    /** Makes the corner as planned, and would not a decimetre later. */
    private static final BrakePlan LATEST = SampleRisks.BRAKING.from(SampleRisks.EDGE);

    private static final BrakePlan HOPELESS = LATEST.withBrakePoint(SampleRisks.EDGE + 5);

    private static double deviate(int coordinate, int samples, int which, long seed) {
        return LowDiscrepancy.normal(LowDiscrepancy.points(6, samples, seed).get(which)[coordinate]);
    }

    @Test
    void aDrawOfTheLowerHalfBrakesLess() {
        assertEquals(10, failsWithLess(new Scatter("peak only", 0, 0.1, 0, 0, 0), PEAK));
    }

    @Test
    void aDrawOfTheLowerHalfHasLessGrip() {
        assertEquals(10, failsWithLess(new Scatter("grip only", 0, 0, 0, 0, 0.1), GRIP));
    }

    /**
     * In how many of ten cases the plan on the edge fails if the only draw is one of the lower half, and makes the
     * corner if it is not: less brake, or less grip, is too little there, and more is enough.
     */
    private static int failsWithLess(Scatter scatter, int coordinate) {
        int so = 0;
        int cases = 0;
        for (long seed = 1; cases < 10; seed++) {
            double deviate = deviate(coordinate, 1, 0, seed);
            if (Math.abs(deviate) > DECIDED) {
                boolean made =
                        SampleRisks.risks(scatter, 1, seed).of(LATEST).failed().count() == 0;
                so += made == deviate > 0 ? 1 : 0;
                cases++;
            }
        }
        return so;
    }

    /** Deviate beyond which a draw moves the plan by more than the decimetre in which the edge lies. */
    private static final double DECIDED = 0.1;

    @Test
    void everyPlanIsDrivenAsOftenAsAskedFor() {
        RiskStudy risks = SampleRisks.risks(Scatter.EXPERT, 5, 1);
        assertEquals(5, risks.samples());
        assertEquals(5, risks.of(LATEST).failed().of());
    }

    /** The smallest count there is: its half that misses by most is all of it. */
    @Test
    void aSingleEntryIsDrivenBeforeAPlanIsSaidToFailSeldom() {
        assertEquals(Optional.empty(), SampleRisks.exact().seldomFailing(HOPELESS, 0));
    }

    @Test
    void aShareThatIsNoneIsRefused() {
        RiskStudy risks = SampleRisks.exact();
        for (double share : new double[] {-0.1, 1.1, Double.NaN}) {
            assertThrows(InvalidValueException.class, () -> risks.seldomFailing(HOPELESS, share));
        }
    }

    @Test
    void nothingMayBeMissing() {
        CornerStudy study = SampleRisks.exact().study();
        assertThrows(NullPointerException.class, () -> new RiskStudy(null, Scatter.NONE, 4, 1));
        assertThrows(NullPointerException.class, () -> new RiskStudy(study, null, 4, 1));
        assertThrows(NullPointerException.class, () -> new RiskStudy(study, Scatter.NONE, null, 4, 1));
    }

    /** A share that is allowed may be met. */
    @Test
    void asManyFailuresAsAllowedAreAllowed() {
        RiskStudy risks = SampleRisks.risks(Scatter.NONE, 2, 1);
        assertEquals(Optional.of(new Proportion(2, 2)), risks.seldomFailing(HOPELESS, 1));
    }

    /**
     * The price of fewer entries: of two draws, the farther one is early and makes the corner, the nearer one is late
     * and does not, and is taken as made. What does not scatter makes no draw farther.
     */
    @Test
    void theNearerHalfIsTakenAsMadeWhereTheFartherMadeIt() {
        BrakePlan late = LATEST.withBrakePoint(SampleRisks.EDGE + 1);
        long[] seeds = nearLateFarEarly();
        assertEquals(6, seeds.length);
        for (long seed : seeds) {
            RiskStudy risks = SampleRisks.risks(SampleRisks.brakePointOnly(4), 2, seed);
            assertEquals(new Proportion(1, 2), risks.of(late).failed());
            assertEquals(Optional.of(new Proportion(0, 2)), risks.seldomFailing(late, 0));
        }
    }

    /**
     * Six seeds of which the first of two draws is late by less than the second, by more than a deviation, is early.
     */
    private static long[] nearLateFarEarly() {
        return LongStream.range(1, 200)
                .filter(seed -> {
                    double first = deviate(BRAKE_POINT, 2, 0, seed);
                    double second = deviate(BRAKE_POINT, 2, 1, seed);
                    return first > 0 && second < -1 && first < -second;
                })
                .limit(6)
                .toArray();
    }
}
