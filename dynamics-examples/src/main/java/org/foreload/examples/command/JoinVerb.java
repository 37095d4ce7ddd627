package org.foreload.examples.command;

import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.foreload.examples.output.Report;
import org.foreload.examples.sweep.Parts;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** Puts the parts of a sweep together. */
@Command(
        name = "join",
        sortOptions = false,
        description = {
            "Puts the parts of a sweep together that 'foreload explore --shard I/N' has computed, on one machine or on many, "
                    + "and gives the answer of one run, byte for byte.",
            "",
            "Car, corner and all other options are those that the parts were asked with; files that they name must still be "
                    + "there, and unchanged."
        },
        parameterListHeading = "%nFiles:%n",
        optionListHeading = "%nOptions:%n",
        footer = {
            "",
            "Example:  foreload join part-1.jsonl part-2.jsonl --format json",
            "",
            Cautions.FIRST,
            Cautions.SECOND
        })
final class JoinVerb extends ReportVerb {

    @Parameters(arity = "1..*", paramLabel = "<part>", description = "What each part printed, in any order.")
    private List<Path> files;

    @Mixin
    private SweepOptions sweepOptions;

    @Override
    Report report(Console console) {
        Parts parts = Parts.of(files);
        ExploreVerb sweep = new ExploreVerb();
        PrintWriter nowhere = new PrintWriter(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        try {
            Foreload.prepared(new CommandLine(sweep), nowhere, nowhere)
                    .parseArgs(parts.arguments().toArray(String[]::new));
        } catch (ParameterException changed) {
            throw new org.foreload.file.InputException(
                    files.get(0).toString(), "arguments", null, "cannot be read: " + changed.getMessage());
        }
        return sweep.placed(sweep.report(console, common(), sweepOptions, Optional.of(parts)));
    }
}
