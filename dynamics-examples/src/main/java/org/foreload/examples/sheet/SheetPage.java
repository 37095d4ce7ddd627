package org.foreload.examples.sheet;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.foreload.entry.EntryEvent;
import org.foreload.entry.EntryResult;
import org.foreload.entry.EntrySimulator;
import org.foreload.examples.answer.Handover;
import org.foreload.examples.answer.StepChanges;
import org.foreload.examples.answer.StepsAnswer;
import org.foreload.examples.answer.Units;
import org.foreload.examples.answer.Words;
import org.foreload.examples.gallery.ReleasePanels;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.sheet.Overdone.Course;
import org.foreload.examples.sheet.Overdone.Driven;
import org.foreload.path.Path;
import org.foreload.risk.PracticeSteps;
import org.foreload.risk.Risk;
import org.foreload.risk.Scatter;
import org.foreload.risk.TellTale;

/**
 * What the template shows. The same sheet gives the same page, byte for byte.
 *
 * @param car name of the car
 * @param corner name of the corner
 * @param css the style sheet
 * @param script the script
 * @param scriptHash of the script, the only one that the page lets run
 * @param summary what the plan is worth, sentence by sentence
 * @param releases one for each pair of places of the sliders
 * @param peaks the releases of each peak, softest first
 * @param rungs how many releases have the same peak
 * @param lastRung last place of the first slider, how deep
 * @param lastPeak last place of the second slider, how hard
 * @param plannedRung place of the plan on the first
 * @param plannedPeak and on the second
 * @param plannedSaid what the sliders say of the plan
 * @param locks whether wheels of the car can lock
 * @param overdone what goes wrong if overdone, and how it feels
 * @param risk how often the plan fails for the driver
 * @param steps practice steps in words; may be empty
 * @param shortOf why the steps end before the plan, or why there are none; empty where they reach it
 * @param own the driver's own entry beside the plan; at most one
 * @param practiceCaution what to mind when practising
 * @param caution what the whole sheet is, and is not
 * @param terms what the words mean
 * @param made with what it was made
 */
public record SheetPage(
        String car,
        String corner,
        String css,
        String script,
        String scriptHash,
        List<String> summary,
        List<ReleaseView> releases,
        List<PeakRows> peaks,
        int rungs,
        int lastRung,
        int lastPeak,
        int plannedRung,
        int plannedPeak,
        String plannedSaid,
        boolean locks,
        List<OverdoneRow> overdone,
        String risk,
        List<String> steps,
        String shortOf,
        List<OwnView> own,
        String practiceCaution,
        String caution,
        List<String> terms,
        String made) {

    /**
     * All releases of one peak.
     *
     * @param peak its place on the slider
     * @param planned whether it is that of the plan
     * @param words the peak
     * @param releases of that peak, the shallowest first
     */
    record PeakRows(int peak, boolean planned, String words, List<ReleaseView> releases) {}

    /**
     * One way to overdo it.
     *
     * @param way what is done otherwise
     * @param planned how it ends if all else is done as planned, whatever comes of it
     * @param tellTale how that feels
     * @param reacting how far a foot gets away with it that reacts
     */
    record OverdoneRow(String way, String planned, String tellTale, String reacting) {}

    /** The page of a sheet without a recording. */
    public static SheetPage of(Sheet sheet, String caution, String version) {
        return of(sheet, Optional.empty(), caution, version);
    }

    /**
     * The page of a sheet.
     *
     * @param sheet what is on it
     * @param own the driver's own entry beside the plan, where one was recorded
     * @param caution what the whole sheet is, and is not
     * @param version of the program
     */
    public static SheetPage of(Sheet sheet, Optional<OwnView> own, String caution, String version) {
        ReleasePanels panels = new ReleasePanels(
                sheet.study(),
                sheet.releases(),
                sheet.planned(),
                sheet.request().units());
        List<ReleaseView> releases = IntStream.range(0, sheet.releases().size())
                .mapToObj(i -> ReleaseView.of(sheet, panels, i))
                .toList();
        String script = resource("sheet.js");
        Practice practice = sheet.practice();
        return new SheetPage(
                sheet.study().simulator().car().name(),
                corner(sheet.study().simulator()),
                resource("sheet.css"),
                script,
                hash(script),
                summary(sheet),
                releases,
                peaks(sheet, releases),
                sheet.rungs(),
                sheet.rungs() - 1,
                releases.size() / sheet.rungs() - 1,
                sheet.planned() % sheet.rungs(),
                sheet.planned() / sheet.rungs(),
                releases.get(sheet.planned()).said(),
                !sheet.study().simulator().car().antiLock(),
                sheet.overdone().stream().map(one -> row(sheet, one)).toList(),
                risk(sheet, practice.plan()),
                practice.steps()
                        .map(steps -> steps(
                                steps, sheet.request().driver(), sheet.request().units()))
                        .orElse(List.of()),
                shortOf(sheet, practice.steps()),
                own.stream().toList(),
                StepsAnswer.CAUTION,
                caution,
                List.of(
                        Words.BRAKE_POINT,
                        Words.heldBack(sheet.study().simulator().car()).orElse(PEAK),
                        Words.TRAIL_SHARE,
                        Words.IN_HAND),
                made(sheet, version));
    }

    /** The corner, and how its road slopes at the apex where it does. */
    private static String corner(EntrySimulator simulator) {
        Path path = simulator.corner().path();
        double rise = 100 * Math.tan(path.grade(simulator.apex()));
        double banking = Math.toDegrees(path.banking(simulator.apex()));
        StringBuilder words = new StringBuilder(simulator.corner().name());
        if (Math.abs(rise) >= LEAST_SLOPE) {
            words.append(", ")
                    .append(Numbers.rounded(Math.abs(rise), 0))
                    .append(rise > 0 ? " % uphill" : " % downhill");
        }
        if (Math.abs(banking) >= LEAST_SLOPE) {
            boolean helps = banking * path.curvature(simulator.apex()) > 0;
            String by = Numbers.rounded(Math.abs(banking), 0) + "°";
            words.append(helps ? ", banked " + by : ", " + by + " off camber");
        }
        return words.toString();
    }

    /** Grade in per cent, or banking in degrees, from which on a driver is reminded of it. */
    private static final double LEAST_SLOPE = 1;

    private static List<PeakRows> peaks(Sheet sheet, List<ReleaseView> releases) {
        List<PeakRows> peaks = new ArrayList<>();
        for (int first = 0; first < releases.size(); first += sheet.rungs()) {
            int peak = first / sheet.rungs();
            peaks.add(new PeakRows(
                    peak,
                    peak == sheet.planned() / sheet.rungs(),
                    sheet.request()
                            .units()
                            .deceleration(
                                    sheet.releases().get(first).entry().plan().peakDeceleration()),
                    releases.subList(first, first + sheet.rungs())));
        }
        return peaks;
    }

    private static final String PEAK =
            "Peak: the most that the plan asks of the brakes alone. The greatest deceleration is "
                    + "what the car does, drag included; a brake that comes down inside the release, or eases before the foot "
                    + "has reached the peak, stays below it.";

    /** The page as HTML. */
    public String html() {
        Template template = Mustache.compiler()
                .withEscaper(text -> Escapers.HTML.escape(unbroken(text)))
                .compile(resource("sheet.html"));
        return template.execute(this);
    }

    /** A text in which no line ends between a number and its unit. */
    private static String unbroken(String text) {
        return NUMBER_AND_UNIT.matcher(text).replaceAll("$1\u00a0$2");
    }

    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("(\\d) ((?:m/s²|m/s|km/h|mph|kN|ms|m|s|g|N|%)(?![\\p{L}\\d/]))");

    private static List<String> summary(Sheet sheet) {
        EntryResult plan = sheet.plan().entry();
        String driver = sheet.request().driver().name();
        DriverPlan chosen = sheet.chosen();
        List<String> summary = new ArrayList<>();
        summary.add("The plan for a driver of this kind (" + driver + "): "
                + Words.brake(plan, sheet.request().units()) + ".");
        String gain = sheet.straight()
                .map(entry -> entry.time() == plan.time()
                        ? ", and is the quickest straight-line braking"
                        : ", " + Words.seconds(Math.abs(entry.time() - plan.time()))
                                + (entry.time() > plan.time() ? " quicker" : " slower")
                                + " than the quickest straight-line braking (" + Words.seconds(entry.time()) + ")")
                .orElse("");
        double bound = sheet.study().bound().time();
        summary.add(
                "It takes " + Words.seconds(plan.time()) + gain + "; the ideal bound is " + Words.seconds(bound) + ".");
        summary.addAll(sheet.handover().sentences(sheet.request().units()));
        summary.add(compared(sheet.tried(), sheet.request(), chosen));
        return summary;
    }

    /** The plan beside the quickest of all. */
    static String compared(int tried, SheetRequest request, DriverPlan chosen) {
        String accepted = Words.percent(request.accepted());
        if (chosen.isQuickest() && chosen.accepted()) {
            return "It is also the quickest of the " + tried + " releases that were tried.";
        }
        EntryResult quickest = chosen.quickest().entry();
        String fails = Words.percent(chosen.quickestRisk().failed().value());
        if (chosen.isQuickest()) {
            return "None of the " + tried + " releases that were tried keeps this driver within " + accepted
                    + " failures; this one, the quickest, fails least often. Begin with the practice steps.";
        }
        String plan = chosen.accepted()
                ? "This driver accepts " + accepted + " failures."
                : "No release that was tried keeps this driver within " + accepted
                        + " failures; the plan fails least often. Begin with the practice steps.";
        if (chosen.quickestAccepted(request.accepted())) {
            return "The quickest of the " + tried + " releases that were tried is less than "
                    + Words.seconds(Surroundings.QUICKER) + " quicker: no reason to change the plan.";
        }
        return "Not for this driver: the quickest of the " + tried + " releases that were tried takes "
                + Words.seconds(quickest.time()) + " and fails in " + fails + " of the entries ("
                + Words.brake(quickest, request.units()) + "). " + plan;
    }

    private static OverdoneRow row(Sheet sheet, Overdone one) {
        Course planned = one.asPlanned();
        EntryResult last = planned.last().entry();
        List<String> felt = new ArrayList<>();
        if (last.made()) {
            felt.add(one.mistake().felt());
        } else {
            felt.add(TellTale.of(last));
        }
        boolean told = last.wentFirst().equals(TellTale.firstLock(last));
        planned.locking()
                .filter(lock -> !told || lock != planned.last())
                .ifPresent(lock -> felt.add(locks(one, lock, felt)));
        return new OverdoneRow(
                one.mistake().words(),
                last.made()
                        ? "up to " + amount(one, planned.last()) + ": " + makes(sheet, planned.last())
                        : "by " + amount(one, planned.last()) + ": "
                                + last.outcome().words() + ": " + last.cause(),
                String.join("; ", felt),
                reacting(sheet, one, felt));
    }

    /** {@code makes it up to 17 m, 0.05 s quicker, then ran wide; from 12 m on, …}. */
    private static String reacting(Sheet sheet, Overdone one, List<String> felt) {
        Course course = one.reacting();
        EntryResult last = course.last().entry();
        StringBuilder words = new StringBuilder(course.made()
                .map(made -> "up to " + amount(one, made) + ": " + makes(sheet, made))
                .orElse("fails"));
        if (!last.made()) {
            words.append("; by ").append(amount(one, course.last())).append(": ");
            words.append(last.outcome().words());
        }
        course.locking().ifPresent(lock -> words.append("; ").append(locks(one, lock, felt)));
        return words.toString();
    }

    private static String amount(Overdone one, Driven driven) {
        return Numbers.shortest(driven.amount()) + " " + one.mistake().unit();
    }

    private static String makes(Sheet sheet, Driven driven) {
        double lost = driven.entry().time() - sheet.plan().entry().time();
        double off = driven.entry().farthestOffset();
        String wide = off > sheet.study().allowance().drift() ? ", " + Numbers.rounded(off, 1) + " m off its line" : "";
        return "makes it, " + Words.seconds(Math.abs(lost)) + (lost < 0 ? " quicker" : " slower") + wide;
    }

    /** {@code from 12 % on, 60 m before turn-in, a front wheel locks: …}, how that feels only where nothing says so. */
    private static String locks(Overdone one, Driven driven, List<String> felt) {
        EntryEvent lock = TellTale.firstLock(driven.entry()).orElseThrow();
        String feel = TellTale.ofLock(driven.entry()).orElseThrow();
        return "from " + amount(one, driven) + " on, " + Words.board(lock.station()) + ", "
                + (String.join("; ", felt).contains(feel) ? feel.substring(0, feel.indexOf(':')) : feel);
    }

    private static String risk(Sheet sheet, Risk risk) {
        return "The plan itself: "
                + Handover.failures(sheet.request().driver().name(), risk.failed())
                        .replaceFirst("^(A|An) ", "a ");
    }

    private static List<String> steps(PracticeSteps steps, Scatter driver, Units units) {
        List<String> words = new ArrayList<>();
        var now = steps.steps().get(0).risk();
        words.add("Now: " + Words.brake(now.plan(), units) + "; " + Words.seconds(now.meanTime()) + " on average, "
                + Words.percent(now.failed().value()) + " failures.");
        StepChanges changes = new StepChanges(steps.steps(), driver, units);
        List<PracticeSteps.Step> drivable = changes.drivable();
        for (int i = 1; i < drivable.size(); i++) {
            words.add(StepsAnswer.words(i, drivable, changes));
        }
        return words;
    }

    private static String shortOf(Sheet sheet, Optional<PracticeSteps> steps) {
        SheetRequest request = sheet.request();
        if (steps.isEmpty()) {
            return "No steps: with no brake point does straight-line braking keep this driver within "
                    + Words.percent(request.accepted()) + " failures. A steadier foot comes first.";
        }
        return steps.get().reached() < 1 ? StepsAnswer.shortOf(request.driver(), steps.get(), request.accepted()) : "";
    }

    private static String made(Sheet sheet, String version) {
        var allowance = sheet.study().allowance();
        return "Made with foreload " + version + ". Margin: at most " + Numbers.shortest(allowance.drift())
                + " m off the line, " + Numbers.shortest(allowance.edge()) + " m to the edge, "
                + Numbers.shortest(allowance.inHand()) + " m in hand, "
                + Words.percent(allowance.front()) + " and " + Words.percent(allowance.rear())
                + " of the friction of front and rear axle kept.";
    }

    private static String hash(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static String resource(String name) {
        try (InputStream stream = SheetPage.class.getResourceAsStream(name)) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
