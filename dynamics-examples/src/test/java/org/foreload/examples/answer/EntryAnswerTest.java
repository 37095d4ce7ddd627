package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShapes;
import org.foreload.entry.EntryResult;
import org.foreload.examples.demo.Demos;
import org.foreload.strategy.Allowance;
import org.foreload.strategy.CornerStudy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EntryAnswerTest {

    private static final Pattern REAR =
            Pattern.compile("(-?[0-9.]+) % of the rear axle's friction left, ([0-9.]+) % asked for");

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("", Demos.DEFAULT_CAR).value(),
            Demos.corner("", Demos.DEFAULT_CORNER).value());

    private static final EntryResult ENTRY = STUDY.simulator()
            .run(Braking.of(7, 0.25, new Release(ReleaseShapes.LINEAR, 0, 20)).from(-170));

    private static Matcher missing(double missing) {
        Allowance asked = new Allowance(0.5, 0, 0, ENTRY.margins().rear() + missing, 0);
        String text = EntryAnswer.missing(STUDY.with(asked), ENTRY);
        Matcher found = REAR.matcher(text);
        assertTrue(found.find(), text);
        return found;
    }

    /** Text that gives a reason must bear it out: what is left reads as less than what is asked for. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1e-3, 3e-4, 1e-5, 1e-7})
    void whatIsLeftReadsAsLessThanWhatIsAskedFor(double missing) {
        Matcher rear = missing(missing);
        assertTrue(Double.parseDouble(rear.group(1)) < Double.parseDouble(rear.group(2)), rear.group());
    }

    /** One decimal, as everywhere, where that tells them apart. */
    @Test
    void noMoreDigitsThanThatTakes() {
        Matcher rear = missing(0.1);
        assertEquals(Words.percent(ENTRY.margins().rear()), rear.group(1) + " %");
    }
}
