package org.foreload.validation;

/** How a computed value must stand to the expected one. */
public enum Relation {
    /** As near as the budget says. */
    EQUAL("="),
    /** Not below it by more than the budget. */
    AT_LEAST("≥"),
    /** Not above it by more than the budget. */
    AT_MOST("≤");

    private final String sign;

    Relation(String sign) {
        this.sign = sign;
    }

    /** The sign that stands before the expected value. */
    public String sign() {
        return sign;
    }

    /** How far the computed value is from where it must be, zero or above; NaN if it is no number. */
    double error(double expected, double computed) {
        double difference = computed - expected;
        return switch (this) {
            case EQUAL -> Math.abs(difference);
            case AT_LEAST -> Double.isNaN(difference) ? Double.NaN : Math.max(0, -difference);
            case AT_MOST -> Double.isNaN(difference) ? Double.NaN : Math.max(0, difference);
        };
    }

    static Relation of(String sign) {
        for (Relation relation : values()) {
            if (relation.sign.equals(sign)) {
                return relation;
            }
        }
        throw new IllegalArgumentException("no relation " + sign);
    }
}
