package org.foreload.examples.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.foreload.collocation.Progress;
import org.foreload.examples.answer.LimitAnswer;
import org.foreload.examples.answer.LinesAnswer;
import org.foreload.examples.gallery.LimitPictures;
import org.foreload.examples.gallery.LinePictures;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.ShownProgress;
import org.foreload.file.DecimalText;
import org.foreload.file.InputException;
import org.foreload.limit.Band;
import org.foreload.limit.Hands;
import org.foreload.limit.Limit;
import org.foreload.limit.LimitOptions;
import org.foreload.limit.LimitResult;
import org.foreload.line.LineRun;
import org.foreload.line.LineStudy;
import org.foreload.line.RoadLine;
import org.foreload.path.Corner;
import org.foreload.vehicle.Car;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The quickest that perfect hands and feet could drive a corner. */
@Command(
        name = "limit",
        sortOptions = false,
        description = {
            "The quickest that perfect hands and feet could drive a car through a corner, with all its lags: near the line, "
                    + "or anywhere on the road.",
            "",
            "In 'ideal' load, tyres and pedals respond at once; here they take their time, and the car may choose its path "
                    + "within the band. No driver does better close to this path; a quite different one may be quicker still."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: stations are metres along the line, 0 at turn-in. The time lost to lags is against the ideal on "
                    + "the same path. The optimality is the greatest residual of the conditions of an optimum; 'converged' "
                    + "says whether they hold. Near the line, the wheel is held straight until 15 m before turn-in: free "
                    + "hands would weave to scrub off speed. Grip used includes what braking takes. Rolling over bounds the "
                    + "car as it ends an entry; with anti-lock brakes the foot may ask for more than the tyres give. The "
                    + "drive has no traction control.",
            "",
            "Example:  foreload limit --band track --demo-corner medium --demo-car light",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class LimitVerb extends ReportVerb implements Driving {

    private static final String LINE_OUT = "--line-out";

    /** Band, m, of one who keeps to the line. */
    private static final double ON_LINE = 0.15;

    @Option(
            names = "--band",
            paramLabel = "<m|track>",
            defaultValue = "0.15",
            description =
                    "How far the car may be from the line to each side, 0.05 to 100 m; or 'track': anywhere on the road, "
                            + "with its whole width. Default: ${DEFAULT-VALUE}.")
    private String band;

    @Option(
            names = "--axle-share",
            paramLabel = "<share>",
            defaultValue = "0.985",
            description =
                    "Share of its lateral peak that an axle may use, 0.5 to 0.995. Above 0.985 no hands could drive the "
                            + "answer. Default: ${DEFAULT-VALUE}.")
    private double axleShare;

    @Option(
            names = "--peak-deceleration",
            paramLabel = "<m/s²>",
            description = "Peak deceleration, brake force over mass, m/s². Default: a little below what "
                    + "locks a wheel in a straight line; with anti-lock brakes, what has all wheels held back.")
    private Double peakDeceleration;

    @Option(
            names = "--build-up",
            paramLabel = "<s>",
            defaultValue = "0.25",
            description = "Time in which the foot builds up to the peak, s. Default: ${DEFAULT-VALUE}.")
    private double buildUp;

    @Option(
            names = "--intervals",
            paramLabel = "<n>",
            defaultValue = "${bundle:default.intervals}",
            description = "Intervals along the line, 50 to 1000: more are finer and slower. Default: ${DEFAULT-VALUE}.")
    private int intervals;

    @Option(
            names = "--lines",
            description =
                    "Also drive a line of constant radius, one with a late apex, the given one and the quickest that is found, "
                            + "each with the brake trailed and with straight-line braking. Takes about half a minute.")
    private boolean lines;

    @Option(
            names = LINE_OUT,
            paramLabel = "<file>",
            description =
                    "Also write the driven line as a corner into this file, which ends with .json, and its points into one "
                            + "beside it that ends with .csv: '--corner FILE' drives there.")
    private Path lineOut;

    @Option(
            names = "--sideslip",
            paramLabel = "<deg>",
            description = "Let the car slide no further than this, sideslip at the CG. Left out: as far as it pays.")
    private Double sideslip;

    @Mixin
    private PlaceOptions placeOptions;

    @Override
    public boolean brief() {
        return !lines;
    }

    @Override
    Report report(Console console) {
        Options.within("--axle-share", axleShare, 0.5, 0.995, "");
        Options.positive("--build-up", buildUp, "s");
        Options.within("--intervals", intervals, 50, 1000, "");
        if (sideslip != null) {
            Options.within("--sideslip", sideslip, 0.5, 45, "deg");
        }
        if (peakDeceleration != null) {
            Options.positive("--peak-deceleration", peakDeceleration, "m/s²");
        }
        return placeOptions.ask(console, (car, corner) -> report(console, car, corner));
    }

    private Report report(Console console, Car car, Corner corner) {
        Band where = where();
        double peak = peakDeceleration == null ? Limit.peakDeceleration(car, corner) : peakDeceleration;
        Hands usual = Hands.practised(peak);
        Hands hands = new Hands(
                usual.steeringRate(),
                usual.brakeLag(),
                usual.throttleLag(),
                buildUp,
                peak,
                axleShare,
                Double.POSITIVE_INFINITY,
                sideslip == null ? Double.POSITIVE_INFINITY : Math.toRadians(sideslip));
        LimitOptions options =
                new LimitOptions(intervals, LimitOptions.STANDARD.tolerance(), LimitOptions.STANDARD.mostSteps());
        Optional<LineFile> file = Optional.ofNullable(lineOut).map(place -> LineFile.at(LINE_OUT, place));
        LimitResult result = where instanceof Band.Road
                ? solved(console, car, corner, hands, options)
                : solve(console, car, corner, where, hands, options);
        file.ifPresent(place -> place.write(corner, RoadLine.driven(corner.path(), result)));
        LimitAnswer answer = LimitAnswer.of(car, corner, where, hands.mostSideslip(), result);
        if (where instanceof Band.Road) {
            LimitResult onLine = solve(console, car, corner, Band.within(ON_LINE), hands, options);
            LimitResult straight = solved(console, car, corner, hands.withBrakeUntil(0), options);
            answer = answer.beside(onLine, straight);
        }
        LimitAnswer shown = answer;
        if (lines) {
            LinesAnswer compared = lines(console, car, corner, hands, options);
            common().picture().draw(() -> LinePictures.of(car, corner, compared.trailed()));
            return compared.add(answer.report());
        }
        common().picture().draw(() -> LimitPictures.of(car, corner, shown.runs()));
        return answer.report();
    }

    /** The quickest line that is found from several starts. */
    private LimitResult solved(Console console, Car car, Corner corner, Hands hands, LimitOptions options) {
        try (ShownProgress progress = console.progress("steps")) {
            return new LineStudy(car, corner, hands, options, LimitBeside.watcher(progress, options))
                    .quickest()
                    .result();
        }
    }

    private LinesAnswer lines(Console console, Car car, Corner corner, Hands hands, LimitOptions options) {
        try (ShownProgress progress = console.progress("steps")) {
            Progress watcher = LimitBeside.watcher(progress, options);
            return new LinesAnswer(
                    runs(new LineStudy(car, corner, hands, options, watcher)),
                    runs(new LineStudy(car, corner, hands.withBrakeUntil(0), options, watcher)));
        }
    }

    private static List<LineRun> runs(LineStudy study) {
        return List.of(study.constantRadius(), study.lateApex(), study.given(), study.quickest());
    }

    private LimitResult solve(Console console, Car car, Corner corner, Band where, Hands hands, LimitOptions options) {
        try (ShownProgress progress = console.progress("steps")) {
            return Limit.solve(car, corner, where, hands, options, LimitBeside.watcher(progress, options));
        }
    }

    private Band where() {
        if (band.equals("track")) {
            return Band.road();
        }
        double metres = DecimalText.parse(band);
        if (!(metres >= 0.05 && metres <= 100)) {
            throw new InputException(null, "--band", band, "must be a number from 0.05 to 100 in m, or track");
        }
        return Band.within(metres);
    }
}
