package org.foreload.optimum;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.entry.EntryResult;
import org.foreload.optimum.Optimum.Family;
import org.foreload.optimum.Optimum.Restart;
import org.foreload.strategy.Finding;
import org.junit.jupiter.api.Test;

/** What is read off the best release. */
class OptimumTest {

    private static final EntryResult ENTRY = SampleStudies.roadCar().simulator().probe(SampleStudies.straightLine());

    private static Optimum of(Optional<Finding> best, double boundTime, Restart... restarts) {
        return new Optimum(best, Optional.empty(), boundTime, List.of(), List.of(restarts), true);
    }

    @Test
    void anEntryThatTakesAQuarterLongerIsAQuarterAboveTheBound() {
        Optimum optimum = of(Optional.of(new Finding(ENTRY, true, 1)), ENTRY.time() / 1.25);
        assertEquals(Optional.of(ENTRY), optimum.entry());
        assertEquals(0.25, optimum.aboveBound(), 1e-12);
    }

    @Test
    void withoutAnEntryNothingIsAboveTheBound() {
        assertEquals(Optional.empty(), of(Optional.empty(), 8).entry());
        assertEquals(Double.NaN, of(Optional.empty(), 8).aboveBound());
    }

    /**
     * Who brakes is compared with straight-line braking, and who does not, with nobody: both by what the words mean.
     */
    @Test
    void comparesWithStraightLineBrakingUnlessNobodyBrakes() {
        Finding best = new Finding(SampleStudies.withTime(ENTRY, 7), true, 1);
        Optional<Finding> straight = Optional.of(new Finding(ENTRY, true, 1));
        Optimum braked = new Optimum(Optional.of(best), straight, 8, List.of(), List.of(), true);
        assertEquals(Optional.of(ENTRY), braked.baseline());
        EntryResult coasting = SampleStudies.roadCar()
                .simulator()
                .probe(SampleStudies.straightLine().braking().from(20));
        assertFalse(coasting.braked());
        Finding none = new Finding(coasting, true, 1);
        assertEquals(
                Optional.of(coasting),
                new Optimum(Optional.of(none), straight, 8, List.of(), List.of(), true).baseline());
        assertEquals(Optional.empty(), of(Optional.empty(), 8).baseline());
    }

    @Test
    void theSpreadIsFromTheQuickestRestartToTheSlowest() {
        Restart slow = new Restart(1, "linear", 8.5);
        Restart quick = new Restart(2, "held", 8.25);
        Restart between = new Restart(3, "held", 8.4);
        assertEquals(0.25, of(Optional.empty(), 8, slow, quick, between).spread(), 1e-12);
        assertEquals(0.25, of(Optional.empty(), 8, quick, slow).spread(), 1e-12);
    }

    @Test
    void oneRestartHasNoSpread() {
        assertEquals(
                Double.NaN,
                of(Optional.empty(), 8, new Restart(1, "linear", 8.5)).spread());
        assertEquals(Double.NaN, of(Optional.empty(), 8).spread());
    }

    @Test
    void whatIsDoneToTheListsAfterwardsDoesNotShow() {
        List<Family> families = new ArrayList<>(List.of(new Family("linear", ENTRY)));
        List<Restart> restarts = new ArrayList<>(List.of(new Restart(1, "linear", 8.5)));
        Optimum optimum = new Optimum(Optional.empty(), Optional.empty(), 8, families, restarts, true);
        families.clear();
        restarts.clear();
        assertEquals(List.of(new Family("linear", ENTRY)), optimum.families());
        assertEquals(List.of(new Restart(1, "linear", 8.5)), optimum.restarts());
        assertThrows(
                UnsupportedOperationException.class, () -> optimum.families().clear());
    }
}
