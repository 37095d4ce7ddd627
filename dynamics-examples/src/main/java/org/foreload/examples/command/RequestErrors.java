package org.foreload.examples.command;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.foreload.file.InputException;
import org.foreload.file.NearestName;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in this program's one line what the parser says in its own words. */
final class RequestErrors {

    /** Options that a refusal shows where none is near: few enough to be read. */
    private static final int NEAREST = 5;

    private RequestErrors() {}

    /** The refusal that a parser's complaint stands for. */
    static InputException of(ParameterException e) {
        if (e instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched);
        }
        if (e instanceof OverwrittenOptionException twice) {
            return new InputException(null, name(twice.getOverwritten()), null, "must be given only once");
        }
        if (e instanceof MissingParameterException missing
                && !missing.getMissing().isEmpty()) {
            ArgSpec first = missing.getMissing().get(0);
            String what = first.isPositional()
                    ? "must be given: one or more, each a word of its own"
                    : "must have a value: " + allowed(first);
            return new InputException(null, name(first), null, what);
        }
        if (e.getArgSpec() != null && e.getValue() != null) {
            return new InputException(null, name(e.getArgSpec()), e.getValue(), must(e.getArgSpec()));
        }
        return new InputException(null, e.getArgSpec() == null ? null : name(e.getArgSpec()), null, e.getMessage());
    }

    private static InputException unmatched(UnmatchedArgumentException e) {
        CommandLine command = e.getCommandLine();
        String word = e.getUnmatched().isEmpty() ? "" : e.getUnmatched().get(0);
        boolean option = word.startsWith("-");
        boolean verb = !option && command.getParent() == null;
        String name = option && word.contains("=") ? word.substring(0, word.indexOf('=')) : word;
        Collection<String> known = verb ? command.getSubcommands().keySet() : options(command);
        Optional<String> nearest = NearestName.of(name, known);
        String kind = option ? "unknown option" : verb ? "unknown verb" : "does not belong here";
        String others = option
                ? "; the nearest are " + String.join(", ", NearestName.several(name, known, NEAREST)) + "; '"
                        + command.getCommandSpec().qualifiedName() + " --help' has them all"
                : "; known are " + String.join(", ", known);
        String hint = option || verb
                ? nearest.map(near -> "; did you mean " + near + "?").orElse(others)
                : "; values follow an option, as in --format json";
        return new InputException(null, name, null, kind + hint);
    }

    private static List<String> options(CommandLine command) {
        return command.getCommandSpec().options().stream()
                .map(OptionSpec::longestName)
                .toList();
    }

    private static String name(ArgSpec spec) {
        return spec instanceof OptionSpec option ? option.longestName() : spec.paramLabel();
    }

    private static String must(ArgSpec spec) {
        return (spec.type().isEnum() ? "must be one of " : "must be ") + allowed(spec);
    }

    private static String allowed(ArgSpec spec) {
        if (spec.type().isEnum()) {
            return Arrays.stream(spec.type().getEnumConstants())
                    .map(constant -> Choices.word((Enum<?>) constant))
                    .collect(Collectors.joining(", "));
        }
        if (spec.type() == boolean.class) {
            return "given without a value";
        }
        String label = spec.paramLabel().replaceAll("[<>]", "");
        if (spec.type() == double.class || spec.type() == Double.class) {
            return label.equals("share") ? "a finite number" : "a finite number in " + label;
        }
        if (spec.type() == int.class || spec.type() == long.class || spec.type() == Integer.class) {
            return "a whole number";
        }
        return spec.type().isArray() || spec.isMultiValue() ? label + ", separated by commas" : "a " + label;
    }
}
