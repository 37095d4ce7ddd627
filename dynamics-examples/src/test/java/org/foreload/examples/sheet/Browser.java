package org.foreload.examples.sheet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a window; closed at the end. */
public final class Browser implements AutoCloseable {

    private static final List<Path> DRIVERS = List.of(Path.of("/usr/bin/chromedriver"));

    private static final List<Path> BROWSERS = List.of(Path.of("/usr/bin/chromium"));

    /** A4 in inches, as the browser wants it. */
    private static final double A4_WIDTH = 8.27;

    private static final double A4_HEIGHT = 11.69;

    /**
     * What tests lock that start one. Those that only read pages share it; one whose page moves by itself must have the
     * processors, and locks it alone.
     */
    public static final String LOCK = "browser";

    /** It warns that it does not know the newest browser's tools, of which none is used. */
    private static final Logger QUIET = Logger.getLogger("org.openqa.selenium");

    /** Longest time for one script: a check of a long page takes half a minute on a busy machine. */
    private static final Duration SCRIPT_TIMEOUT = Duration.ofMinutes(3);

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /**
     * Starts the browser. Where there is none, the test is skipped, unless {@code -Dforeload.browser=required} says
     * that it must not be.
     *
     * @param profile an empty folder
     */
    public static Browser start(Path profile) {
        boolean there = Files.isExecutable(DRIVERS.get(0)) && Files.isExecutable(BROWSERS.get(0));
        if (!there && !"required".equals(System.getProperty("foreload.browser"))) {
            Assumptions.abort("no Chromium and chromedriver in /usr/bin: the sheet is not looked at in a browser");
        }
        QUIET.setLevel(Level.SEVERE);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        ChromeOptions options = new ChromeOptions()
                .setBinary(BROWSERS.get(0).toFile())
                .addArguments(
                        "--headless=new",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--disable-dev-shm-usage",
                        "--window-size=1100,900",
                        "--user-data-dir=" + profile.toAbsolutePath());
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(DRIVERS.get(0).toFile())
                .usingAnyFreePort()
                .build();
        ChromeDriver driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(SCRIPT_TIMEOUT);
        return new Browser(driver);
    }

    public ChromeDriver driver() {
        return driver;
    }

    public void open(Path file) {
        driver.get(file.toUri().toString());
    }

    /** What the page wrote on the console, all levels. */
    public List<String> console() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(entry -> entry.getLevel() + " " + entry.getMessage())
                .toList();
    }

    /** Addresses that were asked for since the last call. */
    public List<String> requests() {
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(entry -> entry.getMessage())
                .filter(message -> message.contains("\"Network.requestWillBeSent\""))
                .map(message -> message.replaceAll("(?s).*\"request\":\\{.*?\"url\":\"(.*?)\".*", "$1"))
                .toList();
    }

    /** A window of this width, px, as on a telephone. */
    public void narrow(int width) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", 740, "deviceScaleFactor", 2, "mobile", true));
    }

    public void wide() {
        driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
    }

    public void scripts(boolean on) {
        driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", !on));
    }

    /** As for a reader who has asked the system for less motion; an empty word asks for nothing. */
    public void motion(String preference) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", preference))));
    }

    /** The page on A4 paper, as PDF. */
    public byte[] printed() {
        Map<String, Object> result = driver.executeCdpCommand(
                "Page.printToPDF", Map.of("paperWidth", A4_WIDTH, "paperHeight", A4_HEIGHT, "preferCSSPageSize", true));
        return Base64.getDecoder().decode((String) result.get("data"));
    }

    /**
     * Violations that axe-core finds in what the page shows: rule and element. What it hides, a sheet's releases but
     * one, takes the checker four times as long as all else, and comes back when it is done.
     */
    public List<?> accessibility() throws IOException {
        try (var script = Browser.class.getResourceAsStream("/axe.min.js")) {
            driver.executeScript(new String(script.readAllBytes(), StandardCharsets.UTF_8));
        }
        return (List<?>) driver.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                const away = [...document.querySelectorAll('[hidden]')]
                    .map(e => { const place = document.createComment(''); e.replaceWith(place); return [place, e]; });
                axe.run({resultTypes: ['violations'], selectors: false})
                    .then(r => r.violations.map(v => v.id + ': ' + v.nodes[0].html), e => ['axe failed: ' + e])
                    .then(found => { away.forEach(([place, e]) => place.replaceWith(e)); done(found); });
                """);
    }

    @Override
    public void close() {
        driver.quit();
    }
}
