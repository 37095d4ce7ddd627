package org.foreload.examples.recording;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.foreload.recording.Channel;

/** What a column of a logger's file may hold: the channels of a run, a place on the globe, and the lap. */
public enum Quantity {
    /** Time of the logger. */
    TIME(
            Channel.TIME,
            "s",
            "time( ?stamp)?|t|((session|run|log(ger)?|elapsed|total|gps|gnss|utc) )time|elapsed|time (since|from) start|"
                    + "timestamp|seconds|(lauf)?zeit|temps",
            "",
            "lap ?time|time (in|of) lap|clock( time)?|time of day|utc|uhrzeit",
            ""),
    /** Distance along the run or the lap. */
    DISTANCE(
            Channel.DISTANCE,
            "m",
            "((lap|run|gps|gnss|total|session) )?dist(ance)?( (gps|gnss|lap|in lap|travell?ed|covered))?|s|odometer|"
                    + "distanz|(weg)?strecke"),
    /** Speed over ground. */
    SPEED(
            Channel.SPEED,
            "m/s",
            "((gps|gnss|vehicle|car|ground|road) )?(speed|velocity|vel)( (gps|gnss|vehicle|car|over ground))?|"
                    + "v( ?(gps|gnss|car|vehicle))?|(gps|gnss) v|sog|(fahr)?geschwindigkeit|vitesse"),
    /** What the foot does to the brake; of two circuits the front one. */
    BRAKE(
            Channel.BRAKE,
            "",
            "((front|f|p|pressure) ){0,2}(brakes?|brk)( ?(line|pedal|pressure|press|pres|force|travel|position|pos|"
                    + "switch|light|status|on|p|front|frt|f)){0,4}|p ?(brakes?|brk)( (front|frt|f))?|"
                    + "brems(e|druck|pedal)( (vorn|va))?|(pression )?frein( avant)?",
            "(p|press|pressure) ?(front|frt|f|vorn|va)|(front|frt|f) (p|press|pressure)",
            "((rear|r|p|pressure) ){0,2}(brakes?|brk)( ?(line|pressure|press|pres|force|p|rear|r)){1,4}|"
                    + "p ?(brakes?|brk) (rear|r)|bremsdruck (hinten|ha)|(pression )?frein arri(è|e)re",
            "(p|press|pressure) ?(rear|r|hinten|ha)|(rear|r) (p|press|pressure)"),
    /** What the foot does to the throttle. */
    THROTTLE(
            Channel.THROTTLE,
            "",
            "throttle( ?(position|pos|pedal|angle|opening|valve)){0,2}|accelerator|(accelerator|accel|acc|gas)( "
                    + "?(pedal|position|pos)){1,2}|gas|drive|tps|aps|gaspedal|drosselklappe"),
    /** Steering. */
    STEERING(
            Channel.STEERING,
            "rad",
            "steer(ing|ed)?( ?(wheel )?(angle|ang|position|pos))?|steering wheel|swa|hand ?wheel angle|"
                    + "lenk(rad)?winkel"),
    /** Acceleration along the car. */
    LONGITUDINAL(
            Channel.LONGITUDINAL,
            "m/s2",
            "a ?x|g ?x|acc(el(eration|erometer)?)? ?x|x ?acc(el(eration)?)?|(long(itudinal)?|inline) ?(acc(el(eration)?)?"
                    + "|g|g ?force)|acc(el(eration)?)? ?(long(itudinal)?|inline)|g ?(force )?(long(itudinal)?|x)|"
                    + "deceleration|l(ä|ae)ngsbeschl(eunigung)?",
            "long(itudinal)?|inline|x",
            "",
            ""),
    /** Acceleration across the car. */
    LATERAL(
            Channel.LATERAL,
            "m/s2",
            "a ?y|g ?y|acc(el(eration|erometer)?)? ?y|y ?acc(el(eration)?)?|lat(eral)? ?(acc(el(eration)?)?|g|g ?force)|"
                    + "acc(el(eration)?)? ?lat(eral)?|g ?(force )?(lat(eral)?|y)|querbeschl(eunigung)?",
            "lat(eral)?|cornering|y",
            "",
            ""),
    /** Yaw rate. */
    YAW_RATE(
            Channel.YAW_RATE,
            "rad/s",
            "yaw ?(rate|velocity|speed)|gyro(scope)? ?(z|yaw)|rate ?z|z ?(gyro|rate)|gier(rate|geschwindigkeit)",
            "yaw|gyro(scope)?",
            "",
            ""),
    /** Position in a plane. */
    X(Channel.X, "m", "x|pos(ition)? ?x|x ?pos(ition)?|easting|east"),
    /** Position in a plane. */
    Y(Channel.Y, "m", "y|pos(ition)? ?y|y ?pos(ition)?|northing|north"),
    /** Geographic latitude. */
    LATITUDE(null, "deg", "((gps|gnss|pos(ition)?) )?lat(itude)?( (gps|gnss))?|breitengrad"),
    /** Geographic longitude. */
    LONGITUDE(null, "deg", "((gps|gnss|pos(ition)?) )?(lon|lng|long)(gitude)?( (gps|gnss))?|l(ä|ae)ngengrad"),
    /** Number of the lap. */
    LAP(null, "", "lap( ?(number|no|num|nr|counter|count|index|id))?|laps|runde(nnummer)?|tour");

    /** How well a header fits: by its name alone, by name and unit together, or for want of a better one. */
    enum Fit {
        NONE,
        FOR_WANT_OF_BETTER,
        WITH_UNIT,
        NAMED
    }

    private final Channel channel;
    private final String unit;
    private final Pattern names;
    private final Pattern namesWithUnit;
    private final Pattern others;
    private final Pattern othersWithUnit;

    Quantity(Channel channel, String unit, String names) {
        this(channel, unit, names, "", "", "");
    }

    /**
     * @param names that are enough by themselves
     * @param namesWithUnit that are enough if a unit of the quantity stands with them
     * @param others that are taken where there is none of the first two
     * @param othersWithUnit the same if a unit stands with them
     */
    Quantity(Channel channel, String unit, String names, String namesWithUnit, String others, String othersWithUnit) {
        this.channel = channel;
        this.unit = unit;
        this.names = Pattern.compile(names);
        this.namesWithUnit = Pattern.compile(namesWithUnit);
        this.others = Pattern.compile(others);
        this.othersWithUnit = Pattern.compile(othersWithUnit);
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

    /**
     * How well a header fits.
     *
     * @param plain the header less its unit, in small letters and with blanks for all else
     * @param unit a unit of this quantity, or empty
     */
    Fit fit(String plain, String unit) {
        if (plain.isEmpty()) {
            return Fit.NONE;
        }
        if (names.matcher(plain).matches()) {
            return Fit.NAMED;
        }
        if (!unit.isEmpty() && namesWithUnit.matcher(plain).matches()) {
            return Fit.WITH_UNIT;
        }
        boolean other = others.matcher(plain).matches()
                || !unit.isEmpty() && othersWithUnit.matcher(plain).matches();
        return other ? Fit.FOR_WANT_OF_BETTER : Fit.NONE;
    }

    /** The quantity of a channel. */
    public static Quantity of(Channel channel) {
        return valueOf(channel.name());
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
