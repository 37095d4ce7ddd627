package org.foreload.examples.command;

import org.foreload.driver.Reaction;
import org.foreload.file.InputException;
import org.foreload.risk.RiskStudy;
import org.foreload.risk.Scatter;
import org.foreload.strategy.CornerStudy;
import picocli.CommandLine.Option;

/** How far the driver and the grip stray, and how many entries are driven to see how they end. */
final class ScatterOptions {

    private static final int MOST_SAMPLES = 1_000_000;

    @Option(
            names = "--driver",
            paramLabel = "<name>",
            defaultValue = "practised",
            completionCandidates = Candidates.Drivers.class,
            description =
                    "An invented driver: novice, practised or expert; the options below replace its numbers one by one. "
                            + "Default: ${DEFAULT-VALUE}.")
    private String driver;

    @Option(
            names = "--brake-point-scatter",
            paramLabel = "<m>",
            description = "Standard deviation of the brake point, m.")
    private Double brakePoint;

    @Option(
            names = "--peak-scatter",
            paramLabel = "<share>",
            description = "Standard deviation of the peak deceleration, as a share of it.")
    private Double peak;

    @Option(
            names = "--release-scatter",
            paramLabel = "<m>",
            description = "Standard deviation of the whole release along the line, m.")
    private Double release;

    @Option(
            names = "--pedal-ripple",
            paramLabel = "<share>",
            description =
                    "Unsteadiness of the foot: standard deviation of the ripple of the brake demand, as a share of it.")
    private Double ripple;

    @Option(
            names = "--grip-scatter",
            paramLabel = "<share>",
            description = "Standard deviation of the grip of all tyres, as a share of it.")
    private Double grip;

    @Option(
            names = "--samples",
            paramLabel = "<n>",
            defaultValue = "256",
            description = "Entries driven for each plan, best a power of two. Default: ${DEFAULT-VALUE}.")
    private int samples;

    @Option(
            names = "--accept",
            paramLabel = "<share>",
            defaultValue = "0.05",
            description =
                    "Failure probability that is accepted, of each plan and each practice step, 0 to 1. Default: ${DEFAULT-VALUE}.")
    private double accepted;

    /** Reads the scatter; before anything is computed. */
    Scatter scatter() {
        Options.within("--samples", samples, 1, MOST_SAMPLES, "");
        Options.within("--accept", accepted, 0, 1, "");
        if (Scatter.PRESETS.stream().noneMatch(one -> one.name().equals(driver))) {
            throw new InputException(null, "--driver", driver, "must be one of novice, practised, expert");
        }
        notNegative("--brake-point-scatter", brakePoint, "m");
        share("--peak-scatter", peak);
        notNegative("--release-scatter", release, "m");
        share("--pedal-ripple", ripple);
        share("--grip-scatter", grip);
        Scatter preset = Scatter.named(driver);
        boolean own = brakePoint != null || peak != null || release != null || ripple != null || grip != null;
        return new Scatter(
                own ? driver + ", changed" : driver,
                brakePoint == null ? preset.brakePoint() : brakePoint,
                peak == null ? preset.peak() : peak,
                release == null ? preset.releaseTiming() : release,
                ripple == null ? preset.ripple() : ripple,
                grip == null ? preset.grip() : grip);
    }

    /** Failure probability that is accepted. */
    double accepted() {
        return accepted;
    }

    /** Whether the samples are driven in seconds. */
    boolean isBrief() {
        return samples <= BRIEF;
    }

    private static final int BRIEF = 256;

    int samples() {
        return samples;
    }

    RiskStudy risks(CornerStudy study, Scatter scatter, Reaction reaction, long seed) {
        return new RiskStudy(study, scatter, reaction, samples, seed);
    }

    private static void notNegative(String option, Double value, String unit) {
        if (value != null) {
            Options.notNegative(option, value, unit);
        }
    }

    private static void share(String option, Double value) {
        if (value != null) {
            Options.within(option, value, 0, 1, "");
        }
    }
}
