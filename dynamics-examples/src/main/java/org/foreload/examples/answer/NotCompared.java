package org.foreload.examples.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.foreload.comparison.Alignment;
import org.foreload.comparison.Comparison;
import org.foreload.comparison.CornerGap;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.recording.MeasuredLap;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;

/** Says what of two laps is not compared. */
final class NotCompared {

    private NotCompared() {}

    /** Share of a lap that is compared from which nothing need be said of the rest. */
    private static final double WHOLE = 0.95;

    /** Which part of the laps is compared, and which corners are not: nothing where that is all. */
    static List<String> sentences(MeasuredLap mine, MeasuredLap theirs, Comparison comparison) {
        List<String> sentences = new ArrayList<>();
        double first = mine.run().last() - mine.run().first();
        double second = theirs.run().last() - theirs.run().first();
        double compared = comparison.end() - comparison.start();
        if (compared < WHOLE * Math.max(first, second)) {
            sentences.add("Compared are the " + metres(compared) + " that both have driven, of " + metres(first)
                    + " of the first and " + metres(second) + " of the reference.");
        }
        if (comparison.alignment().basis() == Alignment.Basis.SPEED) {
            return sentences;
        }
        Alignment alignment = comparison.alignment();
        List<String> apart = new ArrayList<>();
        apart.addAll(apart(
                comparison,
                mine,
                comparison.corners().stream().map(CornerGap::first),
                alignment::placeOfFirst,
                " of the first"));
        apart.addAll(apart(
                comparison,
                theirs,
                comparison.corners().stream().map(CornerGap::second),
                alignment::placeOfSecond,
                " of the reference"));
        if (!apart.isEmpty()) {
            sentences.add("Only one lap has these corners whole: "
                    + String.join(", ", apart) + ", counted along its own lap. They are not compared; gap there: "
                    + Numbers.rounded(comparison.elsewhere(), 2) + " s.");
        }
        return sentences;
    }

    private static String metres(double distance) {
        return Numbers.rounded(distance, 0) + " m";
    }

    /** Corners of one lap that the other has not, and that begin on the road that is compared. */
    private static List<String> apart(
            Comparison comparison,
            MeasuredLap lap,
            Stream<RecordedCorner> common,
            DoubleUnaryOperator place,
            String whose) {
        List<RecordedCorner> both = common.toList();
        return lap.corners().stream()
                .filter(corner -> !both.contains(corner))
                .filter(corner -> {
                    double end = place.applyAsDouble(corner.bend().end());
                    double turnIn =
                            place.applyAsDouble(corner.get(Measure.TURN_IN).value());
                    double on = corner.get(Measure.BRAKE_ON).value();
                    double first = corner.braked() ? Math.min(turnIn, place.applyAsDouble(on)) : turnIn;
                    return end > comparison.start() && first < comparison.end();
                })
                .map(corner -> "corner " + corner.bend().number() + whose)
                .toList();
    }
}
