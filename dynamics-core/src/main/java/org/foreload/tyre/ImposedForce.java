package org.foreload.tyre;

/** Searches on the combined-slip force alone: the defaults of {@link Tyre}, for models that bring no closed form. */
final class ImposedForce {

    /** Longest longitudinal slip that is searched: a stopped wheel. */
    private static final double STOPPED = 1;

    private static final int HALVINGS = 60;

    private ImposedForce() {}

    static double lateralForce(Tyre tyre, double lateralSlip, double longitudinalForce, double load) {
        if (!(load > 0)) {
            return 0;
        }
        double high = slipOfLargestForce(tyre, lateralSlip, load);
        if (tyre.force(high, lateralSlip, load).longitudinal() <= longitudinalForce) {
            return tyre.force(high, lateralSlip, load).lateral();
        }
        double low = 0;
        for (int i = 0; i < HALVINGS; i++) {
            double slip = (low + high) / 2;
            if (tyre.force(slip, lateralSlip, load).longitudinal() < longitudinalForce) {
                low = slip;
            } else {
                high = slip;
            }
        }
        return tyre.force((low + high) / 2, lateralSlip, load).lateral();
    }

    static double rollingForceLimit(Tyre tyre, double lateralSlip, double load) {
        return load > 0
                ? tyre.force(slipOfLargestForce(tyre, lateralSlip, load), lateralSlip, load)
                        .longitudinal()
                : 0;
    }

    static double lateralSlipFor(Tyre tyre, double fraction, double load) {
        double target = fraction * tyre.peakForceY(load);
        double low = 0;
        double high = tyre.peakForceY(load) / tyre.corneringStiffness(load);
        while (high < 10 && tyre.force(0, high, load).lateral() < target) {
            low = high;
            high *= 1.2;
        }
        for (int i = 0; i < HALVINGS; i++) {
            double slip = (low + high) / 2;
            if (tyre.force(0, slip, load).lateral() < target) {
                low = slip;
            } else {
                high = slip;
            }
        }
        return high;
    }

    private static double slipOfLargestForce(Tyre tyre, double lateralSlip, double load) {
        double low = 0;
        double high = STOPPED;
        for (int i = 0; i < HALVINGS; i++) {
            double a = low + (high - low) / 3;
            double b = high - (high - low) / 3;
            if (tyre.force(a, lateralSlip, load).longitudinal()
                    < tyre.force(b, lateralSlip, load).longitudinal()) {
                low = a;
            } else {
                high = b;
            }
        }
        return (low + high) / 2;
    }
}
