package org.foreload.examples.learn;

import com.samskivert.mustache.Mustache;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.foreload.examples.output.Numbers;
import org.foreload.grip.GripUse;
import org.foreload.vehicle.Car;

/**
 * What the template of the learner's first page shows. The same car gives the same page, byte for byte.
 *
 * @param car name of the car
 * @param speed m/s, as text
 * @param lateral lateral acceleration, m/s², as text
 * @param hardest greatest deceleration of the slider, m/s², as text
 * @param css the style sheet
 * @param script the script
 * @param scriptHash of the script, the only one that the page lets run
 * @param table what the script interpolates, as JSON
 * @param sliders the four sliders
 * @param setting where they stand, in words
 * @param frontSaid what the front axle does there
 * @param rearSaid what the rear axle does there
 * @param tries what to try
 * @param rows of the table of numbers
 * @param exact how exact the page is
 * @param model what the model leaves out
 * @param caution what the page is, and is not
 * @param made with what it was made
 */
public record GripPage(
        String car,
        String speed,
        String lateral,
        String hardest,
        String css,
        String script,
        String scriptHash,
        String table,
        List<Slider> sliders,
        String setting,
        String frontSaid,
        String rearSaid,
        List<Try> tries,
        List<Row> rows,
        String exact,
        String model,
        String caution,
        String made) {

    /** How many settings the interpolation is measured at: some tenths of a second's work. */
    private static final int MEASURED = 400;

    /** Seed of those settings; any would do. */
    private static final long SEED = 20;

    /** Deceleration at which the page opens, m/s²: above d* of the demo cars, so that there is something to see. */
    private static final double START = 2;

    /**
     * One slider.
     *
     * @param id of the element
     * @param label what it turns
     * @param low smallest value
     * @param high largest value
     * @param step between two values
     * @param start value at first
     * @param unit after the shown number
     * @param digits decimals of the shown number
     * @param times factor from the value to the shown number
     * @param said the start as shown
     */
    record Slider(
            String id,
            String label,
            String low,
            String high,
            String step,
            String start,
            String unit,
            int digits,
            int times,
            String said) {

        static Slider of(
                int index, String id, String label, String step, double start, String unit, int digits, int times) {
            double[] nodes = GripTable.NODES[index];
            return new Slider(
                    id,
                    label,
                    Numbers.shortest(nodes[0]),
                    Numbers.shortest(nodes[nodes.length - 1]),
                    step,
                    Numbers.shortest(start),
                    unit,
                    digits,
                    times,
                    Numbers.rounded(start * times, digits) + "\u00a0" + unit);
        }
    }

    /**
     * Something to try.
     *
     * @param set where it puts the sliders
     * @param name what it does
     * @param seen what to see then
     */
    record Try(String set, String name, String seen) {}

    /**
     * A row of the table of numbers, for no brake, now, and d*.
     *
     * @param id of the row
     * @param name of the quantity, with its unit
     * @param none without the brake
     * @param now at the setting
     * @param best at d*
     */
    record Row(String id, String name, String none, String now, String best) {}

    /**
     * The page of a car, which must be inside the ranges of the sliders.
     *
     * @param car its brake share and height are where the sliders begin
     * @param version of the program
     */
    public static GripPage of(Car car, String version) {
        GripTable table = GripTable.of(car);
        GripSetting start = start(car);
        String script = resource("learn.js");
        double[] nodes = GripTable.NODES[0];
        return new GripPage(
                car.name(),
                Numbers.shortest(GripSetting.SPEED),
                Numbers.shortest(GripSetting.LATERAL),
                Numbers.shortest(nodes[nodes.length - 1]),
                resource("learn.css"),
                script,
                hash(script),
                table.json().toString(),
                sliders(start),
                setting(start),
                said(
                        "Front",
                        car,
                        start,
                        use -> use.front().lateralCapacity(),
                        use -> use.front().utilisation()),
                said(
                        "Rear",
                        car,
                        start,
                        use -> use.rear().lateralCapacity(),
                        use -> use.rear().utilisation()),
                tries(start),
                rows(car, table, start),
                exact(table.error(car, MEASURED, SEED)),
                "It is a car in steady state on a flat road: load moves at once, the tyres neither warm nor wear. The brake"
                        + " force of an axle is shared equally by its two wheels, so the inner one locks first.",
                "A model, not an instruction: it explores and explains. Try nothing of this on a public road. On a closed"
                        + " course or in a simulator, local rules, the car's maker and a qualified instructor come first.",
                "Made with Foreload " + version + ". The car is invented.");
    }

    /** Where the sliders stand at first. */
    static GripSetting start(Car car) {
        return new GripSetting(START, car.frontBrakeShare(), car.chassis().cgHeight(), 1);
    }

    /** The page as HTML. */
    public String html() {
        return Mustache.compiler()
                .escapeHTML(true)
                .compile(resource("learn.html"))
                .execute(this);
    }

    private static List<Slider> sliders(GripSetting start) {
        return List.of(
                Slider.of(0, "deceleration", "Deceleration", "0.1", start.deceleration(), "m/s²", 1, 1),
                Slider.of(1, "share", "Share of the brake in front", "0.01", start.frontBrakeShare(), "%", 0, 100),
                Slider.of(2, "height", "Height of the CG", "0.01", start.cgHeight(), "m", 2, 1),
                Slider.of(3, "surface", "Grip of the road, 100 % is dry", "0.01", start.surface(), "%", 0, 100));
    }

    private static String setting(GripSetting setting) {
        return String.format(
                Locale.ROOT,
                "Braking with %.1f\u00a0m/s², %.0f\u00a0%% of it in front, CG at %.2f\u00a0m, %.0f\u00a0%% of dry grip.",
                setting.deceleration(),
                100 * setting.frontBrakeShare(),
                setting.cgHeight(),
                100 * setting.surface());
    }

    private static String said(
            String name,
            Car car,
            GripSetting setting,
            ToDoubleFunction<GripUse> capacity,
            ToDoubleFunction<GripUse> utilisation) {
        GripUse use = setting.of(car);
        double now = capacity.applyAsDouble(use);
        double change =
                100 * (now / capacity.applyAsDouble(setting.withDeceleration(0).of(car)) - 1);
        return String.format(
                Locale.ROOT,
                "%s: can give %.0f N sideways, %.1f %% %s than without the brake. It uses %.0f\u00a0%% of its grip.",
                name,
                now,
                Math.abs(change),
                change < 0 ? "less" : "more",
                100 * utilisation.applyAsDouble(use));
    }

    private static List<Try> tries(GripSetting start) {
        GripSetting rear = new GripSetting(start.deceleration(), 0.6, start.cgHeight(), start.surface());
        GripSetting high = new GripSetting(start.deceleration(), start.frontBrakeShare(), 0.68, start.surface());
        GripSetting wet = new GripSetting(start.deceleration(), start.frontBrakeShare(), start.cgHeight(), 0.6);
        return List.of(
                new Try(
                        words(start.withDeceleration(6)),
                        "Brake three times as hard",
                        "Far past d* the brake takes more than the load brings, and the front line falls; at its kink the inside wheel locks."),
                new Try(
                        words(rear),
                        "Move brake to the rear",
                        "The front pays less for the same load: d* moves up. The rear pays for it."),
                new Try(
                        words(high),
                        "Raise the CG",
                        "More load moves forward with the same brake: d* moves up, and the rear tyres get lighter."),
                new Try(
                        words(wet),
                        "Wet the road",
                        "The tyres make less of the load, and the same brake takes a larger part of their grip: d* moves down."));
    }

    private static String words(GripSetting setting) {
        return String.join(
                " ",
                Numbers.shortest(setting.deceleration()),
                Numbers.shortest(setting.frontBrakeShare()),
                Numbers.shortest(setting.cgHeight()),
                Numbers.shortest(setting.surface()));
    }

    private static List<Row> rows(Car car, GripTable table, GripSetting now) {
        double best = table.best(now);
        List<GripUse> three = List.of(
                now.withDeceleration(0).of(car),
                now.of(car),
                now.withDeceleration(best).of(car));
        List<Row> rows = new ArrayList<>();
        rows.add(new Row(
                "best",
                "deceleration, m/s²",
                "0.00",
                Numbers.rounded(now.deceleration(), 2),
                Numbers.rounded(best, 2)));
        rows.add(row(
                "front",
                "lateral capacity in front, N",
                three,
                use -> use.front().lateralCapacity()));
        rows.add(row(
                "rear",
                "lateral capacity at the rear, N",
                three,
                use -> use.rear().lateralCapacity()));
        rows.add(row(
                "frontUse",
                "grip used in front, %",
                three,
                use -> 100 * use.front().utilisation()));
        rows.add(row(
                "rearUse",
                "grip used at the rear, %",
                three,
                use -> 100 * use.rear().utilisation()));
        rows.add(row("loadFl", "load front left, N", three, use -> use.loads().frontLeft()));
        rows.add(row("loadFr", "load front right, N", three, use -> use.loads().frontRight()));
        rows.add(row("loadRl", "load rear left, N", three, use -> use.loads().rearLeft()));
        rows.add(row("loadRr", "load rear right, N", three, use -> use.loads().rearRight()));
        return rows;
    }

    private static Row row(String id, String name, List<GripUse> three, ToDoubleFunction<GripUse> value) {
        List<String> texts = three.stream()
                .map(use -> Numbers.rounded(value.applyAsDouble(use), 0))
                .toList();
        return new Row(id, name, texts.get(0), texts.get(1), texts.get(2));
    }

    private static String exact(GripTable.Error error) {
        int cells = 1;
        for (double[] nodes : GripTable.NODES) {
            cells *= nodes.length;
        }
        return String.format(
                Locale.ROOT,
                "The library computed %d settings, and the page interpolates between them (cubic in each slider). At %d other"
                        + " settings, drawn evenly from all that the sliders reach, it differed from the library by at most %s N in a"
                        + " wheel load, %s N in a lateral capacity, %s m/s² in d*, and, where no wheel is locked, %s %% in the grip used."
                        + " At 19 of 20 of them the grip used differed by at most %s %%.",
                cells,
                error.settings(),
                up(error.load(), 2),
                up(error.capacity(), 1),
                up(error.best(), 2),
                up(100 * error.use(), 1),
                up(100 * error.commonUse(), 1));
    }

    /** Rounded up, so that it stays a bound. */
    private static String up(double value, int decimals) {
        double unit = Math.pow(10, -decimals);
        return Numbers.rounded(Math.ceil(value / unit) * unit, decimals);
    }

    private static String resource(String name) {
        try (InputStream in = GripPage.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What the page's policy asks of the script: the text between its tags. */
    private static String hash(String script) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
