package org.foreload.limit;

import org.foreload.conventions.Checks;

/** Where the car may go. */
public sealed interface Band permits Band.Within, Band.Road {

    /**
     * Near the line, and with the centre of gravity on the road, as an entry needs it.
     *
     * @param metres to each side, for the centre of gravity; less where the road ends before
     */
    static Band within(double metres) {
        return new Within(metres);
    }

    /** Anywhere on the road, with the whole width of the car. */
    static Band road() {
        return new Road();
    }

    /**
     * Near the line, and with the centre of gravity on the road, as an entry needs it.
     *
     * @param metres to each side, for the centre of gravity; less where the road ends before
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
