package org.foreload.examples.sheet;

import org.foreload.braking.BrakePlan;
import org.foreload.braking.Release;

/** One thing that a driver gets wrong about a plan; all else stays as planned. */
public enum Mistake {
    /** The foot comes down later. */
    LATER("brake later", Mistake.TOO_FAST, "m", 30) {
        @Override
        public BrakePlan made(BrakePlan plan, double amount) {
            return plan.withBrakePoint(plan.brakePoint() + amount);
        }

        @Override
        public double largest(BrakePlan plan, double pathEnd) {
            return plan.release().end() - plan.brakePoint() - STEP;
        }
    },
    /** The foot presses harder. */
    HARDER("brake harder", Mistake.TOO_SLOW, "%", 50) {
        @Override
        public BrakePlan made(BrakePlan plan, double amount) {
            return plan.withPeakDeceleration(plan.peakDeceleration() * (1 + amount / 100));
        }

        @Override
        public double largest(BrakePlan plan, double pathEnd) {
            return HARDEST;
        }
    },
    /** The brake comes off sooner. */
    SOONER("off the brake sooner", Mistake.TOO_FAST, "m", 60) {
        @Override
        public BrakePlan made(BrakePlan plan, double amount) {
            return ending(plan, plan.release().end() - amount);
        }

        @Override
        public double largest(BrakePlan plan, double pathEnd) {
            return LATER.largest(plan, pathEnd);
        }
    },
    /** The brake is carried deeper. */
    DEEPER("carry the brake deeper", Mistake.TOO_SLOW, "m", 60) {
        @Override
        public BrakePlan made(BrakePlan plan, double amount) {
            return ending(plan, plan.release().end() + amount);
        }

        @Override
        public double largest(BrakePlan plan, double pathEnd) {
            return pathEnd - plan.release().end();
        }
    };

    private static final String TOO_FAST = "the car comes too fast: it drifts wide of its line, and the throttle waits";

    private static final String TOO_SLOW = "the car is slow before the apex: too much brake for too long";

    /** By which a sheet makes a mistake larger, m or %; and the least braking that is left, m. */
    static final double STEP = 1;

    /** Farthest that a foot presses harder, %: the double and double again. */
    private static final double HARDEST = 300;

    private final String words;
    private final String felt;
    private final String unit;
    private final double most;

    Mistake(String words, String felt, String unit, double most) {
        this.words = words;
        this.felt = felt;
        this.unit = unit;
        this.most = most;
    }

    /** What is done: {@code brake harder}. */
    public String words() {
        return words;
    }

    /** What the driver notices of it as long as the car makes the corner. */
    String felt() {
        return felt;
    }

    /** Unit of its amount. */
    public String unit() {
        return unit;
    }

    /**
     * The plan with this mistake.
     *
     * @param amount how large it is, in its unit, 0 or more
     */
    public abstract BrakePlan made(BrakePlan plan, double amount);

    /**
     * The largest that leaves a plan, in its unit.
     *
     * @param pathEnd where the line ends, m
     */
    public abstract double largest(BrakePlan plan, double pathEnd);

    /** The largest that a sheet looks at. */
    double farthest(BrakePlan plan, double pathEnd) {
        return Math.min(most, largest(plan, pathEnd));
    }

    /** The same plan with the brake off elsewhere; off at once where that is before the release point. */
    static BrakePlan ending(BrakePlan plan, double end) {
        Release release = plan.release();
        return plan.with(new Release(release.shape(), Math.min(release.start(), end), end));
    }
}
