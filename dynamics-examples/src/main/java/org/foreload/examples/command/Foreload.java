package org.foreload.examples.command;

import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.foreload.conventions.InvalidValueException;
import org.foreload.examples.answer.Units;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.file.InputException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExecutionException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;

/** The program: parses the command line, runs one verb, prints its report or one line about what went wrong. */
@Command(
        name = Foreload.NAME,
        synopsisSubcommandLabel = "VERB [options]",
        description = {
            "How a car carries its braking into a corner: what load transfer does to its grip, how fast it could go, and "
                    + "which release of the brake makes it quickest.",
            "",
            "Every verb runs without options on an embedded car and corner; 'foreload VERB --help' explains it."
        },
        commandListHeading = "%nVerbs:%n",
        optionListHeading = "%nOptions:%n",
        footer = {"", "Start with:  foreload explore", "", Cautions.FIRST, Cautions.SECOND},
        subcommands = {
            LoadsVerb.class,
            GripVerb.class,
            IdealVerb.class,
            LimitVerb.class,
            EntryVerb.class,
            ExploreVerb.class,
            JoinVerb.class,
            BatchVerb.class,
            BestVerb.class,
            SensitivityVerb.class,
            RiskVerb.class,
            StepsVerb.class,
            CircuitVerb.class,
            RecordingVerb.class,
            CompareVerb.class,
            HandlingVerb.class,
            StabilityVerb.class,
            BalanceVerb.class,
            SmoothnessVerb.class,
            PedalVerb.class,
            SheetVerb.class,
            ValidateVerb.class
        })
public final class Foreload implements Runnable {

    static final String NAME = "foreload";

    /** How the core begins when it gives up an entry. */
    private static final String NOT_FOLLOWED = "the entry cannot be followed";

    /** Exit status: done. */
    public static final int DONE = 0;

    /** Exit status: the computation failed. */
    public static final int FAILED = 1;

    /** Exit status: the request or a file is wrong. */
    public static final int WRONG = 2;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    @Option(names = "--version", versionHelp = true, description = "Show the version.")
    private boolean version;

    private Foreload() {}

    /** Without a verb the program shows its help: {@link #answered} does. */
    @Override
    public void run() {}

    /**
     * Runs the program.
     *
     * @param args as typed
     * @param out where the answer goes, in UTF-8
     * @param err where warnings, progress and errors go, in UTF-8
     * @return the exit status
     */
    public static int run(String[] args, OutputStream out, OutputStream err) {
        return run(args, out, Console.plain(err));
    }

    /**
     * Runs the program.
     *
     * @param args as typed
     * @param out where the answer goes, in UTF-8
     * @param console where warnings, progress and errors go
     * @return the exit status
     */
    public static int run(String[] args, OutputStream out, Console console) {
        OutputPipe pipe = new OutputPipe(out);
        PrintWriter answer = new PrintWriter(new OutputStreamWriter(pipe, StandardCharsets.UTF_8));
        PrintWriter errors = console.writer();
        List<String> words = Arrays.asList(args);
        CommandLine line = commandLine(words, answer, console)
                .setExecutionStrategy(request -> answered(request, console, answer, pipe))
                .setParameterExceptionHandler(
                        (e, ignored) -> failed(WRONG, RequestErrors.of(e), e, words, answer, errors))
                .setExecutionExceptionHandler((e, command, request) -> failed(e, words, answer, errors));
        try {
            return line.execute(args);
        } catch (StackOverflowError | OutOfMemoryError e) {
            return failed(e, words, answer, errors);
        }
    }

    /** Runs the verb, and sees to it that all was written. */
    private static int answered(ParseResult request, Console console, PrintWriter answer, OutputPipe pipe) {
        if (!request.hasSubcommand() && !request.isUsageHelpRequested() && !request.isVersionHelpRequested()) {
            request.commandSpec().commandLine().usage(answer);
        }
        if (request.hasSubcommand() && request.subcommand().commandSpec().userObject() instanceof Verb verb) {
            verb.on(console);
        }
        int status = new CommandLine.RunLast().execute(request);
        answer.flush();
        try {
            pipe.check();
        } catch (ComputationException e) {
            throw new ExecutionException(request.commandSpec().commandLine(), e.getMessage(), e);
        }
        return status;
    }

    /** Says in one line what went wrong; what is the request's or a file's mistake has status 2. */
    private static int failed(Throwable e, List<String> words, PrintWriter answer, PrintWriter errors) {
        if (e instanceof InputException input) {
            return failed(WRONG, input, e, words, answer, errors);
        }
        if (e instanceof InvalidValueException invalid) {
            return failed(WRONG, InputException.of(null, invalid.field(), invalid), e, words, answer, errors);
        }
        String what = e.getMessage() == null ? "no reason is known" : e.getMessage();
        String line = e instanceof ComputationException || what.startsWith(NOT_FOLLOWED)
                ? what
                : "the computation failed: " + what + " (--debug shows where)";
        return failed(FAILED, new InputException(null, null, null, line), e, words, answer, errors);
    }

    /** The command tree; help and documentation are made from it, too. */
    static CommandLine commandLine(PrintWriter out, PrintWriter err) {
        CommandLine line = prepared(new CommandLine(new Foreload()), out, err);
        line.getCommandSpec().version("foreload " + version());
        return line;
    }

    /**
     * The command tree as far as it is needed: where the first word is a verb, that verb. It starts in half the time.
     */
    private static CommandLine commandLine(List<String> words, PrintWriter out, Console console) {
        Optional<Class<?>> verb = words.isEmpty() ? Optional.empty() : verb(words.get(0));
        return verb.map(one -> new CommandLine(CommandSpec.create().name(NAME)).addSubcommand(one))
                .map(line -> prepared(line, out, console.writer()))
                .orElseGet(() -> commandLine(out, console.writer()));
    }

    /**
     * The class of a verb, which its name leads to; empty where the word is none. To look through the annotations of
     * all verbs would load every one of them.
     */
    static Optional<Class<?>> verb(String word) {
        String name = (word.isEmpty() ? word : Character.toUpperCase(word.charAt(0)) + word.substring(1)) + "Verb";
        try {
            Class<?> verb = Class.forName(Foreload.class.getPackageName() + "." + name);
            Command command = verb.getAnnotation(Command.class);
            return command != null && command.name().equals(word) ? Optional.of(verb) : Optional.empty();
        } catch (ClassNotFoundException | NoClassDefFoundError e) {
            return Optional.empty();
        }
    }

    /** A command with the program's own ways to read numbers and files. */
    static CommandLine prepared(CommandLine line, PrintWriter out, PrintWriter err) {
        return line.setOut(out)
                .setErr(err)
                .setExpandAtFiles(false)
                .setUsageHelpWidth(100)
                .setResourceBundle(new HelpDefaults())
                .registerConverter(Double.class, new FiniteNumber())
                .registerConverter(double.class, new FiniteNumber())
                .registerConverter(Path.class, new FilePath())
                .registerConverter(Format.class, new Constant<>(Format.values()))
                .registerConverter(Units.class, new Constant<>(Units.values()))
                .registerConverter(PlaceOptions.Line.class, new Constant<>(PlaceOptions.Line.values()));
    }

    /** The version of the packaged program. */
    public static String version() {
        String version = Foreload.class.getPackage().getImplementationVersion();
        return version == null ? "(not packaged)" : version;
    }

    private static int failed(
            int status, InputException what, Throwable cause, List<String> words, PrintWriter out, PrintWriter err) {
        err.println(what.line());
        if (words.contains("--debug")) {
            cause.printStackTrace(err);
        }
        err.flush();
        if (jsonWanted(words)) {
            Report error = new Report()
                    .with("file", what.file())
                    .with("field", what.field())
                    .with("value", what.value())
                    .with("message", what.getMessage());
            out.print(Format.JSON.render(new Report().with("error", error)));
            out.flush();
        }
        return status;
    }

    /** Read from the words themselves: the request may be too wrong to be parsed. */
    private static boolean jsonWanted(List<String> words) {
        int option = words.lastIndexOf("--format");
        return words.contains("--format=json")
                || option >= 0
                        && option + 1 < words.size()
                        && words.get(option + 1).equals("json");
    }

    /** Constants by their words. */
    private record Constant<E extends Enum<E>>(E... constants) implements ITypeConverter<E> {

        @SafeVarargs
        private Constant {}

        @Override
        public E convert(String text) {
            return Arrays.stream(constants)
                    .filter(constant -> Choices.word(constant).equals(text))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("not one of these"));
        }
    }
}
