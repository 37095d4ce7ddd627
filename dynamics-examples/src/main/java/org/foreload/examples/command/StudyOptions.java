package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.List;
import org.foreload.driver.DriverSettings;
import org.foreload.entry.SimulationSettings;
import org.foreload.examples.output.Numbers;
import org.foreload.path.Corner;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.InHand;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How an entry is simulated, and the margin with which it must make the corner. */
final class StudyOptions {

    @Option(
            names = "--build-up-time",
            paramLabel = "<s>",
            defaultValue = "${bundle:default.build-up-time}",
            description =
                    "Time in which the foot builds up to the peak, s; the search for the best release also tries longer ones "
                            + "where the line still bends at the brake point. Default: ${DEFAULT-VALUE}.")
    private double buildUpTime;

    @Option(
            names = "--drift",
            paramLabel = "<m>",
            defaultValue = "${bundle:default.drift}",
            description = "Margin: farthest that the car may be off its line, m. Default: ${DEFAULT-VALUE}.")
    private double drift;

    @Option(
            names = "--edge-margin",
            paramLabel = "<m>",
            defaultValue = "${bundle:default.edge-margin}",
            description = "Margin: least distance to the edge of the track, m. Default: ${DEFAULT-VALUE}.")
    private double edge;

    @Option(
            names = "--front-margin",
            paramLabel = "<share>",
            defaultValue = "${bundle:default.front-margin}",
            description =
                    "Margin: share of its grip that the front axle must keep on the way in, up to the pick-up or the apex, 0 to 1. Default: ${DEFAULT-VALUE}.")
    private double front;

    @Option(
            names = "--rear-margin",
            paramLabel = "<share>",
            defaultValue = "${bundle:default.rear-margin}",
            description = "Margin: the same for the rear axle. Default: ${DEFAULT-VALUE}.")
    private double rear;

    @Option(
            names = "--in-hand",
            paramLabel = "<m>",
            defaultValue = "${bundle:default.in-hand}",
            description = {
                "Margin: the error that the plan must forgive, m: the car still makes the corner with the brake point that much "
                        + "later, or the whole release, or the peak 2.5 %% harder for each metre. Default: ${DEFAULT-VALUE}."
            })
    private double inHand;

    @Option(
            names = "--no-margin",
            description = "Nothing in hand: only the drift counts. The quickest of all, at the very limit of the car.")
    private boolean noMargin;

    @Option(
            names = "--tolerance",
            paramLabel = "<share>",
            defaultValue = "${bundle:default.tolerance}",
            description =
                    "Relative accuracy of the integrator, 1e-13 to 1e-4: smaller is finer and slower. Default: ${DEFAULT-VALUE}.")
    private double tolerance;

    private static final double FINEST = 1e-13;

    /**
     * All nine demo pairs keep their brake point within 0.1 m up to here; at 3e-4 two move by half a metre or more, at
     * 1e-3 two find none, and at 1e-2 one cannot be followed.
     */
    private static final double COARSEST = 1e-4;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec verb;

    /** Refuses what cannot be, before anything is computed. */
    void check() {
        if (noMargin) {
            GivenOptions.refuse(
                    verb, "with --no-margin", "--edge-margin", "--front-margin", "--rear-margin", "--in-hand");
        }
        Options.within("--build-up-time", buildUpTime, 0, 10, "s");
        Options.positive("--drift", drift, "m");
        Options.notNegative("--edge-margin", edge, "m");
        Options.within("--front-margin", front, 0, 1, "");
        Options.within("--rear-margin", rear, 0, 1, "");
        Options.within("--in-hand", inHand, 0, InHand.MOST, "m");
        Options.within("--tolerance", tolerance, FINEST, COARSEST, "");
    }

    /** Whether nothing is to be in hand. */
    boolean noMargin() {
        return noMargin;
    }

    double buildUpTime() {
        return buildUpTime;
    }

    /** The study of a car and a corner. */
    CornerStudy study(Car car, Corner corner) {
        SimulationSettings settings = new SimulationSettings(tolerance, SimulationSettings.STANDARD.sampling());
        Allowance allowance =
                noMargin ? new Allowance(drift, 0, 0, 0, 0) : new Allowance(drift, edge, front, rear, inHand);
        return CornerStudy.of(car, corner, DriverSettings.practised(), settings, allowance);
    }

    /** All of it that changes results, each a name or {@code name=value}. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        words.add("build-up-time=" + Numbers.shortest(buildUpTime));
        words.add("drift=" + Numbers.shortest(drift));
        if (noMargin) {
            words.add("no-margin");
        } else {
            words.add("edge-margin=" + Numbers.shortest(edge));
            words.add("front-margin=" + Numbers.shortest(front));
            words.add("rear-margin=" + Numbers.shortest(rear));
            words.add("in-hand=" + Numbers.shortest(inHand));
        }
        words.add("tolerance=" + Numbers.shortest(tolerance));
        return words;
    }
}
