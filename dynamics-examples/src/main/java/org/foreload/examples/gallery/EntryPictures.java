package org.foreload.examples.gallery;

import java.util.Arrays;
import java.util.List;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.Outcome;
import org.foreload.examples.answer.Words;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Panel;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.Style.Dash;
import org.foreload.examples.picture.Style.Ink;
import org.foreload.examples.picture.Style.Marker;
import org.foreload.examples.picture.XyChart;
import org.foreload.gap.LossToLimit;
import org.foreload.gap.TimeSplit;
import org.foreload.load.Wheel;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;

/** One simulated entry, seen from all sides. Entries need their profile. */
public final class EntryPictures {

    private static final double KILO = 1e-3;
    private static final double PERCENT = 100;
    private static final Axis DISTANCE = Axis.of("distance along the line, 0 at turn-in", "m");

    private EntryPictures() {}

    /** Plan, course, wheel loads and friction of an entry, in one picture. */
    public static Picture of(CornerStudy study, EntryResult entry) {
        return new Picture(
                "One entry: " + Say.where(study),
                Say.how(entry) + " The shaded ribbon is as wide as the brake is hard. " + loads(study, entry) + " "
                        + friction(entry),
                entry.outcome() == Outcome.SPUN
                        ? List.of(
                                List.of(planPanel(study, entry)),
                                List.of(coursePanel(study, entry)),
                                List.of(spinPanel(study, entry)),
                                List.of(loadPanel(study, entry), ellipsePanel(study, entry)))
                        : List.of(
                                List.of(planPanel(study, entry)),
                                List.of(coursePanel(study, entry)),
                                List.of(loadPanel(study, entry), ellipsePanel(study, entry))));
    }

    /** The corner from above, the line driven, and the brake along it. */
    public static Picture plan(CornerStudy study, EntryResult entry) {
        return Picture.of(
                "The corner from above: " + Say.where(study),
                Say.how(entry) + " The shaded ribbon is as wide as the brake is hard.",
                planPanel(study, entry));
    }

    /** Deceleration, speed, and grip use of both axles over distance. */
    public static Picture course(CornerStudy study, EntryResult entry) {
        return Picture.of(
                "The entry along the line: " + Say.where(study),
                Say.how(entry) + " " + friction(entry),
                coursePanel(study, entry));
    }

    /** Load on the four wheels over distance. */
    public static Picture wheelLoads(CornerStudy study, EntryResult entry) {
        return Picture.of("Load on the four wheels: " + Say.where(study), loads(study, entry), loadPanel(study, entry));
    }

    /** The way of both axles through the friction ellipse. */
    public static Picture ellipse(CornerStudy study, EntryResult entry) {
        return Picture.of("Friction used: " + Say.where(study), friction(entry), ellipsePanel(study, entry));
    }

    /** Time gained on another entry along the line. */
    public static Picture gap(CornerStudy study, EntryResult entry, EntryResult other) {
        TimeSplit split =
                TimeSplit.between(study.simulator().car(), study.simulator().apex(), entry, other);
        return Picture.of(
                "Where the time is gained: " + Say.where(study), split.sentence(), gapPanel(study, entry, split));
    }

    static XyChart planPanel(CornerStudy study, EntryResult entry) {
        return PlanView.of(
                study.simulator().corner().path(), entry, study.simulator().apex());
    }

    static Panel coursePanel(CornerStudy study, EntryResult entry) {
        Stretch part = Stretch.of(entry, study.simulator().apex());
        double[] s = part.stations();
        XyChart deceleration = XyChart.of(DISTANCE, Axis.of("deceleration", "m/s²"))
                .line("the car", s, part.column("deceleration_mps2"), Style.FIRST)
                .line("asked of the brakes", s, part.column("brake_mps2"), Style.SECOND)
                .tall(190);
        XyChart speed = XyChart.of(DISTANCE, Axis.of("speed", "m/s"))
                .line("", s, part.column("speed_mps"), Style.FIRST)
                .tall(120);
        XyChart use = XyChart.of(DISTANCE, Axis.of("grip used", "%").between(0, Double.NaN))
                .line("front axle", s, Say.times(PERCENT, part.column("front_utilisation")), Style.FIRST)
                .line("rear axle", s, Say.times(PERCENT, part.column("rear_utilisation")), Style.SECOND)
                .markY(PERCENT, "limit")
                .tall(190);
        return ChartStack.of(
                marked(deceleration, study, entry), marked(speed, study, entry), marked(use, study, entry));
    }

    /** Steering and sideslip of an entry that spins, and where it does. */
    private static Panel spinPanel(CornerStudy study, EntryResult entry) {
        Stretch part = Stretch.of(entry, study.simulator().apex());
        double[] s = part.stations();
        XyChart steer = XyChart.of(DISTANCE, Axis.of("steer, left positive", "°"))
                .heading("How it spins")
                .line("", s, part.column("steer_deg"), Style.FIRST)
                .tall(170);
        XyChart sideslip = XyChart.of(DISTANCE, Axis.of("sideslip, left positive", "°"))
                .line("", s, part.column("sideslip_deg"), Style.FIRST)
                .tall(190);
        for (EntryEvent event : entry.events()) {
            if (event.kind() == EntryEvent.Kind.SPIN) {
                steer = steer.markX(event.station(), "spin");
                sideslip = sideslip.markX(event.station(), "spin");
            }
        }
        return ChartStack.of(marked(steer, study, entry), marked(sideslip, study, entry));
    }

    /** The places of the plan and of the corner. */
    static XyChart marked(XyChart chart, CornerStudy study, EntryResult entry) {
        XyChart more = chart;
        if (entry.braked()) {
            more = more.markX(entry.plan().brakePoint(), "brake point");
            if (!Words.atOnce(entry.plan()) && !Words.intoRelease(entry.plan())) {
                more = more.markX(entry.plan().release().start(), "release point");
            }
            more = more.markX(entry.plan().release().end(), "brake off");
            if (Double.isFinite(entry.pickUp())) {
                more = more.markX(entry.pickUp(), "pick-up");
            }
        }
        more = more.markX(0, "turn-in");
        for (double apex : study.apexes()) {
            more = more.markX(apex, "apex");
        }
        return more;
    }

    static XyChart loadPanel(CornerStudy study, EntryResult entry) {
        Stretch part = Stretch.of(entry, study.simulator().apex());
        double[] s = part.stations();
        XyChart chart = XyChart.of(
                        Axis.of("distance, 0 at turn-in", "m"),
                        Axis.of("load", "kN").between(0, Double.NaN))
                .heading("Load on each wheel")
                .line("front left", s, Say.times(KILO, part.column("front_left_load_n")), Marks.of(Wheel.FRONT_LEFT))
                .line("front right", s, Say.times(KILO, part.column("front_right_load_n")), Marks.of(Wheel.FRONT_RIGHT))
                .line("rear left", s, Say.times(KILO, part.column("rear_left_load_n")), Marks.of(Wheel.REAR_LEFT))
                .line("rear right", s, Say.times(KILO, part.column("rear_right_load_n")), Marks.of(Wheel.REAR_RIGHT))
                .markX(0, "turn-in")
                .tall(380);
        return entry.braked() ? chart.markX(entry.plan().release().end(), "brake off") : chart;
    }

    static XyChart ellipsePanel(CornerStudy study, EntryResult entry) {
        FrictionPath front = FrictionPath.of(
                study.simulator().car(), entry, study.simulator().apex(), true);
        FrictionPath rear = FrictionPath.of(
                study.simulator().car(), entry, study.simulator().apex(), false);
        double[] x = new double[CIRCLE + 1];
        double[] y = new double[CIRCLE + 1];
        for (int i = 0; i <= CIRCLE; i++) {
            x[i] = PERCENT * Math.cos(2 * Math.PI * i / CIRCLE);
            y[i] = PERCENT * Math.sin(2 * Math.PI * i / CIRCLE);
        }
        XyChart chart = XyChart.of(
                        Axis.of("cornering, share of grip, left positive", "%").toTheLeft(),
                        Axis.of("driving above, braking below", "%"))
                .heading("Friction used, brake point to apex")
                .line("limit", x, y, Style.AIDE)
                .line("front axle", front.lateral(), front.longitudinal(), Style.FIRST)
                .line("rear axle", rear.lateral(), rear.longitudinal(), Style.SECOND)
                .equal()
                .tall(380);
        int at = front.indexOf(0);
        return at < 0
                ? chart
                : chart.line(
                                "turn-in",
                                new double[] {front.lateral()[at]},
                                new double[] {front.longitudinal()[at]},
                                Marks.TURN_IN)
                        .line(
                                "",
                                new double[] {rear.lateral()[at]},
                                new double[] {rear.longitudinal()[at]},
                                Marks.TURN_IN);
    }

    private static final int CIRCLE = 96;

    static XyChart gapPanel(CornerStudy study, EntryResult entry, TimeSplit split) {
        Trace curve = split.curve();
        XyChart chart = XyChart.of(DISTANCE, Axis.of("time ahead", "s"))
                .heading("Where the time is gained")
                .line("", curve, "s_m", "gap_s", new Style(Ink.BLUE, Dash.SOLID, Marker.NONE))
                .markY(0, "")
                .tall(230);
        return marked(chart, study, entry);
    }

    static XyChart lossPanel(CornerStudy study, EntryResult entry, LossToLimit loss) {
        XyChart chart = XyChart.of(DISTANCE, Axis.of("time lost", "s"))
                .heading("Time lost to perfect hands and feet")
                .line("", loss.curve(), "s_m", "lost_s", new Style(Ink.BLUE, Dash.SOLID, Marker.NONE))
                .markY(0, "")
                .tall(230);
        return marked(chart, study, entry);
    }

    private static String friction(EntryResult entry) {
        Trace trace = entry.profile().orElseThrow();
        int front = fullest(trace, "front_utilisation");
        int rear = fullest(trace, "rear_utilisation");
        return Say.of(
                "Most grip used: front axle %.0f %% at %.0f m, rear axle %.0f %% at %.0f m.",
                PERCENT * trace.column("front_utilisation").at(front),
                trace.column("s_m").at(front),
                PERCENT * trace.column("rear_utilisation").at(rear),
                trace.column("s_m").at(rear));
    }

    private static String loads(CornerStudy study, EntryResult entry) {
        Stretch part = Stretch.of(entry, study.simulator().apex());
        double[] front = part.column("front_axle_load_n");
        double[] speed = part.column("speed_mps");
        if (front.length == 0 || speed.length == 0) {
            return "";
        }
        double most = Arrays.stream(front).max().orElse(0);
        return Say.of(
                "Braking moves load forward: the front axle carries %.2f kN before and up to %.2f kN (%+.0f %%).",
                KILO * front[0], KILO * most, PERCENT * (most / front[0] - 1));
    }

    private static int fullest(Trace trace, String column) {
        var values = trace.column(column);
        int most = 0;
        for (int i = 1; i < values.size(); i++) {
            most = values.at(i) > values.at(most) ? i : most;
        }
        return most;
    }
}
