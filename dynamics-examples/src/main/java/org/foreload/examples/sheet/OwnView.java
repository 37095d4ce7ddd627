package org.foreload.examples.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.foreload.advice.DriverScatter;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.examples.gallery.OwnPanels;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.picture.PanelSvg;
import org.foreload.recording.Estimate;
import org.foreload.recording.Measure;
import org.foreload.recording.RecordedCorner;
import org.foreload.recording.Run;
import org.foreload.risk.Scatter;

/**
 * What the template shows of a driver's own entry beside the plan.
 *
 * @param sentences what differs most, and how far the comparison holds
 * @param rows number by number
 * @param svg brake, deceleration and speed of both over the corner's axis
 */
public record OwnView(List<String> sentences, List<Row> rows, String svg) {

    private static final int CHART = 700;

    /** Metres shown before the earlier brake point and after the last of apex, brake off and slowest point. */
    private static final double BEFORE = 20;

    private static final double AFTER = 30;

    /** Difference of the approach speeds, m/s, from which the plan's brake point is not this driver's. */
    private static final double SAME_APPROACH = 0.5;

    /**
     * One number of both.
     *
     * @param name what, with its unit
     * @param own the driver's, with half the interval that holds the true one nine times in ten
     * @param plan the plan's
     * @param apart what lies between them, in words
     * @param said the same in whole metres, km/h or mph, as a driver can see it; empty where that is nothing
     * @param ownValue the driver's, in SI units
     * @param planValue the plan's, in SI units
     * @param field name for programs; the number counts from turn-in where it is a place
     */
    public record Row(
            String name,
            String own,
            String plan,
            String apart,
            String said,
            double ownValue,
            double planValue,
            String field) {}

    /** Copies the lists. */
    public OwnView {
        sentences = List.copyOf(sentences);
        rows = List.copyOf(rows);
    }

    /** The view of an entry beside the plan of a sheet. */
    public static OwnView of(Sheet sheet, OwnEntry own) {
        EntryResult plan = sheet.plan().entry();
        double apex = sheet.study().simulator().apex();
        Units units = sheet.request().units();
        List<Row> rows = rows(own, plan, units);
        RecordedCorner did = own.corner();
        double off = did.get(Measure.RELEASE_END).value() - own.turnIn();
        double slowest = did.get(Measure.SLOWEST).value() - own.turnIn();
        double from =
                Math.min(plan.plan().brakePoint(), did.get(Measure.BRAKE_ON).value() - own.turnIn()) - BEFORE;
        double to = Math.max(
                        Math.max(apex, plan.minimumSpeedAt()),
                        Math.max(Math.max(off, slowest), plan.plan().release().end()))
                + AFTER;
        double start = sheet.study().simulator().corner().path().start();
        double end = sheet.study().simulator().corner().path().end();
        String svg = PanelSvg.of(
                OwnPanels.of(
                        own.lap().run(), own.turnIn(), plan, apex, Math.max(from, start), Math.min(to, end), units),
                CHART,
                "own",
                "Brake, deceleration and speed of your own entry and of the plan along the line");
        return new OwnView(sentences(own, plan, rows, units), rows, svg);
    }

    private static List<Row> rows(OwnEntry own, EntryResult plan, Units units) {
        RecordedCorner did = own.corner();
        Run run = own.lap().run();
        var release = plan.plan().release();
        List<Row> rows = new ArrayList<>();
        rows.add(place("brake point, m", own, Measure.BRAKE_ON, plan.plan().brakePoint()));
        rows.add(place("release point, m", own, Measure.FIRST_EASE, release.start()));
        rows.add(place("brake off, m", own, Measure.RELEASE_END, release.end()));
        rows.add(place("slowest point, m", own, Measure.SLOWEST, plan.minimumSpeedAt()));
        rows.add(place("pick-up, m", own, Measure.PICK_UP, plan.pickUp()));
        Estimate peak = did.get(Measure.PEAK_DECELERATION);
        double hardest = Arrays.stream(
                        plan.profile().orElseThrow().column("deceleration_mps2").values())
                .max()
                .orElse(Double.NaN);
        rows.add(row(
                "greatest deceleration, m/s²",
                peak,
                1,
                hardest,
                1,
                "harder",
                "less hard",
                " m/s²",
                Measure.PEAK_DECELERATION.field()));
        Estimate measured = did.get(Measure.TURN_IN_SPEED);
        Estimate atTurnIn = Estimate.around(run.speedAt(own.turnIn()), (measured.high() - measured.low()) / 2);
        rows.add(speed("speed at turn-in, ", atTurnIn, plan.turnInSpeed(), Measure.TURN_IN_SPEED.field(), units));
        rows.add(speed(
                "lowest speed, ",
                did.get(Measure.MINIMUM_SPEED),
                plan.minimumSpeed(),
                Measure.MINIMUM_SPEED.field(),
                units));
        rows.add(row(
                "slowing done while turning, %",
                did.get(Measure.TRAIL_SHARE),
                100,
                plan.trailShare(),
                1,
                "more",
                "less",
                " points",
                Measure.TRAIL_SHARE.field()));
        rows.add(new Row(
                "release shape",
                did.shape().map(shape -> shape.name()).orElse("–"),
                release.shape().name(),
                "",
                "",
                Double.NaN,
                Double.NaN,
                "shape"));
        time(own, plan).ifPresent(rows::add);
        return rows;
    }

    private static Row place(String name, OwnEntry own, Measure measure, double plan) {
        Estimate there = own.corner().besideTurnIn(measure);
        double moved = own.corner().get(Measure.TURN_IN).value() - own.turnIn();
        Estimate onAxis =
                new Estimate(there.value() + moved, there.low() + moved, there.high() + moved, there.coverage());
        return row(name, onAxis, 1, plan, 1, "later", "earlier", " m", measure.field());
    }

    private static Row speed(String name, Estimate own, double plan, String field, Units units) {
        String unit = units.speedUnit();
        return row(name + unit, own, units.ofSpeed(1), plan, 1, "faster", "slower", " " + unit, field);
    }

    private static Row row(
            String name,
            Estimate own,
            double factor,
            double plan,
            int decimals,
            String more,
            String less,
            String unit,
            String field) {
        double half = (own.high() - own.low()) / 2;
        String mine = own.known()
                ? Numbers.rounded(factor * own.value(), decimals) + " ± " + Numbers.rounded(factor * half, decimals)
                : "–";
        double difference = own.value() - plan;
        String apart = "–";
        String said = "";
        if (Double.isFinite(difference)) {
            double size = Math.abs(factor * difference);
            String which = unit + " " + (difference > 0 ? more : less);
            boolean seen = Math.abs(difference) > half;
            apart = seen ? Numbers.rounded(size, decimals) + which : "the same, as far as can be seen";
            String whole = Numbers.rounded(size, 0);
            said = seen && !whole.equals("0") ? whole + which : "";
        }
        return new Row(name, mine, shown(factor * plan, decimals), apart, said, own.value(), plan, field);
    }

    private static String shown(double value, int decimals) {
        return Double.isFinite(value) ? Numbers.rounded(value, decimals) : "–";
    }

    /** The time over the stretch that both have; nothing where that holds no corner. */
    private static Optional<Row> time(OwnEntry own, EntryResult plan) {
        double[] s = plan.profile().orElseThrow().column("s_m").values();
        double[] clock = plan.profile().orElseThrow().column("time_s").values();
        double from = Math.max(s[0], own.first());
        double to = Math.min(s[s.length - 1], own.last());
        boolean holds = from < Math.min(plan.plan().brakePoint(), 0) && to > plan.minimumSpeedAt();
        if (!holds) {
            return Optional.empty();
        }
        Run run = own.lap().run();
        double mine = run.timeAt(own.turnIn() + to) - run.timeAt(own.turnIn() + from);
        double planned = Speeds.between(s, clock, to) - Speeds.between(s, clock, from);
        String name = String.format(Locale.ROOT, "time from %.0f m to %.0f m, s", from, to);
        double lost = mine - planned;
        return Optional.of(new Row(
                name,
                Numbers.rounded(mine, 2),
                Numbers.rounded(planned, 2),
                Numbers.rounded(Math.abs(lost), 2) + " s " + (lost >= 0 ? "slower" : "quicker"),
                "",
                mine,
                planned,
                "time_s"));
    }

    private static List<String> sentences(OwnEntry own, EntryResult plan, List<Row> rows, Units units) {
        List<String> sentences = new ArrayList<>();
        int laps = own.chosen().all().size();
        sentences.add("Lap " + own.lap().number() + " of " + own.file()
                + (laps > 1 ? ", the quickest of " + laps + " laps" : "") + "; corner "
                + own.corner().bend().number() + " of " + own.lap().corners().size() + ".");
        sentences.add(differences(rows));
        approach(own, plan, units).ifPresent(sentences::add);
        scatter(own).ifPresent(sentences::add);
        sentences.add(
                "The two axes are laid on each other by curvature, good to " + Numbers.shortest(OwnEntry.AXIS_ERROR)
                        + " m; your line and the sheet's differ by " + Words.percent(own.unlike()) + " of the curvature"
                        + (own.unlike() > OwnEntry.LIKE
                                ? ": that is another corner or quite another line, and the comparison says little."
                                : "."));
        sentences.add(
                "The plan is made for the sheet's car on the sheet's line. If yours are different, read where you differ, "
                        + "not by how much.");
        return sentences;
    }

    private static String differences(List<Row> rows) {
        List<String> said = new ArrayList<>();
        for (Row row : rows) {
            String what = switch (row.field()) {
                case "brake_on_m" -> "you brake ";
                case "first_ease_m" -> "ease ";
                case "release_end_m" -> "are off the brake ";
                case "turn_in_speed_mps" -> "turn in ";
                case "minimum_speed_mps" -> "are at the slowest point ";
                default -> "";
            };
            if (!what.isEmpty() && !row.said().isEmpty()) {
                said.add(what + row.said());
            }
        }
        if (said.isEmpty()) {
            return "In brake point, release and speeds no difference from the plan can be seen.";
        }
        String text = String.join(", ", said) + ".";
        return "Compared with the plan, " + (text.startsWith("you") ? "" : "you ") + text;
    }

    private static Optional<String> approach(OwnEntry own, EntryResult plan, Units units) {
        double foot = plan.plan().brakePoint();
        // Where neither brakes yet.
        double before = Math.min(foot, own.corner().get(Measure.BRAKE_ON).value() - own.turnIn());
        double apart = own.lap().run().speedAt(own.turnIn() + before) - Handover.speedAt(plan, before);
        if (!(Math.abs(apart) > SAME_APPROACH)) {
            return Optional.empty();
        }
        return Optional.of("You come " + units.speedAlone(Math.abs(apart)) + " " + units.speedUnit() + " "
                + (apart > 0 ? "faster" : "slower")
                + " than the plan expects: its brake point is not for your speed"
                + (apart > 0 ? ", and too late for you." : "."));
    }

    private static Optional<String> scatter(OwnEntry own) {
        List<RecordedCorner> laps = own.everyLap();
        Scatter scatter = DriverScatter.of(own.corner(), laps).scatter();
        if (scatter.equals(Scatter.PRACTISED)) {
            return Optional.empty();
        }
        return Optional.of("Over " + laps.size() + " laps your brake point strays by "
                + Numbers.rounded(scatter.brakePoint(), 1) + " m and your brake off by "
                + Numbers.rounded(scatter.releaseTiming(), 1) + " m (standard deviations).");
    }
}
