package org.foreload.conventions;

/** Gravitational acceleration, the one physical constant that the library assumes. */
public final class Gravity {

    /** Gravitational acceleration in m/s², the value that the published check values use. */
    public static final double G = 9.81;

    private Gravity() {}
}
