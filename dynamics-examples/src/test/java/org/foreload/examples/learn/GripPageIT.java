package org.foreload.examples.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.program.GentleBrake;
import org.foreload.examples.sheet.Browser;
import org.foreload.grip.GripUse;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The learner's first page in a real browser, as the first example program writes it. */
@ResourceLock(Browser.LOCK)
class GripPageIT {

    private static final Car CAR = Demos.car("car", "road").value();

    /** What the page states, and half a unit of the numbers it shows. */
    private static final double CAPACITY = 10;

    @TempDir
    private static Path directory;

    private static Browser browser;
    private static Path file;

    @BeforeAll
    static void write() {
        browser = Browser.start(directory.resolve("profile"));
        file = directory.resolve("gentle-brake.html");
        GentleBrake.main(new String[] {file.toString()});
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private static WebElement element(String id) {
        return browser.driver().findElement(By.id(id));
    }

    private static void set(String id, double value) {
        browser.driver()
                .executeScript(
                        "const slider = document.getElementById(arguments[0]); slider.value = arguments[1];"
                                + "slider.dispatchEvent(new Event('input'));",
                        id,
                        value);
    }

    /**
     * Moves sliders, and reads where they stand and what the page shows, in one call: the browser answers a call in
     * tens of milliseconds, however much it is asked.
     */
    private static Map<?, ?> shown(Map<String, Double> places) {
        return (Map<?, ?>) browser.driver()
                .executeScript(
                        "const shown = {}; const places = arguments[0];"
                                + "for (const id in places) {"
                                + " const slider = document.getElementById(id); slider.value = places[id];"
                                + " slider.dispatchEvent(new Event('input')); }"
                                + "for (const id in places) shown[id] = document.getElementById(id).value;"
                                + "for (const row of document.querySelectorAll('[data-row]'))"
                                + " shown['row ' + row.dataset.row] = row.querySelector('td:nth-of-type(2)').innerText;"
                                + "for (const id of ['front', 'rear'])"
                                + " shown['said ' + id] = document.getElementById(id).innerText;"
                                + "return shown;",
                        places);
    }

    private static double number(Map<?, ?> shown, String name) {
        return Double.parseDouble(String.valueOf(shown.get(name)));
    }

    private static double value(String id) {
        return Double.parseDouble(element(id).getDomProperty("value"));
    }

    private static double cell(String row, int column) {
        String css = "[data-row='" + row + "'] td:nth-of-type(" + column + ")";
        return Double.parseDouble(
                browser.driver().findElement(By.cssSelector(css)).getText());
    }

    private static GripSetting setting() {
        return new GripSetting(value("deceleration"), value("share"), value("height"), value("surface"));
    }

    private static long overflow() {
        return (Long) browser.driver()
                .executeScript("return document.documentElement.scrollWidth - document.documentElement.clientWidth;");
    }

    @Test
    void loadsWithoutAWordAndWithoutTheNetwork() throws IOException {
        browser.requests();
        browser.console();
        browser.open(file);
        assertEquals(List.of(), browser.console());
        assertEquals(List.of(file.toUri().toString()), browser.requests());
        assertTrue(Files.size(file) < 300_000, Files.size(file) + " bytes");
    }

    /** Numbers against the library's own, at settings drawn from all that the sliders reach. */
    @Test
    void theNumbersAreTheLibrarysWhereverTheSlidersStand() {
        browser.open(file);
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < 40; i++) {
            Map<?, ?> shown = shown(Map.of(
                    "deceleration", 9 * random.nextDouble(),
                    "share", 0.5 + 0.4 * random.nextDouble(),
                    "height", 0.3 + 0.4 * random.nextDouble(),
                    "surface", 0.5 + 0.8 * random.nextDouble()));
            GripSetting setting = new GripSetting(
                    number(shown, "deceleration"),
                    number(shown, "share"),
                    number(shown, "height"),
                    number(shown, "surface"));
            GripUse use = setting.of(CAR);
            assertEquals(setting.frontCapacity(CAR), number(shown, "row front"), CAPACITY, setting::toString);
            assertEquals(setting.rearCapacity(CAR), number(shown, "row rear"), CAPACITY, setting::toString);
            assertEquals(use.loads().frontLeft(), number(shown, "row loadFl"), 0.6, setting::toString);
            assertEquals(use.loads().rearRight(), number(shown, "row loadRr"), 0.6, setting::toString);
            boolean locked = GripQuantities.of(setting, CAR).locked();
            if (!locked) {
                assertEquals(100 * use.front().utilisation(), number(shown, "row frontUse"), 6.5, setting::toString);
            }
            boolean front = String.valueOf(shown.get("said front")).contains("a wheel locks");
            boolean rear = String.valueOf(shown.get("said rear")).contains("a wheel locks");
            assertEquals(locked, front || rear, setting::toString);
        }
    }

    @Test
    void theBestDecelerationIsTheLibrarys() {
        browser.open(file);
        GripSetting setting = setting();
        double exact = GripTable.best(d -> setting.withDeceleration(d).frontCapacity(CAR));
        assertEquals(exact, cell("best", 3), 0.02);
        String drawn = browser.driver()
                .findElement(By.cssSelector("#capacity .strong"))
                .getText();
        assertEquals(exact, Double.parseDouble(drawn.replace("d* = ", "")), 0.02);
    }

    @Test
    void theKeyboardMovesTheBrakeAndTheButtonsSetTheScene() {
        browser.open(file);
        double before = cell("frontUse", 2);
        String drawn = element("circle").getDomProperty("innerHTML");
        element("deceleration").sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        assertEquals(2.2, value("deceleration"), 1e-9);
        assertEquals("2.2\u00a0m/s²", element("deceleration").getDomAttribute("aria-valuetext"));
        assertTrue(cell("frontUse", 2) > before);
        assertFalse(element("circle").getDomProperty("innerHTML").equals(drawn));
        element("deceleration").sendKeys(Keys.END);
        assertEquals(9, value("deceleration"), 1e-9);
        assertTrue(
                element("front").getText().contains("a wheel locks"),
                element("front").getText());
        for (WebElement button : browser.driver().findElements(By.cssSelector("[data-set]"))) {
            button.sendKeys(Keys.ENTER);
            String set = Numbers.shortest(value("deceleration")) + " " + Numbers.shortest(value("share")) + " "
                    + Numbers.shortest(value("height")) + " " + Numbers.shortest(value("surface"));
            assertEquals(button.getDomAttribute("data-set"), set);
        }
        element("back").sendKeys(Keys.ENTER);
        assertEquals(GripPage.start(CAR), setting());
    }

    @Test
    void itMovesByItselfOnlyIfAskedAndWhereMotionIsWanted() throws InterruptedException {
        browser.open(file);
        assertTrue(element("play").isDisplayed());
        element("play").click();
        long end = System.nanoTime() + 30_000_000_000L;
        while (value("deceleration") < 1 && System.nanoTime() < end) {
            Thread.sleep(50);
        }
        assertTrue(value("deceleration") >= 1);
        element("play").click();
        double stopped = value("deceleration");
        Thread.sleep(200);
        assertEquals(stopped, value("deceleration"));
        browser.motion("reduce");
        try {
            // The browser takes the wish up when it comes to it.
            while (element("play").isDisplayed() && System.nanoTime() < end) {
                Thread.sleep(50);
            }
            assertFalse(element("play").isDisplayed());
            browser.open(file);
            assertFalse(element("play").isDisplayed());
        } finally {
            browser.motion("");
        }
    }

    /**
     * The kink stands where the library has it: where half the front brake is all that the inside front wheel holds.
     */
    @Test
    void theKinkStandsWhereTheInsideWheelLocks() {
        browser.open(file);
        double expected = DoubleStream.iterate(0, d -> d + 0.01)
                .filter(d -> {
                    GripUse use = GripPage.start(CAR).withDeceleration(d).of(CAR);
                    double holds = CAR.frontTyre().peakForceX(use.loads().frontLeft());
                    return use.front().longitudinalForce() / 2 >= holds;
                })
                .findFirst()
                .orElseThrow();
        double at = Double.parseDouble(browser.driver()
                .findElements(By.cssSelector("#capacity .kink"))
                .get(1)
                .getDomAttribute("x1"));
        double left = 52;
        double right = 466;
        assertEquals(expected, 9 * (at - left) / (right - left), 0.05);
        String text = element("capacity").getText();
        assertTrue(text.contains("inside front wheel locks") && text.contains("inside rear wheel locks"), text);
    }

    @Test
    void printsOnOneOrTwoPages() throws IOException {
        browser.open(file);
        set("deceleration", 4);
        try (PDDocument pdf = Loader.loadPDF(browser.printed())) {
            assertTrue(pdf.getNumberOfPages() <= 2, pdf.getNumberOfPages() + " pages");
            String text = new PDFTextStripper().getText(pdf);
            assertTrue(text.contains("Braking with 4.0"), text);
            assertFalse(text.contains("Back to the start") || text.contains("slider and watch"), text);
            assertTrue(text.contains("A model, not an instruction"), text);
        }
    }

    @Test
    void itIsAccessibleWideAndNarrow() throws IOException {
        browser.open(file);
        assertEquals(List.of(), browser.accessibility());
        browser.narrow(360);
        browser.open(file);
        try {
            assertEquals(List.of(), browser.accessibility());
            assertEquals(0, overflow());
        } finally {
            browser.wide();
        }
    }

    @Test
    void withoutScriptsItShowsTheNumbers() {
        browser.scripts(false);
        try {
            browser.open(file);
            assertFalse(element("deceleration").isDisplayed());
            assertEquals(GripPage.start(CAR).frontCapacity(CAR), cell("front", 2), 0.5);
        } finally {
            browser.scripts(true);
        }
    }
}
