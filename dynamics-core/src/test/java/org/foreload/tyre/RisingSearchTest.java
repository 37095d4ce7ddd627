package org.foreload.tyre;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search by what it promises: the answer, how soon, and from where. Answers come from inverse functions. */
class RisingSearchTest {

    /** Newton's error after a round is half of tan x times its square: from 0.2 off, five rounds leave none. */
    private static final int FEW = 6;

    /** Halving a unit to neighbouring doubles. */
    private static final int HALVINGS = 64;

    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;
    private int looks;

    private double solve(
            DoubleUnaryOperator function,
            DoubleUnaryOperator derivative,
            double target,
            double guess,
            double low,
            double high) {
        looks = 0;
        DoubleUnaryOperator watched = x -> {
            looks++;
            lowest = Math.min(lowest, x);
            highest = Math.max(highest, x);
            return function.applyAsDouble(x);
        };
        double found = RisingSearch.solve(watched, derivative, target, guess, low, high);
        assertTrue(lowest >= low && highest <= high, "looked from " + lowest + " to " + highest);
        return found;
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-3, 0.1, 0.3, 0.5, 0.7})
    void aSmoothFunctionTakesAFewRounds(double answer) {
        double found = solve(Math::sin, Math::cos, Math.sin(answer), 1.3 * answer, 0, 1);
        assertEquals(answer, found, 1e-14 * answer);
        assertTrue(looks <= FEW, looks + " rounds");
    }

    @Test
    void anAnswerAtTheLowerEndIsFoundThere() {
        assertEquals(0, solve(Math::sin, Math::cos, 0, 0, 0, 1), 0);
        assertEquals(1, looks);
    }

    /** Newton's step doubles the distance from the root of a cube root, and turns it round. */
    @Test
    void whereNewtonRunsAwayHalvingFindsIt() {
        double root = 0.3;
        double found = solve(x -> Math.cbrt(x - root), x -> 1 / (3 * Math.cbrt((x - root) * (x - root))), 0, 0.9, 0, 1);
        // Newton's step is three times its distance from the root: small enough to end, it leaves twice that distance.
        assertEquals(root, found, 1e-10 * root);
        assertTrue(looks <= HALVINGS, looks + " rounds");
    }

    /** A level function with one step gives Newton nothing to go by. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.45, 0.55, 0.9})
    void aStepIsFoundByHalving(double step) {
        double found = solve(x -> x < step ? 0 : 1, x -> 0, 0.5, 0.5, 0, 1);
        assertEquals(step, found, 1e-15);
        assertTrue(looks <= HALVINGS, looks + " rounds");
    }

    /** Level at the guess: Newton's first step from there leaves the range. */
    @Test
    void aFlatStartIsLeft() {
        double found = solve(x -> x * x * x, x -> 3 * x * x, 0.5, 1e-3, 0, 1);
        assertEquals(Math.cbrt(0.5), found, 1e-15);
    }
}
