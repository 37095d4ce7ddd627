package org.foreload.braking;

import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * The ready release shapes, with u the share of the release that has passed. A shape of one's own is a
 * {@link TabulatedRelease} or any other {@link ReleaseShape}.
 */
public final class ReleaseShapes {

    /** Share of a two-stage release after which the first, quick drop is over. */
    public static final double TWO_STAGE_DROP_END = 0.2;

    /** Share of the peak that a two-stage release holds between its drops. */
    public static final double TWO_STAGE_PLATEAU = 0.45;

    /** Share of a two-stage release after which the held brake starts to come off. */
    public static final double TWO_STAGE_HOLD_END = 0.8;

    /** {@code linear}: 1 − u. */
    public static final ReleaseShape LINEAR = new Formula("linear", u -> 1 - u);

    /** {@code progressive}: (1 − u)², quick at first, then ever slower. */
    public static final ReleaseShape PROGRESSIVE = new Formula("progressive", u -> (1 - u) * (1 - u));

    /** {@code held}: 1 − u², slow at first, then ever quicker. */
    public static final ReleaseShape HELD = new Formula("held", u -> 1 - u * u);

    /**
     * {@code circle}: √(1 − u²), a quarter circle: what a friction circle leaves for the brakes while the lateral
     * acceleration grows in proportion to u. Infinitely steep at its end.
     */
    public static final ReleaseShape CIRCLE = new Formula("circle", u -> Math.sqrt(1 - u * u));

    /** {@code smooth}: half a cosine, (1 + cos πu)/2, level at both ends. */
    public static final ReleaseShape SMOOTH = new Formula("smooth", u -> 0.5 * (1 + Math.cos(Math.PI * u)));

    /**
     * {@code two-stage}: straight from 1 down to {@link #TWO_STAGE_PLATEAU} at {@link #TWO_STAGE_DROP_END}, held there
     * until {@link #TWO_STAGE_HOLD_END}, then straight down to 0.
     */
    public static final ReleaseShape TWO_STAGE = new TabulatedRelease(
            "two-stage",
            new double[] {0, TWO_STAGE_DROP_END, TWO_STAGE_HOLD_END, 1},
            new double[] {1, TWO_STAGE_PLATEAU, TWO_STAGE_PLATEAU, 0});

    /** {@code abrupt}: fully on for every u below 1, then dropped at once. */
    public static final ReleaseShape ABRUPT = new Formula("abrupt", u -> u < 1 ? 1 : 1 - u);

    private static final List<ReleaseShape> ALL = List.of(LINEAR, PROGRESSIVE, HELD, CIRCLE, SMOOTH, TWO_STAGE, ABRUPT);

    private ReleaseShapes() {}

    /** All ready shapes. */
    public static List<ReleaseShape> all() {
        return ALL;
    }

    /**
     * The ready shape of that name.
     *
     * @throws InvalidValueException if there is none; it lists the names
     */
    public static ReleaseShape named(String name) {
        Objects.requireNonNull(name, "name");
        for (ReleaseShape shape : ALL) {
            if (shape.name().equals(name)) {
                return shape;
            }
        }
        String names = ALL.stream().map(ReleaseShape::name).collect(Collectors.joining(", "));
        throw new InvalidValueException("release_shape", name, "one of " + names);
    }

    /** Parts into which a shape of one's own is cut to look at it. */
    private static final int LOOKS = 200;

    /**
     * Looks at a shape of one's own, at its kinks and 201 places, before many releases are made of it.
     *
     * @return the shape
     * @throws InvalidValueException if the share that remains is not finite somewhere; it names the shape and the place
     */
    public static ReleaseShape checked(ReleaseShape shape) {
        Objects.requireNonNull(shape, "shape");
        for (int i = 0; i <= LOOKS; i++) {
            look(shape, (double) i / LOOKS);
        }
        for (double kink : shape.kinks()) {
            look(shape, kink);
        }
        return shape;
    }

    private static void look(ReleaseShape shape, double u) {
        double remaining = shape.remaining(u);
        if (!Double.isFinite(remaining)) {
            Checks.finite("release_shape " + shape.name() + ", remaining(" + u + ")", remaining);
        }
    }

    /** A shape without kinks, given by its law on 0 to 1. */
    private record Formula(String name, DoubleUnaryOperator law) implements ReleaseShape {

        private static final double[] NO_KINKS = {};

        @Override
        public double remaining(double u) {
            return law.applyAsDouble(Math.max(0, Math.min(1, u)));
        }

        @Override
        public double[] kinks() {
            return NO_KINKS;
        }

        @Override
        public String toString() {
            return name;
        }
    }
}
