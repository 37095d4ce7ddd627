package org.foreload.examples.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.answer.Units;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.recording.ChosenLap;
import org.foreload.examples.recording.DemoRuns;
import org.foreload.examples.recording.RecordedFile;
import org.foreload.path.Corner;
import org.foreload.path.Path;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Finding;
import org.foreload.strategy.SweepPlan;
import org.foreload.study.Sweep;
import org.foreload.vehicle.Car;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.ResourceAccessMode;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The sheet in a real browser, which has it open: a test that changes more than its sliders opens it anew. */
@ResourceLock(value = Browser.LOCK, mode = ResourceAccessMode.READ)
class SheetIT {

    /** A corner name that would run, break out of an attribute, and break a table if it were not escaped. */
    private static final String HOSTILE = "<script>document.title='taken'</script>\"><b>'bend' & {{car}}";

    private static final double A4_HEIGHT_POINTS = 842;

    @TempDir
    private static java.nio.file.Path directory;

    private static Browser browser;
    private static Sheet sheet;
    private static OwnView own;
    private static java.nio.file.Path file;

    @BeforeAll
    static void makeOne() throws IOException {
        browser = Browser.start(directory.resolve("profile"));
        Car car = Demos.car("", Demos.DEFAULT_CAR).value();
        Corner demo = Demos.corner("", Demos.DEFAULT_CORNER).value();
        CornerStudy study = CornerStudy.of(car, new Corner(HOSTILE, demo.approachSpeed(), demo.path()));
        SweepPlan one =
                new SweepPlan(List.of(ReleaseShapes.PROGRESSIVE), List.of(0.75), List.of(-0.1), List.of(0.7), 0.25);
        sheet = Sheet.of(study, new SheetRequest(one, Scatter.EXPERT, 16, 1, 2, 0.2, Units.KMH), Sweep.quiet())
                .orElseThrow();
        own = OwnView.of(sheet, recorded());
        file = Files.writeString(
                directory.resolve("sheet.html"),
                SheetPage.of(sheet, Optional.of(own), "Mind the model.", "0").html());
        browser.open(file);
    }

    private static OwnEntry recorded() {
        RecordedFile made = new DemoRuns().file(DemoRuns.Driver.STRAIGHT);
        ChosenLap chosen = ChosenLap.of(List.of(made), Sweep.quiet()).get(0);
        Path line = sheet.study().simulator().corner().path();
        return OwnEntry.of(HOSTILE, chosen, line, OptionalInt.empty());
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    private static WebElement slider() {
        return browser.driver().findElement(By.id("slider"));
    }

    private static WebElement peak() {
        return browser.driver().findElement(By.id("peak"));
    }

    /** Text of what is shown of the elements of a selector, words one space apart. */
    private static String shown(String css) {
        return plainSpaces(String.join(" ", ofShown(css, "innerText"))).replaceAll("\\s+", " ");
    }

    /** The page keeps a number and its unit together; here any space is a space. */
    private static String plainSpaces(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static List<String> shownCharts() {
        return ofShown(".charts svg", "id");
    }

    /** A property of each shown element, in one call: the page has hundreds of them, and a call takes milliseconds. */
    private static List<String> ofShown(String css, String property) {
        List<?> found = (List<?>) browser.driver()
                .executeScript(
                        "return [...document.querySelectorAll(arguments[0])]"
                                + ".filter(e => e.checkVisibility()).map(e => e[arguments[1]]);",
                        css,
                        property);
        return found.stream().map(String::valueOf).toList();
    }

    private static long overflow() {
        return (Long) browser.driver()
                .executeScript("return document.documentElement.scrollWidth - document.documentElement.clientWidth;");
    }

    @Test
    void loadsWithoutAWordAndWithoutTheNetwork() {
        browser.requests();
        browser.console();
        browser.open(file);
        assertEquals(List.of(), browser.console());
        List<String> requests = browser.requests();
        assertEquals(List.of(file.toUri().toString()), requests);
    }

    @Test
    void namesFromFilesAreTextAndNothingElse() {
        assertEquals(HOSTILE, browser.driver().findElement(By.tagName("h1")).getText());
        assertTrue(browser.driver().getTitle().startsWith("Corner sheet: " + HOSTILE));
        assertTrue(browser.driver().findElements(By.tagName("b")).stream()
                .noneMatch(b -> b.getText().contains("bend")));
    }

    /** Numbers against the library's own, at every place of the slider, reached by keyboard. */
    @Test
    void theSliderShowsTheNumbersOfTheReleaseThatItPointsAt() {
        slider().sendKeys(Keys.HOME);
        peak().sendKeys(Keys.HOME);
        List<String> before = List.of();
        for (int i = 0; i < sheet.releases().size(); i++) {
            Finding finding = sheet.releases().get(i);
            EntryResult entry = sheet.study().simulator().run(finding.entry().plan());
            String numbers = shown(".numbers table");
            assertTrue(
                    numbers.contains("brake off, m "
                            + Numbers.rounded(entry.plan().release().end(), 1)),
                    numbers);
            assertTrue(
                    numbers.contains(
                            "peak, m/s² " + Numbers.rounded(entry.plan().peakDeceleration(), 2)),
                    numbers);
            assertTrue(
                    numbers.contains(
                            "brake point, m " + Numbers.rounded(entry.plan().brakePoint(), 1)),
                    numbers);
            if (entry.made()) {
                assertTrue(numbers.contains("time, s " + Numbers.rounded(entry.time(), 3)), numbers);
            }
            assertEquals(i == sheet.planned(), !numbers.contains("this release"));
            String said = browser.driver().findElement(By.id("said")).getText();
            assertEquals(said, plainSpaces(slider().getDomAttribute("aria-valuetext")));
            assertEquals(said, plainSpaces(peak().getDomAttribute("aria-valuetext")));
            double end = Math.abs(entry.plan().release().end());
            boolean down = said.contains("brake off " + (long) Math.floor(end) + " m ");
            boolean up = said.contains("brake off " + (long) Math.ceil(end) + " m ");
            assertTrue(down || up || end < 1, said + " for " + end);
            List<String> charts = shownCharts();
            assertEquals(4, charts.size());
            assertNotEquals(before, charts);
            before = charts;
            if (i % sheet.rungs() < sheet.rungs() - 1) {
                slider().sendKeys(Keys.ARROW_RIGHT);
            } else {
                slider().sendKeys(Keys.HOME);
                peak().sendKeys(Keys.ARROW_RIGHT);
            }
        }
        browser.driver().findElement(By.id("back")).click();
        assertEquals(String.valueOf(sheet.planned() % sheet.rungs()), slider().getDomProperty("value"));
        assertEquals(String.valueOf(sheet.planned() / sheet.rungs()), peak().getDomProperty("value"));
    }

    @Test
    void oneReleaseOfTheSliderIsTooMuch() {
        Finding last = sheet.releases().get(sheet.releases().size() - 1);
        double lost = last.entry().time() - sheet.plan().entry().time();
        assertTrue(!last.found() || lost > 0.3, "lost only " + lost + " s");
        assertTrue(sheet.releases().size() >= 9);
    }

    /** The driver's own release, with every number that was measured, in words and as a picture. */
    @Test
    void theDriversOwnReleaseStandsBesideThePlan() {
        String text = shown(".own");
        assertTrue(text.contains("Lap 1 of " + HOSTILE), text);
        for (OwnView.Row row : own.rows()) {
            assertTrue(text.contains(row.name() + " " + row.own() + " " + row.plan()), row + " in " + text);
        }
        assertEquals(
                1, browser.driver().findElements(By.cssSelector(".own svg")).size());
    }

    @Test
    void printsTheChosenReleaseOnTwoPagesAndTheOwnOnAThird() throws IOException {
        slider().sendKeys(Keys.HOME);
        try (PDDocument pdf = Loader.loadPDF(browser.printed())) {
            assertEquals(3, pdf.getNumberOfPages());
            assertEquals(A4_HEIGHT_POINTS, pdf.getPage(0).getMediaBox().getHeight(), 1);
            String text = new PDFTextStripper().getText(pdf);
            assertTrue(text.contains("this release"), text);
            assertFalse(text.contains("Back to the plan"), text);
            assertFalse(text.contains("slider"), text);
            assertTrue(text.contains("Mind the model."), text);
        }
    }

    @Test
    void itIsAccessibleWideAndNarrow() throws IOException {
        assertEquals(List.of(), browser.accessibility());
        browser.narrow(360);
        browser.open(file);
        try {
            assertEquals(List.of(), browser.accessibility());
            assertEquals(0, overflow());
            slider().sendKeys(Keys.END);
            assertEquals(0, overflow());
        } finally {
            browser.wide();
        }
    }

    @Test
    void withoutScriptsItShowsThePlan() {
        browser.scripts(false);
        try {
            browser.open(file);
            assertFalse(slider().isDisplayed());
            assertTrue(shown(".numbers table")
                    .contains("time, s " + Numbers.rounded(sheet.plan().entry().time(), 3)));
            assertEquals(4, shownCharts().size());
        } finally {
            browser.scripts(true);
            browser.open(file);
        }
    }
}
