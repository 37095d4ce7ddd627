package org.foreload.examples.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.foreload.examples.gallery.CheckPictures;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.examples.output.WholeFile;
import org.foreload.file.InputException;
import org.foreload.validation.Catalogue;
import org.foreload.validation.Check;
import org.foreload.validation.CheckResult;
import org.foreload.validation.ErrorChart;
import org.foreload.validation.ReportPage;
import org.foreload.validation.Status;
import org.foreload.validation.Validation;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Holds the library against values from outside. */
@Command(
        name = "validate",
        sortOptions = false,
        description = {
            "Checks the library against the outside world: published values, closed forms, and an independent program of the "
                    + "same physics. Each check names its source and the error it allows.",
            "",
            "The whole catalogue takes about half a minute."
        },
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "In the answer: the status says where a value comes from. Read in its source; from memory; common practice; exact "
                    + "(a closed form); independent (a second program). The table shows the counts and what fails; json "
                    + "and csv show every check.",
            "",
            "Example:  foreload validate --check 2.4 --format csv",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class ValidateVerb extends ReportVerb {

    @Option(
            names = "--check",
            paramLabel = "<id>",
            defaultValue = "",
            description = "Only the checks whose number begins like this: 2, 2.4, 2.4-front. Default: all.")
    private String prefix;

    @Option(
            names = "--report",
            paramLabel = "<folder>",
            description = "Also write validation.md and validation.svg into this folder; all checks only.")
    private Path folder;

    @Override
    Report report(Console console) {
        if (folder != null && !prefix.isEmpty()) {
            throw new InputException(null, "--report", folder.toString(), "must stand without --check");
        }
        if (folder != null && !Files.isDirectory(folder)) {
            throw new InputException(null, "--report", folder.toString(), "must be a folder that is there");
        }
        List<Check> checks =
                Catalogue.read().stream().filter(check -> chosen(check.id())).toList();
        if (checks.isEmpty()) {
            throw new InputException(null, "--check", prefix, "must be the beginning of a check's number, such as 2.4");
        }
        Optional<WholeFile> page = place("validation.md");
        Optional<WholeFile> chart = place("validation.svg");
        List<CheckResult> results = Validation.run(checks);
        page.ifPresent(file -> file.write(ReportPage.write(results)));
        chart.ifPresent(file -> file.write(ErrorChart.draw(results)));
        common().picture().draw(() -> CheckPictures.of(results));
        return common().format() == Format.TABLE ? counts(results) : everyCheck(results);
    }

    private Optional<WholeFile> place(String name) {
        return Optional.ofNullable(folder)
                .map(there -> WholeFile.at("--report", there.resolve(name), name.substring(name.lastIndexOf('.'))));
    }

    /** {@code 2} begins 2.4-front, but not 21.1; {@code 2.4-f} begins it, too. */
    private boolean chosen(String id) {
        boolean whole = prefix.matches("[0-9]+");
        return id.startsWith(whole ? prefix + "." : prefix);
    }

    private static Report everyCheck(List<CheckResult> results) {
        List<Report> rows = new ArrayList<>();
        for (CheckResult result : results) {
            Check check = result.check();
            rows.add(new Report()
                    .with("id", check.id())
                    .with("name", check.name())
                    .with("source", check.source())
                    .with("status", check.status().words())
                    .with("relation", check.relation().sign())
                    .with("expected", check.expected())
                    .with("computed", result.computed())
                    .with("unit", check.unit())
                    .with("error", result.error())
                    .with("budget", check.budget())
                    .with("passed", result.passed()));
        }
        return new Report("Validation").with("checks", "Checks", rows);
    }

    private static Report counts(List<CheckResult> results) {
        Report report = new Report("Checks of the library against the outside world");
        for (Status status : Status.values()) {
            report = report.with(
                    status.words(),
                    results.stream()
                                    .filter(result -> result.check().status() == status && result.passed())
                                    .count() + " of "
                            + results.stream()
                                    .filter(result -> result.check().status() == status)
                                    .count() + " pass");
        }
        List<CheckResult> failed =
                results.stream().filter(result -> !result.passed()).toList();
        if (failed.isEmpty()) {
            return report.note(
                    "Every check passes. --format csv shows them one by one; docs/validation.md explains them.");
        }
        List<Report> rows = new ArrayList<>();
        for (CheckResult result : failed) {
            rows.add(new Report()
                    .with("id", result.check().id())
                    .with("name", result.check().name())
                    .with("expected", result.check().expected())
                    .with("computed", result.computed())
                    .with("budget", result.check().budget()));
        }
        return report.with("failed", "What fails", rows);
    }
}
