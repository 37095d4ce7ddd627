package org.foreload.tyre;

/**
 * Makes a {@link FrictionTyre} step by step: each number by its name and its unit, none forgotten, none in another's
 * place. A step that is left out or taken out of turn does not compile. Each step may be kept and continued more than
 * once.
 */
public final class FrictionTyreBuilder {

    private FrictionTyreBuilder() {}

    static Curve start() {
        return curve -> x -> y -> sensitivity -> load -> length ->
                cornering -> slip -> new FrictionTyre(curve, x, y, sensitivity, load, length, cornering, slip);
    }

    /** Asks for the curve of force over slip. */
    public interface Curve {

        /** Normalised: linear, brush or magic formula. */
        FrictionX curve(SlipCurve curve);
    }

    /** Asks for the friction along the tyre. */
    public interface FrictionX {

        /** Peak at the reference load, plain number. */
        FrictionY peakFrictionX(double x);
    }

    /** Asks for the friction across the tyre. */
    public interface FrictionY {

        /** Peak at the reference load, plain number. */
        LoadSensitivity peakFrictionY(double y);
    }

    /** Asks for the loss of friction with load. */
    public interface LoadSensitivity {

        /** Relative loss of friction per relative rise of load over the reference load, 0 to 1. */
        ReferenceLoad loadSensitivity(double sensitivity);
    }

    /** Asks for the reference load. */
    public interface ReferenceLoad {

        /** N. */
        RelaxationLength referenceLoadN(double load);
    }

    /** Asks for the relaxation length. */
    public interface RelaxationLength {

        /** m; zero for a tyre that answers at once. */
        CorneringStiffness relaxationLengthM(double length);
    }

    /** Asks for the cornering stiffness. */
    public interface CorneringStiffness {

        /** Over load, at the reference load, 1/rad. */
        SlipStiffness corneringStiffnessPerRad(double cornering);
    }

    /** Asks for the longitudinal slip stiffness. */
    public interface SlipStiffness {

        /** Over load, at the reference load, plain number; the last step. */
        FrictionTyre slipStiffness(double slip);
    }
}
