package org.foreload.examples.command;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import org.foreload.braking.BrakePlan;
import org.foreload.examples.output.Numbers;
import org.foreload.examples.sheet.Mistake;
import org.foreload.file.InputException;
import picocli.CommandLine.Option;

/** One mistake about a plan, which its driver does not expect. */
final class MistakeOption {

    static final String NAME = "--mistake";

    @Option(
            names = NAME,
            paramLabel = "<what:amount>",
            description =
                    "Drive the plan with one mistake: later:8 brakes 8 m later, harder:50 presses 50 %% harder, sooner:5 is off "
                            + "the brake 5 m sooner, deeper:5 carries it 5 m deeper. The driver expects the plan as it is given, "
                            + "and foot and throttle mend what they can, as on the sheet; of a plan with that peak or brake point "
                            + "the driver would expect what comes of it.")
    private String text;

    /** A mistake and how large it is. */
    record Sized(Mistake mistake, double amount) {

        /** {@code brake harder by 50 %}. */
        String words() {
            return mistake.words() + " by " + Numbers.shortest(amount) + " " + mistake.unit();
        }

        /** The plan with it; refused where nothing of the plan would be left. */
        BrakePlan made(BrakePlan plan, double pathEnd) {
            double largest = mistake.largest(plan, pathEnd);
            if (!(amount <= largest)) {
                throw new InputException(
                        null,
                        NAME,
                        word(mistake) + ":" + Numbers.shortest(amount),
                        "must be at most " + Numbers.rounded(Math.max(0, largest), 0) + " " + mistake.unit()
                                + " with this plan");
            }
            return mistake.made(plan, amount);
        }
    }

    /** The mistake that was asked for; read before anything is computed. */
    Optional<Sized> mistake() {
        if (text == null) {
            return Optional.empty();
        }
        int colon = text.indexOf(':');
        String name = colon < 0 ? text : text.substring(0, colon);
        Mistake mistake = Arrays.stream(Mistake.values())
                .filter(one -> word(one).equals(name))
                .findFirst()
                .orElseThrow(this::refused);
        double amount;
        try {
            amount = Double.parseDouble(text.substring(colon + 1));
        } catch (NumberFormatException e) {
            throw refused();
        }
        if (!(amount >= 0 && amount <= Double.MAX_VALUE)) {
            throw refused();
        }
        return Optional.of(new Sized(mistake, amount));
    }

    private InputException refused() {
        String names = Arrays.stream(Mistake.values()).map(MistakeOption::word).collect(Collectors.joining(", "));
        return new InputException(
                null, NAME, text, "must be one of " + names + ", a colon, and a number of 0 or more, as in later:8");
    }

    private static String word(Mistake mistake) {
        return Choices.word(mistake);
    }
}
