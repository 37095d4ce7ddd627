package org.foreload.examples.program;

import static org.foreload.examples.program.Story.each;
import static org.foreload.examples.program.Story.evenly;
import static org.foreload.examples.program.Story.say;

import java.util.Locale;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.Braking;
import org.foreload.braking.PedalDisturbance.Ripple;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.picture.Axis;
import org.foreload.examples.picture.ChartStack;
import org.foreload.examples.picture.Picture;
import org.foreload.examples.picture.Style;
import org.foreload.examples.picture.XyChart;
import org.foreload.pedal.PitchResponse;
import org.foreload.pedal.Smoothness;
import org.foreload.strategy.CornerStudy;
import org.foreload.trace.Trace;
import org.foreload.vehicle.Car;

/** Why does smoothness matter: what does a foot that swings do to the front tyres? */
public final class SmoothFoot {

    /** Amplitude of the swing as a part of the brake. */
    static final double SIZE = 0.2;

    /** Distance, m, by which the car brakes earlier than it has to: an entry with something in hand. */
    static final double EARLIER = 10;

    private SmoothFoot() {}

    static Car car() {
        return Demos.car("car", "road").value();
    }

    static CornerStudy study() {
        return CornerStudy.of(car(), Demos.corner("corner", "medium").value());
    }

    /** A trailed entry that brakes at the last moment. */
    static BrakePlan latest(CornerStudy study) {
        Release release = new Release(
                ReleaseShapes.PROGRESSIVE, 0, 0.7 * study.simulator().apex());
        return study.latest(Braking.of(0.8 * study.lockLimit(), 0.25, release))
                .entry()
                .plan();
    }

    /**
     * Runs the program.
     *
     * @param args where to put the picture ({@code .svg} or {@code .png}); none is drawn where none is named
     */
    public static void main(String[] args) {
        CornerStudy study = study();
        BrakePlan last = latest(study);
        BrakePlan plan = last.withBrakePoint(last.brakePoint() - EARLIER);
        PitchResponse pitch = PitchResponse.of(car());
        double resonance = pitch.expectedResonance();
        say(
                "%s in %s, braked %.0f m before it has to; a foot that ripples by %.0f %%.",
                car().name(), study.simulator().corner().name(), EARLIER, 100 * SIZE);
        say("%n%-50s  front grip lost %%", "");
        say(
                "ripple Hz  load responds, times  front load ripple N  turn-in to brake off  how it ends  at the last moment");
        double lost = 0;
        for (double frequency : new double[] {0.5, resonance, 2.5, 5}) {
            Ripple swing = new Ripple(SIZE, frequency);
            Smoothness ripple = Smoothness.of(study.simulator(), plan, swing);
            EntryResult late = study.simulator().run(last.with(swing));
            // After a lock-up the car turns in at another speed: there is nothing to compare with.
            boolean made = ripple.disturbed().made();
            lost = made ? Math.max(lost, ripple.frontGripLost()) : lost;
            say(
                    "%9.2f  %20.2f  %19.0f  %20s  %11s  %s",
                    frequency,
                    pitch.gain(frequency),
                    ripple.frontLoadRipple(),
                    made ? String.format(Locale.ROOT, "%.1f", 100 * ripple.frontGripLost()) : "–",
                    ripple.disturbed().outcome().words(),
                    late.outcome().words());
        }
        say(
                "%nAt its highest the ripple asks for a fifth more brake. A slow ripple stays there long enough for a wheel to "
                        + "lock. The body pitches on its springs, and at %.2f Hz, its own rhythm, the front load moves %.2f times "
                        + "as far as the braking alone would move it. The load does not follow a quick foot at all: the brake asks "
                        + "for more, and the load that should carry it is not there. Even where the car makes the corner, the "
                        + "front loses up to %.0f %% of its grip for a moment while it turns in.",
                resonance, pitch.gain(resonance), 100 * lost);

        Smoothness worst = Smoothness.of(study.simulator(), plan, new Ripple(SIZE, resonance));
        Trace calm = worst.calm().profile().orElseThrow();
        Trace shaken = worst.disturbed().profile().orElseThrow();
        Axis along = Axis.of("distance from turn-in", "m")
                .between(plan.brakePoint() - 10, plan.release().end() + 20);
        XyChart brake = XyChart.of(along, Axis.of("brake", "m/s²"))
                .line("steady foot", calm, "s_m", "brake_mps2", Style.FIRST)
                .line(
                        String.format(Locale.ROOT, "foot that swings at %.2f Hz", resonance),
                        shaken,
                        "s_m",
                        "brake_mps2",
                        Style.SECOND)
                .markX(0, "turn-in")
                .tall(200);
        XyChart load = XyChart.of(along, Axis.of("front axle load", "N"))
                .line("", calm, "s_m", "front_axle_load_n", Style.FIRST)
                .line("", shaken, "s_m", "front_axle_load_n", Style.SECOND)
                .tall(200);
        double[] f = evenly(0.3, 6, 58);
        XyChart answer = XyChart.of(
                        Axis.of("frequency of the foot", "Hz"),
                        Axis.of("load over brake swing", "times").between(0, Double.NaN))
                .line("", f, each(f, pitch::gain), Style.FIRST)
                .markX(resonance, "resonance")
                .tall(240);
        String caption =
                "A foot that swings at the body's own frequency moves the front load further than its braking alone would.";
        Story.draw(args, Picture.of("Why smoothness matters", caption, ChartStack.of(brake, load), answer));
    }
}
