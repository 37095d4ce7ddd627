package org.foreload.examples.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.answer.Units;
import org.foreload.examples.command.Foreload;
import org.foreload.examples.demo.Demos;
import org.foreload.path.Corner;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceAccessMode;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** Sheets of other cars and corners, in a real browser: they print on two pages at every place of the slider. */
@ResourceLock(value = Browser.LOCK, mode = ResourceAccessMode.READ)
class SheetsIT {

    private static final int TELEPHONE = 360;

    /** Steps of the longest practice plan that the command line takes. */
    private static final int MOST_STEPS = 6;

    /** So many of them are steps that gain. */
    private static final int LONG = 4;

    @TempDir
    private static Path directory;

    private static Browser browser;

    @BeforeAll
    static void start() {
        browser = Browser.start(directory.resolve("profile"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    /**
     * A hairpin, where cars fail in most ways, with long names, and the most steps: those of a steady driver, whose
     * steps may be small.
     */
    @Test
    void theLongestTextsFit() throws IOException {
        Car demo = Demos.car("", "road").value();
        Car car = new Car(
                "A rather long name of a front-heavy road car, with the tyres of last winter and a full tank of fuel",
                demo.chassis(),
                demo.suspension(),
                demo.aerodynamics(),
                demo.frontBrakeShare(),
                demo.driveline(),
                demo.frontTyre(),
                demo.rearTyre());
        Corner hairpin = Demos.corner("", "hairpin").value();
        Corner corner = new Corner(
                "The hairpin after the long straight, as it is driven in the afternoon and against the low sun",
                hairpin.approachSpeed(),
                hairpin.path());
        SweepPlan one =
                new SweepPlan(List.of(ReleaseShapes.PROGRESSIVE), List.of(0.8), List.of(-0.5), List.of(0.7), 0.25);
        // How often a step fails is a number of the same length however often it is driven.
        SheetRequest request = new SheetRequest(one, Scatter.EXPERT, 2, 1, MOST_STEPS, 0.5, Units.KMH);
        Sheet sheet =
                Sheet.of(CornerStudy.of(car, corner), request, Sweep.quiet()).orElseThrow();
        assertTrue(sheet.practice().steps().orElseThrow().steps().size() > LONG, "many steps, and the first");
        String html = SheetPage.of(sheet, "Mind the model.", "0").html();
        fits(Files.writeString(directory.resolve("long.html"), html), PRINTED);
    }

    static Stream<Arguments> demos() {
        return Demos.CARS.stream().flatMap(car -> Demos.CORNERS.stream().map(corner -> Arguments.of(car, corner)));
    }

    @ParameterizedTest
    @MethodSource("demos")
    @EnabledIfSystemProperty(named = "manual.long", matches = "true")
    void theSheetOfEveryDemoFits(String car, String corner) throws IOException {
        Path file = directory.resolve(car + "-" + corner + ".html");
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        String[] words = {
            "sheet",
            "--quiet",
            "--driver",
            "novice",
            "--demo-car",
            car,
            "--demo-corner",
            corner,
            "--out",
            file.toString()
        };
        assertEquals(0, Foreload.run(words, new ByteArrayOutputStream(), err), err::toString);
        fits(file, Integer.MAX_VALUE);
    }

    /** Places with the longest texts that are printed in every build. */
    private static final int PRINTED = 3;

    /**
     * Looks at every place of the slider.
     *
     * @param most so many places are printed, those with the longest texts
     */
    private static void fits(Path file, int most) throws IOException {
        browser.console();
        browser.open(file);
        assertEquals(List.of(), browser.console());
        assertEquals(List.of(), browser.accessibility());
        var slider = browser.driver().findElement(By.id("slider"));
        int last = Integer.parseInt(slider.getDomAttribute("max"));
        List<Long> lengths = new ArrayList<>();
        slider.sendKeys(Keys.HOME);
        for (int place = 0; place <= last; place++) {
            String text = (String) browser.driver().executeScript("return document.body.innerText;");
            assertFalse(text.contains("NaN") || text.contains("Infinity"), text);
            lengths.add((long) text.length());
            slider.sendKeys(Keys.ARROW_RIGHT);
        }
        List<Integer> longest = IntStream.rangeClosed(0, last)
                .boxed()
                .sorted(Comparator.comparing(lengths::get, Comparator.reverseOrder()))
                .limit(most)
                .toList();
        slider.sendKeys(Keys.HOME);
        for (int place = 0; place <= last; place++) {
            if (longest.contains(place)) {
                try (PDDocument pdf = Loader.loadPDF(browser.printed())) {
                    String text = new PDFTextStripper().getText(pdf);
                    assertTrue(pdf.getNumberOfPages() <= 2, pdf.getNumberOfPages() + " pages at place " + place + text);
                    assertFalse(text.contains("NaN") || text.contains("Infinity"), text);
                }
            }
            slider.sendKeys(Keys.ARROW_RIGHT);
        }
        browser.narrow(TELEPHONE);
        try {
            browser.open(file);
            assertEquals(
                    0L,
                    browser.driver()
                            .executeScript(
                                    "return document.documentElement.scrollWidth - document.documentElement.clientWidth;"));
        } finally {
            browser.wide();
        }
    }
}
