package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.foreload.braking.Braking;
import org.foreload.entry.EntryResult;
import org.foreload.path.Corner;
import org.foreload.path.TiltedPath;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.StraightLine;
import org.foreload.strategy.Trial;
import org.junit.jupiter.api.Test;

/** The hardest braking that keeps a reserve, and what too little of it costs. */
class LockReserveTest {

    private static final CornerStudy STUDY = SampleStudies.roadCar();

    private static CornerStudy inHand(double metres) {
        return STUDY.with(new Allowance(0.5, 0, 0, 0, metres));
    }

    private static Trial straight(CornerStudy study, double peak) {
        Braking braking = StraightLine.braking(peak, 0.25);
        return study.search().trial(braking.from(study.search().estimate(braking)));
    }

    /**
     * On a banked road the wheels of one side carry less, by more than two hundredths at two degrees (m·g·sin φ·h/t of
     * half the weight, for a CG a third of a track high), and the first of them to stop bounds the braking.
     */
    @Test
    void theHardestBrakingIsLessWhereTheRoadIsBanked() {
        CornerStudy level = SampleStudies.roadCar();
        Corner corner = level.simulator().corner();
        Corner banked = new Corner("banked", corner.approachSpeed(), new TiltedPath(corner.path(), 0, -BANKING));
        CornerStudy tilted = CornerStudy.of(level.simulator().car(), banked);
        double most = new LockReserve(level).hardest(0.25);
        double less = new LockReserve(tilted).hardest(0.25);
        assertTrue(less < 0.98 * most, less + " against " + most);
    }

    private static final double BANKING = Math.toRadians(2);

    /**
     * A foot too hard by a fortieth goes with each metre in hand; with none, three thousandths are left all the same.
     */
    @Test
    void aForceThatMayBeGivenAwayIsHeldInReserve() {
        assertEquals(0.1, new LockReserve(inHand(4)).wanted(), 1e-12);
        assertEquals(0.003, new LockReserve(STUDY).wanted());
    }

    /**
     * Driven with the hardest braking in a straight line, the reserve that is wanted is left: to a thousandth, since
     * near a lock what is left falls by two parts for one of the peak.
     */
    @Test
    void theHardestBrakingLeavesTheReserve() {
        for (CornerStudy study : new CornerStudy[] {STUDY, inHand(4), inHand(16)}) {
            LockReserve reserve = new LockReserve(study);
            double left = straight(study, reserve.hardest(0.25)).entry().lockReserve();
            assertTrue(left >= reserve.wanted(), left + " of " + reserve.wanted());
            assertEquals(reserve.wanted(), left, 0.001);
        }
        assertTrue(straight(STUDY, 1.05 * STUDY.lockLimit()).entry().lockReserve() == 0, "a wheel can stop");
    }

    @Test
    void whoMustHaveMoreInHandBrakesLessHard() {
        double bare = new LockReserve(STUDY).hardest(0.25);
        assertTrue(new LockReserve(inHand(4)).hardest(0.25) < bare);
        assertTrue(new LockReserve(inHand(12)).hardest(0.25) < 0.9 * bare);
    }

    /** The price is in proportion to what is short, and there is none where nothing is. */
    @Test
    void whatIsShortOfTheReserveHasItsPrice() {
        LockReserve reserve = new LockReserve(inHand(8));
        EntryResult little = straight(STUDY, 0.95 * STUDY.lockLimit()).entry();
        EntryResult more = straight(STUDY, 0.88 * STUDY.lockLimit()).entry();
        assertTrue(little.lockReserve() < more.lockReserve() && more.lockReserve() < 0.2);
        assertEquals(
                (0.2 - little.lockReserve()) / (0.2 - more.lockReserve()),
                reserve.price(little) / reserve.price(more),
                1e-9);
        assertTrue(reserve.price(more) > 0);
        assertEquals(0, new LockReserve(STUDY).price(more));
    }

    /** A tenth of the brake force short costs more than the tenth of a second that a stopped wheel does. */
    @Test
    void theReserveIsWorthMoreThanAStoppedWheelCosts() {
        EntryResult little = straight(STUDY, 0.95 * STUDY.lockLimit()).entry();
        double lack = 0.4 - little.lockReserve();
        assertTrue(new LockReserve(inHand(16)).price(little) > lack);
    }

    /** An entry that leaves nine tenths of the reserve just keeps the limit: a tenth of brake force counts as one. */
    @Test
    void nineTenthsOfTheReserveAreALimit() {
        Trial trial = straight(STUDY, 0.88 * STUDY.lockLimit());
        double left = trial.entry().lockReserve();
        double metres = left / 0.9 / 0.025;
        double[] limits = new LockReserve(inHand(metres)).limits(trial);
        assertEquals(7, limits.length);
        assertEquals(trial.excess().drift(), limits[0]);
        assertEquals(trial.excess().edge(), limits[1]);
        assertEquals(trial.excess().front(), Math.max(limits[2], limits[4]));
        assertEquals(trial.excess().rear(), Math.max(limits[3], limits[5]));
        assertEquals(0, limits[6], 1e-9);
        double[] more = new LockReserve(inHand(metres + 4 / 0.9)).limits(trial);
        assertEquals(1, more[6], 1e-9);
    }
}
