package org.foreload.recording;

import java.util.Objects;
import java.util.Optional;

/** What a column of a recording holds. Inside, every channel has one unit; axes follow ISO 8855. */
public enum Channel {
    /** Time of the logger, s. */
    TIME("time_s", "s"),
    /** Distance along the run, m. */
    DISTANCE("s_m", "m"),
    /** Speed over ground, m/s. */
    SPEED("speed_mps", "m/s"),
    /** What the foot does to the brake, in any unit that grows with it: pressure, force, per cent, on and off. */
    BRAKE("brake", ""),
    /** What the foot does to the throttle, in any unit that grows with it. */
    THROTTLE("throttle", ""),
    /** Steering, rad, positive to the left; at the hand wheel or at the road wheels. */
    STEERING("steering_rad", "rad"),
    /** Acceleration along the car, m/s², positive when it gains speed. */
    LONGITUDINAL("longitudinal_acceleration_mps2", "m/s²"),
    /** Acceleration across the car, m/s², positive to the left. */
    LATERAL("lateral_acceleration_mps2", "m/s²"),
    /** Yaw rate, rad/s, positive to the left. */
    YAW_RATE("yaw_rate_rad_per_s", "rad/s"),
    /** Position in a level plane, m; right-handed with {@link #Y} as seen from above. */
    X("x_m", "m"),
    /** Position in a level plane, m. */
    Y("y_m", "m");

    private final String field;
    private final String unit;

    Channel(String field, String unit) {
        this.field = field;
        this.unit = unit;
    }

    /** Name of the column, with its unit. */
    public String field() {
        return field;
    }

    /** The unit for people; empty for a plain number. */
    public String unit() {
        return unit;
    }

    /** The channel whose column has this name. */
    public static Optional<Channel> of(String field) {
        Objects.requireNonNull(field, "field");
        for (Channel channel : values()) {
            if (channel.field.equals(field)) {
                return Optional.of(channel);
            }
        }
        return Optional.empty();
    }
}
