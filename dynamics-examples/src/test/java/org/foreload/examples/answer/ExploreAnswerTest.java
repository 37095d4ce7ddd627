package org.foreload.examples.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.foreload.braking.Braking;
import org.foreload.braking.Release;
import org.foreload.braking.ReleaseShape;
import org.foreload.braking.ReleaseShapes;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.output.Format;
import org.foreload.examples.output.Report;
import org.foreload.optimum.Remainder;
import org.foreload.strategy.CornerStudy;
import org.foreload.strategy.Exploration;
import org.foreload.strategy.Exploration.Candidate;
import org.junit.jupiter.api.Test;

/** What is said of shapes that come to the same, and what is not said yet. */
class ExploreAnswerTest {

    private static final CornerStudy STUDY = CornerStudy.of(
            Demos.car("--demo-car", "light").value(),
            Demos.corner("--demo-corner", "medium").value());

    /** Released within a decimetre, so that the shape makes no difference. */
    private static Candidate dropped(ReleaseShape shape) {
        return new Candidate(
                STUDY.simulator()
                        .probe(Braking.of(8, 0.25, new Release(shape, 0, 0.1)).from(-150)),
                true,
                0,
                false);
    }

    /** A time that is made up of a negative one needs a word; programs read the numbers alone. */
    @Test
    void aPartBelowZeroIsExplained() {
        Remainder remainder = new Remainder(16, 16.4, List.of(new Remainder.Part("tyre lags", -0.054)), true);
        List<Candidate> one = List.of(dropped(ReleaseShapes.LINEAR));
        Exploration sweep = new Exploration(one, Optional.of(one.get(0)), Optional.empty(), 16, 1);
        String people = words(sweep, remainder, Format.TABLE);
        assertTrue(people.indexOf("-0.054") > 0, people);
        assertTrue(people.indexOf("A part below zero") > people.indexOf("-0.054"), people);
        String programs = words(sweep, remainder, Format.JSON);
        assertTrue(programs.contains("-0.054"), programs);
        assertFalse(programs.contains("below zero"), programs);
    }

    private static String words(Exploration sweep, Remainder remainder, Format format) {
        Report report = ExploreAnswer.of(
                STUDY,
                sweep,
                format == Format.TABLE,
                false,
                Optional.of(remainder),
                Optional.empty(),
                Optional.empty(),
                Units.KMH);
        return format.render(report).replaceAll("\\s+", " ");
    }

    /** A shape that a stop left unrefined may yet be the quickest. */
    @Test
    void shapesOfASweepThatWasStoppedDoNotTie() {
        List<Candidate> two = List.of(dropped(ReleaseShapes.LINEAR), dropped(ReleaseShapes.SMOOTH));
        Exploration whole = new Exploration(two, Optional.of(two.get(0)), Optional.empty(), 10, 2);
        String tie = ExploreAnswer.tie(whole).orElseThrow();
        assertTrue(tie.contains("linear") && tie.contains("smooth"), tie);
        Exploration stopped = new Exploration(two, Optional.of(two.get(0)), Optional.empty(), 10, 3);
        assertEquals(Optional.empty(), ExploreAnswer.tie(stopped));
    }

    /** After a stop one part would pass for all that the others come to. */
    @Test
    void partsOfSearchesThatDidNotEndAreNotShown() {
        List<Candidate> one = List.of(dropped(ReleaseShapes.LINEAR));
        Exploration sweep = new Exploration(one, Optional.empty(), Optional.empty(), 10, 1);
        for (boolean ended : new boolean[] {true, false}) {
            Remainder remainder = new Remainder(16, 16.3, List.of(new Remainder.Part("driver", 0.3)), ended);
            Report report = ExploreAnswer.of(
                    STUDY, sweep, true, false, Optional.of(remainder), Optional.empty(), Optional.empty(), Units.KMH);
            String words = Format.TABLE.render(report).replaceAll("\\s+", " ");
            assertEquals(ended, words.contains("driver 0.300"), words);
            assertEquals(!ended, words.contains("the searches for it did not end"), words);
        }
    }
}
