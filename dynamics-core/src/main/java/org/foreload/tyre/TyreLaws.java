package org.foreload.tyre;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.foreload.conventions.Checks;
import org.foreload.conventions.InvalidValueException;

/**
 * The laws of {@link Tyre}, tried on a grid of slips: for whoever plugs in a model of their own and wants to know
 * before the first run that it will be understood as it is meant.
 */
public final class TyreLaws {

    /** Share of the peak force that two answers may differ by: what a search for slip leaves. */
    private static final double ACCURACY = 1e-6;

    /** Slip small against that at which any tyre bends. */
    private static final double SMALL = 1e-6;

    /** Part by which a small-slip slope may differ from the stiffness: a curve has bent a little by then. */
    private static final double SLOPE = 1e-3;

    private static final double[] SLIPS = {-0.6, -0.15, -0.04, -0.01, 0, 0.003, 0.02, 0.07, 0.25, 0.9};

    private TyreLaws() {}

    /**
     * Laws that a tyre breaks, in words with numbers; empty if it breaks none. Of a tyre that gives no force at all,
     * null, only that is said, since no other law can be tried on it.
     *
     * @param tyre the model
     * @param loads wheel loads to try, N, above zero; one or more
     * @throws NullPointerException if the tyre is null
     * @throws org.foreload.conventions.InvalidValueException if there is no load, or one that is not above zero
     */
    public static List<String> broken(Tyre tyre, double... loads) {
        Objects.requireNonNull(loads, "loads");
        Objects.requireNonNull(tyre, "tyre");
        if (loads.length == 0) {
            throw new InvalidValueException("loads", "none", "one load or more, in N");
        }
        for (double load : loads) {
            Checks.positive("load", load);
        }
        List<String> broken = new ArrayList<>();
        double relaxation = tyre.relaxationLength();
        if (!(relaxation >= 0 && relaxation < Double.POSITIVE_INFINITY)) {
            broken.add("relaxation length is a number of 0 or more, in m: it gives " + relaxation);
        }
        for (double load : withNone(loads)) {
            for (double longitudinal : SLIPS) {
                for (double lateral : SLIPS) {
                    if (tyre.force(longitudinal, lateral, load) == null) {
                        broken.add(at("force is never null", longitudinal, lateral, load));
                        return broken;
                    }
                }
            }
        }
        if (!tyre.force(0.1, 0.1, 0).equals(TyreForce.NONE)) {
            broken.add("no load, no force: it gives " + tyre.force(0.1, 0.1, 0));
        }
        for (double load : loads) {
            zero(tyre, load, broken);
            slopes(tyre, load, broken);
            for (double longitudinal : SLIPS) {
                for (double lateral : SLIPS) {
                    odd(tyre, longitudinal, lateral, load, broken);
                    ellipse(tyre, longitudinal, lateral, load, broken);
                    imposed(tyre, Math.abs(longitudinal), lateral, load, broken);
                }
            }
        }
        return broken;
    }

    private static double[] withNone(double[] loads) {
        double[] all = new double[loads.length + 1];
        System.arraycopy(loads, 0, all, 1, loads.length);
        return all;
    }

    private static void zero(Tyre tyre, double load, List<String> broken) {
        TyreForce force = tyre.force(0, 0, load);
        if (!(Math.hypot(force.longitudinal(), force.lateral()) <= ACCURACY)) {
            broken.add(at("zero slip, zero force", 0, 0, load));
        }
    }

    private static void slopes(Tyre tyre, double load, List<String> broken) {
        double lateral = tyre.force(0, SMALL, load).lateral() / SMALL / tyre.corneringStiffness(load);
        double longitudinal = tyre.force(SMALL, 0, load).longitudinal() / SMALL / tyre.slipStiffness(load);
        if (!(Math.abs(lateral - 1) <= SLOPE) || !(Math.abs(longitudinal - 1) <= SLOPE)) {
            broken.add(at("small-slip slopes are the stiffnesses", SMALL, SMALL, load));
        }
    }

    private static void odd(Tyre tyre, double longitudinal, double lateral, double load, List<String> broken) {
        TyreForce there = tyre.force(longitudinal, lateral, load);
        TyreForce back = tyre.force(-longitudinal, -lateral, load);
        double sum = Math.hypot(there.longitudinal() + back.longitudinal(), there.lateral() + back.lateral());
        if (!(sum <= ACCURACY * tyre.peakForceY(load))) {
            broken.add(at("force is odd in slip", longitudinal, lateral, load));
        }
    }

    private static void ellipse(Tyre tyre, double longitudinal, double lateral, double load, List<String> broken) {
        TyreForce force = tyre.force(longitudinal, lateral, load);
        double used = Math.hypot(force.longitudinal() / tyre.peakForceX(load), force.lateral() / tyre.peakForceY(load));
        if (!(used <= 1 + ACCURACY)) {
            broken.add(at("force stays inside the friction ellipse", longitudinal, lateral, load));
        }
        if (!(force.longitudinal() * longitudinal >= 0) || !(force.lateral() * lateral >= 0)) {
            broken.add(at("force opposes slip, so it has the sign of the slip", longitudinal, lateral, load));
        }
    }

    /** What braking leaves is the lateral force of the slip that carries the brake force, on the rising side. */
    private static void imposed(Tyre tyre, double longitudinal, double lateral, double load, List<String> broken) {
        TyreForce force = tyre.force(longitudinal, lateral, load);
        boolean rising = tyre.force(longitudinal * 1.001 + SMALL, lateral, load).longitudinal() > force.longitudinal()
                && force.longitudinal() < 0.99 * tyre.rollingForceLimit(lateral, load);
        double left = tyre.lateralForce(lateral, force.longitudinal(), load);
        if (rising && !(Math.abs(left - force.lateral()) <= 10 * ACCURACY * tyre.peakForceY(load))) {
            broken.add(at("an imposed force leaves the lateral force of its slip", longitudinal, lateral, load));
        }
    }

    private static String at(String law, double longitudinal, double lateral, double load) {
        return String.format(Locale.ROOT, "%s: not at slips %s and %s under %s N", law, longitudinal, lateral, load);
    }
}
