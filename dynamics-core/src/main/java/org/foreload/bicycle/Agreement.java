package org.foreload.bicycle;

/**
 * A number on which a guess and what follows from it shall agree: the load transfer of a rigid body, which the forces
 * set that depend on it. Searched by the secant through the last two guesses (Steffensen's iteration for a fixed point;
 * J. Stoer, R. Bulirsch, Introduction to Numerical Analysis, ch. 5, from memory), which needs two or three rounds where
 * the forces bend gently with load. It begins afresh each time, so that the same state gives the same rates.
 */
final class Agreement {

    /**
     * Most rounds. Where a wheel is at the edge of sliding, its lateral force falls like a square root and the rounds
     * may end apart: by 0.02 N of load in one random scene of a thousand. The last guess is then taken.
     */
    private static final int MOST_ROUNDS = 20;

    /**
     * Bounds of the secant's slope. Less load transfer than a whole comes back of any change, so the fixed point is
     * never farther than twice the difference; and it does not lie between the guess and a quarter of the way.
     */
    private static final double LOWEST_SLOPE = -3;

    private static final double HIGHEST_SLOPE = 0.5;

    private boolean fixed;
    private double guess;
    private double lastGuess;
    private double lastResult;
    private int rounds;

    /** Begins: a number that is known, or one to be found near a first guess. */
    void begin(boolean known, double value) {
        fixed = known;
        guess = value;
        rounds = 0;
    }

    /** The guess, or the number itself. */
    double value() {
        return guess;
    }

    /**
     * Takes what follows from the guess, and makes a better guess if the two differ.
     *
     * @return whether they agree, or the last round is over
     */
    boolean reached(double result, double accuracy) {
        double off = result - guess;
        rounds++;
        if (fixed || !(Math.abs(off) > accuracy) || rounds == MOST_ROUNDS) {
            return true;
        }
        double slope = 0;
        if (rounds > 1 && guess != lastGuess) {
            slope = Math.max(LOWEST_SLOPE, Math.min(HIGHEST_SLOPE, (result - lastResult) / (guess - lastGuess)));
        }
        lastGuess = guess;
        lastResult = result;
        guess += off / (1 - slope);
        return false;
    }
}
