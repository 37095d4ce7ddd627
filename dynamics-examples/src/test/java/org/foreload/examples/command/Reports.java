package org.foreload.examples.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import picocli.CommandLine;

/**
 * Reports of verbs that compute for seconds: each is made once for all tests that ask the same words, and shown in the
 * format that each of them reads. The words are parsed by the program's own command line; only the last step, writing
 * one format on standard output, is left to tests of {@link Run}.
 */
final class Reports {

    private static final Map<List<String>, Reports> ASKED = new ConcurrentHashMap<>();

    private final List<String> words;
    private Report report;

    private Reports(List<String> words) {
        this.words = words;
    }

    /** What a verb answers to these words, which name no format. */
    static Reports of(String... words) {
        return ASKED.computeIfAbsent(List.of(words), Reports::new);
    }

    /** As people read it. */
    Run table() {
        Run run = new Run(Foreload.DONE, Format.TABLE.render(report()), "");
        run.assertReadable();
        return run;
    }

    /** As programs read it. */
    JsonNode json() {
        try {
            return new ObjectMapper().readTree(Format.JSON.render(report()));
        } catch (JsonProcessingException e) {
            throw new AssertionError(words.toString(), e);
        }
    }

    /** As tables are read. */
    String csv() {
        return Format.CSV.render(report());
    }

    /** Others who want the same wait here until it is there. */
    private synchronized Report report() {
        if (report == null) {
            PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
            CommandLine line = Foreload.commandLine(nowhere, nowhere);
            line.parseArgs(words.toArray(String[]::new));
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            ReportVerb verb = line.getSubcommands().get(words.get(0)).getCommand();
            Report made = verb.report(Console.plain(err).quietly());
            assertEquals("", err.toString(StandardCharsets.UTF_8));
            report = made;
        }
        return report;
    }
}
