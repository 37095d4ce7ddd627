package org.foreload.examples.gallery;

import org.foreload.entry.Outcome;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.load.Wheel;

/** Marks and inks that mean the same in every picture. */
final class Marks {

    static final Style BRAKE_POINT = Style.points(Ink.VERMILION, Marker.DISC);
    static final Style RELEASE_POINT = Style.points(Ink.VERMILION, Marker.DIAMOND);
    static final Style BRAKE_OFF = Style.points(Ink.VERMILION, Marker.SQUARE);
    static final Style PICK_UP = Style.points(Ink.GREEN, Marker.VEE);
    static final Style TURN_IN = Style.points(Ink.BLACK, Marker.TRIANGLE);
    static final Style APEX = Style.points(Ink.BLACK, Marker.RING);
    static final Style SLOWEST = Style.points(Ink.BLACK, Marker.BOX);
    static final Style BEST = Style.points(Ink.BLACK, Marker.STAR);
    static final Style TOO_LITTLE_MARGIN = Style.points(Ink.GREY, Marker.VEE);
    static final Style TOO_SLOW = Style.points(Ink.GREY, Marker.DISC);

    /** What a release is called that makes the corner, but not with the margin asked for. */
    static final String NARROW = "made it, too little margin";

    private Marks() {}

    /** Blue in front and vermilion behind, as the axles; each wheel with a line of its own. */
    static Style of(Wheel wheel) {
        return switch (wheel) {
            case FRONT_LEFT -> new Style(Ink.BLUE, Dash.SOLID, Marker.NONE);
            case FRONT_RIGHT -> new Style(Ink.BLUE, Dash.DOTTED, Marker.NONE);
            case REAR_LEFT -> new Style(Ink.VERMILION, Dash.DASHED, Marker.NONE);
            case REAR_RIGHT -> new Style(Ink.VERMILION, Dash.DASH_DOT, Marker.NONE);
        };
    }

    /** How an entry ended that did not make the corner. */
    static Style failed(Outcome outcome) {
        return Style.points(
                Ink.BLACK,
                switch (outcome) {
                    case RAN_WIDE -> Marker.CROSS;
                    case SPUN -> Marker.PLUS;
                    case LOCKED_UP -> Marker.BAR;
                    case ROLLED_OVER -> Marker.HOURGLASS;
                    default -> Marker.VEE;
                });
    }

    /** A place over the steps of a plan: its mark, joined by a line. */
    static Style joined(Style mark, Dash dash) {
        return new Style(mark.ink(), dash, mark.marker());
    }
}
