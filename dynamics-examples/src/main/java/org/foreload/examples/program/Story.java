package org.foreload.examples.program;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.foreload.examples.output.Prose;
import org.foreload.examples.picture.Picture;

/** What all programs of this package need: a sentence, a column of numbers, a place for the picture. */
final class Story {

    private Story() {}

    /**
     * Prints a paragraph in UTF-8, with decimal points, wherever it runs; wrapped where it is too long for a screen.
     */
    static void say(String format, Object... numbers) {
        String text = String.format(Locale.ROOT, format, numbers)
                .lines()
                .map(Prose::paragraph)
                .collect(Collectors.joining("\n"))
                .replace("\n", System.lineSeparator());
        byte[] line = (text + System.lineSeparator()).getBytes(StandardCharsets.UTF_8);
        System.out.write(line, 0, line.length);
        System.out.flush();
    }

    /** Draws the picture where the arguments say, and nowhere if they say nothing. */
    static void draw(String[] args, Picture picture) {
        if (args.length == 0) {
            say("%n(Name a file, such as picture.svg, to get the picture.)");
        }
        for (String file : args) {
            picture.save(Path.of(file));
        }
    }

    /** Evenly spaced numbers, both ends included. */
    static double[] evenly(double from, double to, int count) {
        double[] values = new double[count];
        for (int i = 0; i < count; i++) {
            values[i] = from + (to - from) * i / (count - 1);
        }
        return values;
    }

    /** A function of each number. */
    static double[] each(double[] values, DoubleUnaryOperator function) {
        return DoubleStream.of(values).map(function).toArray();
    }
}
