package org.foreload.limit;

import org.foreload.conventions.Checks;

/** Where the car may go. */
public sealed interface Band permits Band.Within, Band.Road {

    /**
     * Near the line.
     *
     * @param metres to each side, for the centre of gravity
     */
    static Band within(double metres) {
        return new Within(metres);
    }

    /** Anywhere on the road, with the whole width of the car. */
    static Band road() {
        return new Road();
    }

    /**
     * Near the line, and on the road.
     *
     * @param metres to each side, for the centre of gravity
     */
    record Within(double metres) implements Band {

        /** Checks the number; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
        public Within {
            Checks.within("band_m", metres, 0.01, 1000);
        }
    }

    /** Anywhere on the road. */
    record Road() implements Band {}
}
