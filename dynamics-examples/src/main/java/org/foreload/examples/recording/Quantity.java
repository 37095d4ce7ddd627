package org.foreload.examples.recording;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.foreload.recording.Channel;

/** What a column of a logger's file may hold: the channels of a run, a place on the globe, and the lap. */
public enum Quantity {
    /** Time of the logger. */
    TIME(Channel.TIME, "s", "time( ?stamp)?|t|elapsed( time)?|timestamp|seconds|zeit|temps"),
    /** Distance along the run or the lap. */
    DISTANCE(Channel.DISTANCE, "m", "(lap )?dist(ance)?|s|odometer|distanz|strecke"),
    /** Speed over ground. */
    SPEED(
            Channel.SPEED,
            "m/s",
            "((gps|gnss|vehicle|car|ground) )?(speed|velocity|vel)|v|geschwindigkeit|vitesse|speed over ground"),
    /** What the foot does to the brake. */
    BRAKE(
            Channel.BRAKE,
            "",
            "brakes?( (front|f))?( ?(pressure|press|force|pedal|pos|position|switch|p|on))?( (front|f))?|p ?brake|"
                    + "(front )?brake (pressure|press)|bremse|bremsdruck|frein"),
    /** What the foot does to the throttle. */
    THROTTLE(
            Channel.THROTTLE,
            "",
            "throttle( ?(pos|position|pedal))?|accelerator( ?(pedal|pos|position))?|gas|drive|tps|gaspedal"),
    /** Steering. */
    STEERING(Channel.STEERING, "rad", "steer(ing)?( ?(wheel )?(angle|ang|pos|position))?|lenkwinkel"),
    /** Acceleration along the car. */
    LONGITUDINAL(
            Channel.LONGITUDINAL,
            "m/s2",
            "a ?x|acc(el(eration)?)? ?x|x ?acc(el(eration)?)?|(long(itudinal)?|inline) ?(acc(el(eration)?)?|g)|"
                    + "acc(el(eration)?)? ?(long(itudinal)?|inline)|g ?long|deceleration|l(ä|ae)ngsbeschl(eunigung)?"),
    /** Acceleration across the car. */
    LATERAL(
            Channel.LATERAL,
            "m/s2",
            "a ?y|acc(el(eration)?)? ?y|y ?acc(el(eration)?)?|lat(eral)? ?(acc(el(eration)?)?|g)|"
                    + "acc(el(eration)?)? ?lat(eral)?|g ?lat|querbeschl(eunigung)?"),
    /** Yaw rate. */
    YAW_RATE(Channel.YAW_RATE, "rad/s", "yaw ?rate|yaw ?velocity|gyro ?z|rate ?z|gierrate"),
    /** Position in a plane. */
    X(Channel.X, "m", "x|pos(ition)? ?x|x ?pos(ition)?|easting|east"),
    /** Position in a plane. */
    Y(Channel.Y, "m", "y|pos(ition)? ?y|y ?pos(ition)?|northing|north"),
    /** Geographic latitude. */
    LATITUDE(null, "deg", "((gps|gnss) )?lat(itude)?"),
    /** Geographic longitude. */
    LONGITUDE(null, "deg", "((gps|gnss) )?(lon|lng|long)(gitude)?"),
    /** Number of the lap. */
    LAP(null, "", "lap( ?(number|no|count|nr))?|runde|tour");

    private final Channel channel;
    private final String unit;
    private final Pattern names;

    Quantity(Channel channel, String unit, String names) {
        this.channel = channel;
        this.unit = unit;
        this.names = Pattern.compile(names);
    }

    /** Name on the command line and in answers: {@code yaw-rate}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The channel, if it is one. */
    Optional<Channel> channel() {
        return Optional.ofNullable(channel);
    }

    /** Unit in which it is kept. */
    String unit() {
        return unit;
    }

    /** Whether a header, less its unit, in small letters and with blanks for all else, may be this. */
    boolean named(String plain) {
        return names.matcher(plain).matches();
    }

    /** The quantity of a word. */
    static Optional<Quantity> of(String word) {
        for (Quantity quantity : values()) {
            if (quantity.word().equals(word)) {
                return Optional.of(quantity);
            }
        }
        return Optional.empty();
    }
}
