package org.foreload.examples.program;

import static org.foreload.examples.program.Story.say;

import java.util.List;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.strategy.CornerStudy;
import org.foreload.vehicle.Car;

/** What happens when the same brake is held for too long: does the front give way, or the rear? */
public final class TooMuch {

    /** Front share of the brake force with which the rear wheels are braked too much. */
    static final double REARWARD = 0.62;

    private TooMuch() {}

    /**
     * Three entries from the same brake point.
     *
     * @param right the brake eased off in good time
     * @param held the same brake, held for too long
     * @param heldRearward the same, with more of the brake force on the rear wheels
     */
    record Entries(EntryResult right, EntryResult held, EntryResult heldRearward) {}

    static Entries entries() {
        Car car = Demos.car("car", "light").value();
        CornerStudy study = CornerStudy.of(car, Demos.corner("corner", "medium").value());
        double apex = study.simulator().apex();
        Release eased = new Release(ReleaseShapes.PROGRESSIVE, 0, 0.7 * apex);
        EntryResult right =
                study.latest(Braking.of(0.8 * study.lockLimit(), 0.25, eased)).entry();
        BrakePlan plan = right.plan();
        Release late = new Release(ReleaseShapes.HELD, 0.4 * apex, 0.9 * apex);
        BrakePlan holding =
                Braking.of(plan.peakDeceleration(), plan.buildUpTime(), late).from(plan.brakePoint());
        CornerStudy rearward =
                study.with(car.withFrontBrakeShare(REARWARD), study.simulator().driver());
        return new Entries(
                right, study.simulator().run(holding), rearward.simulator().run(holding));
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        Entries entries = entries();
        BrakePlan plan = entries.right().plan();
        say(
                "%s in %s.",
                Demos.car("car", "light").value().name(),
                Demos.corner("corner", "medium").value().name());
        say(
                "Brake point %.1f m before turn-in, peak %.2f m/s², brake off %.1f m after turn-in.",
                -plan.brakePoint(), plan.peakDeceleration(), plan.release().end());
        say("%nEased off steadily from turn-in on:  %s", told(entries.right()));
        say("The same brake, held longer:         %s", told(entries.held()));
        say("Held, with more brake on the rear:   %s", told(entries.heldRearward()));
        say("%nAt turn-in the tyres have most of their grip to give to the brake. Each metre further on they "
                + "need more of it for cornering. A brake that is held then asks for more than there is. The brake balance "
                + "decides which axle gives way first: a locked front wheel no longer steers, and the car goes straight on; "
                + "a locked rear wheel no longer holds the tail, and the car spins.");

        XyChart brake = chart(entries, "brake_mps2", Axis.of("brake", "m/s²"));
        XyChart slip = chart(
                entries, "sideslip_deg", Axis.of("sideslip of the car", "°").between(-60, 30));
        XyChart off = chart(entries, "offset_m", Axis.of("left of the line", "m"));
        String caption =
                "The brake comes off early or late from the same brake point. Held too long, the front wheels lock and the "
                        + "car leaves its line; with more brake on the rear it spins.";
        Story.draw(
                args,
                Picture.of(
                        "The same brake, held too long",
                        caption,
                        ChartStack.of(brake.tall(230), slip.tall(180), off.tall(190))));
    }

    private static XyChart chart(Entries entries, String column, Axis upwards) {
        XyChart chart = XyChart.of(Axis.of("distance from turn-in", "m").between(-20, 70), upwards);
        List<EntryResult> all = List.of(entries.right(), entries.held(), entries.heldRearward());
        List<String> names = List.of("eased off in time", "held", "held, more on the rear");
        List<Style> styles = List.of(Style.FIRST, Style.SECOND, Style.FOURTH);
        for (int i = 0; i < all.size(); i++) {
            chart = chart.line(
                    column.startsWith("brake") ? names.get(i) : "",
                    all.get(i).profile().orElseThrow(),
                    "s_m",
                    column,
                    styles.get(i));
        }
        return chart.markX(0, "turn-in");
    }

    private static String told(EntryResult entry) {
        String time =
                Double.isNaN(entry.time()) ? "" : String.format(java.util.Locale.ROOT, " in %.2f s", entry.time());
        return entry.outcome().words() + time + (entry.made() ? "" : "; " + entry.cause());
    }
}
