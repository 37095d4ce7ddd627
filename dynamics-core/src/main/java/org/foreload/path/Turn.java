package org.foreload.path;

/** Which way a segment turns, as the driver sees it. */
public enum Turn {
    /** To the left: curvature above zero. */
    LEFT(1),
    /** To the right: curvature below zero. */
    RIGHT(-1);

    private final int sign;

    Turn(int sign) {
        this.sign = sign;
    }

    /** Sign of the curvature: +1 to the left, −1 to the right. */
    public int sign() {
        return sign;
    }

    /** The other way. */
    public Turn opposite() {
        return this == LEFT ? RIGHT : LEFT;
    }
}
