package org.foreload.recording;

/**
 * What is measured in a corner. Stations are metres along the run, lengths metres, speeds m/s, decelerations m/s²,
 * positive when slowing.
 */
public enum Measure {
    /** Where the foot comes down on the brake. */
    BRAKE_ON("brake_on_m", Kind.STATION),
    /** Greatest deceleration, m/s². */
    PEAK_DECELERATION("peak_deceleration_mps2", Kind.OTHER),
    /** Where the brake is first eased for good: the start of the release. */
    FIRST_EASE("first_ease_m", Kind.STATION),
    /** Where the foot is off the brake. */
    RELEASE_END("release_end_m", Kind.STATION),
    /** Where the curvature of the course leaves zero. */
    TURN_IN("turn_in_m", Kind.STATION),
    /** Middle of the stretch where the course is tightest. */
    APEX("apex_m", Kind.STATION),
    /** Where speed is lowest. */
    SLOWEST("slowest_m", Kind.STATION),
    /** Lowest speed. */
    MINIMUM_SPEED("minimum_speed_mps", Kind.SPEED),
    /** Speed at turn-in. */
    TURN_IN_SPEED("turn_in_speed_mps", Kind.SPEED),
    /** Where the foot begins to ask for the throttle that is open once the brake is off. */
    PICK_UP("pick_up_m", Kind.STATION),
    /** How far the brake is carried past turn-in, m; zero if it is off by then. */
    TRAIL_LENGTH("trail_length_m", Kind.LENGTH),
    /** For how long it is, s. */
    TRAIL_TIME("trail_time_s", Kind.OTHER),
    /** Speed shed after turn-in over all speed shed between the brake point and the slowest point. */
    TRAIL_SHARE("trail_share", Kind.SHARE),
    /** Root mean square difference between the release and the nearest shape, over the peak of the brake. */
    SHAPE_ERROR("shape_error", Kind.NOT_NEGATIVE),
    /** How often the brake is pressed again before it is off. */
    REAPPLICATIONS("reapplications", Kind.COUNT),
    /**
     * Root mean square, over the peak of the brake, of what the brake wavers about the nearest shape beyond its noise.
     */
    RIPPLE("ripple", Kind.NOT_NEGATIVE),
    /**
     * Mean of the combined acceleration between turn-in and apex, over the greatest that the driver reaches in the run
     * (its {@value CornerMeter#HARDEST} quantile where the car is worked).
     */
    COMBINED_USE("combined_use", Kind.NOT_NEGATIVE);

    /** How an error of distance shows in a measure. */
    enum Kind {
        STATION,
        LENGTH,
        SPEED,
        SHARE,
        NOT_NEGATIVE,
        COUNT,
        OTHER
    }

    private final String field;
    private final Kind kind;

    Measure(String field, Kind kind) {
        this.field = field;
        this.kind = kind;
    }

    /** Name in files, with its unit. */
    public String field() {
        return field;
    }

    Kind kind() {
        return kind;
    }
}
