package org.foreload.examples.command;

import java.util.ArrayList;
import java.util.Arrays;
import org.foreload.examples.answer.Units;
import org.foreload.examples.demo.Demos;
import org.foreload.examples.output.Format;
import org.foreload.risk.Scatter;

/** What a shell may complete after an option. */
final class Candidates {

    private Candidates() {}

    /** Words of {@code --format}. */
    static final class Formats extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Formats() {
            super(Arrays.stream(Format.values()).map(Choices::word).toList());
        }
    }

    /** Words of {@code --units}. */
    static final class UnitNames extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        UnitNames() {
            super(Arrays.stream(Units.values()).map(Choices::word).toList());
        }
    }

    /** Names of demo cars. */
    static final class Cars extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Cars() {
            super(Demos.CARS);
        }
    }

    /** Names of demo corners. */
    static final class Corners extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Corners() {
            super(Demos.CORNERS);
        }
    }

    /** Words of {@code --line}. */
    static final class Lines extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Lines() {
            super(Arrays.stream(PlaceOptions.Line.values()).map(Choices::word).toList());
        }
    }

    /** Names of release shapes. */
    static final class ShapeNames extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        ShapeNames() {
            super(Shapes.names());
        }
    }

    /** What {@code balance} can sweep. */
    static final class Axes extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Axes() {
            super(Arrays.stream(BalanceVerb.Axis.values()).map(Choices::word).toList());
        }
    }

    /** What can disturb the pedal. */
    static final class Kinds extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Kinds() {
            super(Arrays.stream(SmoothnessVerb.Kind.values()).map(Choices::word).toList());
        }
    }

    /** Names of the invented drivers. */
    static final class Drivers extends ArrayList<String> {

        private static final long serialVersionUID = 1L;

        Drivers() {
            super(Scatter.PRESETS.stream().map(Scatter::name).toList());
        }
    }
}
