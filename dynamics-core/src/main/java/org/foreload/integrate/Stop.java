package org.foreload.integrate;

/** Why an integration came to rest. */
public enum Stop {
    /** It has reached the end that was asked for. */
    REACHED,
    /** A {@link Crossing} fell through zero. */
    CROSSED,
    /** What watches it has {@linkplain Integration#stop asked} for no more. */
    ASKED,
    /** The evaluations that are allowed are used up. */
    EXHAUSTED,
    /** No step is short enough: the rates are no numbers, or jump without end. */
    STUCK
}
