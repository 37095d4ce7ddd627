package org.foreload.examples.command;

import java.util.List;
import java.util.stream.IntStream;
import org.foreload.braking.BrakePlan;
import org.foreload.braking.PedalDisturbance;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.EntryAnswer;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.gallery.PedalPictures;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.output.Report;
import org.foreload.examples.picture.Picture;
import org.foreload.file.InputException;
import org.foreload.pedal.PitchResponse;
import org.foreload.pedal.Smoothness;
import org.foreload.strategy.CornerStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What an unsteady foot costs. */
@Command(
        name = "smoothness",
        sortOptions = false,
        description = {
            "What a hesitation or a ripple on the brake pedal costs: how far the load on the front wheels swings, how much "
                    + "grip that loses, how far the car leaves its line, and the time lost.",
            "",
            "A car's body pitches on its springs, so an unsteady foot at the wrong frequency shakes the load on the front "
                    + "wheels. The table of frequencies shows where."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the ripple is half the swing of the front axle load. The front grip lost is the largest share of the "
                    + "front axle's cornering force that is missing at any place between turn-in and brake off. The gain is its size over that of a very slow "
                    + "ripple, in a straight line: its peak is the resonance of a steady ripple; after a single jab the load "
                    + "swings at the damped frequency, which is a little higher.",
            "",
            "Example:  foreload smoothness --kind hesitation --size 0.5 --start 2 --duration 0.4 --demo-car road",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class SmoothnessVerb extends ReportVerb implements Driving {

    /** What disturbs the pedal. */
    enum Kind {
        /** One dip. */
        HESITATION,
        /** Steady swings. */
        RIPPLE
    }

    private static final int MOST_FREQUENCIES = 1000;

    @Option(
            names = "--kind",
            paramLabel = "<name>",
            defaultValue = "ripple",
            completionCandidates = Candidates.Kinds.class,
            description = "ripple or hesitation. Default: ${DEFAULT-VALUE}.")
    private String kindName;

    @Option(
            names = "--size",
            paramLabel = "<share>",
            defaultValue = "0.1",
            description =
                    "Swing of the ripple to each side, or depth of the hesitation, as a share of the brake force, 0 "
                            + "to 1. Default: ${DEFAULT-VALUE}.")
    private double size;

    @Option(
            names = "--frequency",
            paramLabel = "<Hz>",
            description =
                    "Frequency of the ripple, Hz. Default: the resonance of the car's pitching, or " + FALLBACK + ".")
    private Double frequency;

    @Option(
            names = "--start",
            paramLabel = "<s>",
            defaultValue = "1.5",
            description = "When the hesitation starts, s after the brake point. Default: ${DEFAULT-VALUE}.")
    private double start;

    @Option(
            names = "--duration",
            paramLabel = "<s>",
            defaultValue = "0.4",
            description = "How long the hesitation lasts, s. Default: ${DEFAULT-VALUE}.")
    private double duration;

    @Option(
            names = "--lowest",
            paramLabel = "<Hz>",
            defaultValue = "0.5",
            description = "First frequency of the list, Hz. Default: ${DEFAULT-VALUE}.")
    private double lowest;

    @Option(
            names = "--highest",
            paramLabel = "<Hz>",
            defaultValue = "5",
            description = "Last frequency of the list, Hz. Default: ${DEFAULT-VALUE}.")
    private double highest;

    @Option(
            names = "--frequencies",
            paramLabel = "<count>",
            defaultValue = "8",
            description = "How many frequencies, 2 or more. Default: ${DEFAULT-VALUE}.")
    private int frequencies;

    @Mixin
    private PlanOptions planOptions;

    @Mixin
    private FootOptions footOptions;

    @Mixin
    private SweepOptions sweepOptions;

    @Mixin
    private PlaceOptions placeOptions;

    @Spec
    private CommandSpec spec;

    @Override
    public boolean brief() {
        return true;
    }

    @Override
    Report report(Console console) {
        check();
        planOptions.check();
        sweepOptions.check();
        return placeOptions.ask(console, planOptions::study, study -> report(console, study));
    }

    private Report report(Console console, CornerStudy study) {
        PitchResponse pitch = PitchResponse.of(study.simulator().car());
        double resonance = pitch.expectedResonance();
        double rippled = frequency != null ? frequency : Double.isNaN(resonance) ? FALLBACK : resonance;
        Options.positive("--frequency", rippled, "Hz");
        boolean ripple = kindName.equals(Choices.word(Kind.RIPPLE));
        PedalDisturbance disturbance = ripple
                ? new PedalDisturbance.Ripple(size, rippled)
                : new PedalDisturbance.Hesitation(start, duration, size);
        BrakePlan plan = planOptions.plan(study);
        EntrySimulator simulator = footOptions.simulator(study);
        EntryResult calm = simulator.run(plan);
        Smoothness smoothness = Smoothness.of(simulator, calm, disturbance);
        List<Ripple> ripples = ripples(console, simulator, calm);
        common().picture().draw(() -> picture(study, smoothness, foot(ripple, rippled), ripples));
        Report report = new Report(EntryAnswer.title(study))
                .with("release", planOptions.part(plan))
                .with("kind", kindName)
                .with("size", size)
                .with("frequency_hz", ripple ? rippled : Double.NaN)
                .with("outcome_calm", calm.outcome().words())
                .with("outcome", smoothness.disturbed().outcome().words())
                .with("front_load_ripple_n", smoothness.frontLoadRipple())
                .with("front_grip_lost", smoothness.frontGripLost())
                .with("distance_off_line_m", smoothness.distanceOffLine())
                .with("time_lost_s", smoothness.timeLost())
                .with("pitch_resonance_hz", resonance)
                .with("measured_resonance_hz", pitch.resonance(lowest, highest))
                .with("damped_pitch_frequency_hz", pitch.expectedRing())
                .with(
                        "rows",
                        "The same ripple at other frequencies",
                        ripples.stream().map(one -> row(pitch, one)).toList());
        return report.note(note(pitch)).note(Handover.CAUTION);
    }

    /** What the foot does, for the picture. */
    private String foot(boolean ripple, double hertz) {
        String percent = Numbers.rounded(100 * size, 0) + " %";
        return ripple
                ? "A ripple of the brake by " + percent + " up and down at " + Numbers.rounded(hertz, 2) + " Hz"
                : "A hesitation of " + percent + " for " + Numbers.rounded(duration, 2) + " s, "
                        + Numbers.rounded(start, 2) + " s after the brake point,";
    }

    private void check() {
        if (!kindName.equals(Choices.word(Kind.RIPPLE)) && !kindName.equals(Choices.word(Kind.HESITATION))) {
            throw new InputException(null, "--kind", kindName, "must be one of ripple, hesitation");
        }
        if (kindName.equals(Choices.word(Kind.RIPPLE))) {
            GivenOptions.refuse(spec, "with --kind ripple", "--start", "--duration");
        } else {
            GivenOptions.refuse(spec, "with --kind hesitation", "--frequency");
        }
        Options.within("--size", size, 0, 1, "");
        Options.notNegative("--start", start, "s");
        Options.positive("--duration", duration, "s");
        Options.positive("--lowest", lowest, "Hz");
        if (!(highest > lowest)) {
            throw new InputException(null, "--highest", Numbers.shortest(highest), "must be above --lowest");
        }
        Options.within("--frequencies", frequencies, 2, MOST_FREQUENCIES, "");
    }

    /** What a ripple of one frequency, Hz, does. */
    private record Ripple(double frequency, Smoothness effect) {}

    private static Picture picture(CornerStudy study, Smoothness smoothness, String foot, List<Ripple> ripples) {
        return PedalPictures.smoothness(
                study,
                smoothness,
                foot,
                ripples.stream().mapToDouble(Ripple::frequency).toArray(),
                ripples.stream()
                        .mapToDouble(one -> one.effect().frontLoadRipple())
                        .toArray());
    }

    private List<Ripple> ripples(Console console, EntrySimulator simulator, EntryResult calm) {
        double ratio = Math.pow(highest / lowest, 1.0 / (frequencies - 1));
        List<Double> list = IntStream.range(0, frequencies)
                .mapToObj(i -> lowest * Math.pow(ratio, i))
                .toList();
        return sweepOptions
                .run(console, "entries", sweep -> sweep.run(list, one -> ripple(simulator, calm, one)))
                .stream()
                .flatMap(row -> row.stream())
                .toList();
    }

    private Ripple ripple(EntrySimulator simulator, EntryResult calm, double one) {
        return new Ripple(one, Smoothness.of(simulator, calm, new PedalDisturbance.Ripple(size, one)));
    }

    private static Report row(PitchResponse pitch, Ripple ripple) {
        Smoothness at = ripple.effect();
        return new Report()
                .with("frequency_hz", ripple.frequency())
                .with("gain", pitch.gain(ripple.frequency()))
                .with("front_load_ripple_n", at.frontLoadRipple())
                .with("front_grip_lost", at.frontGripLost())
                .with("distance_off_line_m", at.distanceOffLine())
                .with("time_lost_s", at.timeLost())
                .with("outcome", at.disturbed().outcome().words());
    }

    private static String note(PitchResponse pitch) {
        return Double.isNaN(pitch.expectedResonance())
                ? "This car's body is rigid, or damped so well that it amplifies no ripple much."
                : "A foot that ripples at " + Numbers.rounded(pitch.expectedResonance(), 2)
                        + " Hz shakes the front load most, " + Numbers.rounded(pitch.gain(pitch.expectedResonance()), 2)
                        + " times as much as a slow one.";
    }

    /** Frequency, Hz, for a car without resonance. */
    private static final double FALLBACK = 2;
}
