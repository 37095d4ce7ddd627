package org.foreload.vehicle;

/**
 * Makes {@link Aerodynamics} step by step: each number by its name and its unit, none forgotten, none in another's
 * place. A step that is left out or taken out of turn does not compile. Each step may be kept and continued more than
 * once.
 */
public final class AerodynamicsBuilder {

    private AerodynamicsBuilder() {}

    static Drag start() {
        return drag -> front -> rear -> density -> height -> new Aerodynamics(drag, front, rear, density, height);
    }

    /** Asks for the drag. */
    public interface Drag {

        /** Coefficient times reference area, m². */
        FrontDownforce dragAreaM2(double drag);
    }

    /** Asks for the downforce in front. */
    public interface FrontDownforce {

        /** Coefficient times reference area, m²; negative for lift. */
        RearDownforce frontDownforceAreaM2(double front);
    }

    /** Asks for the downforce at the rear. */
    public interface RearDownforce {

        /** Coefficient times reference area, m²; negative for lift. */
        AirDensity rearDownforceAreaM2(double rear);
    }

    /** Asks for the density of the air. */
    public interface AirDensity {

        /** kg/m³. */
        DragHeight airDensityKgM3(double density);
    }

    /** Asks for the place of the drag. */
    public interface DragHeight {

        /** Height above the road at which drag acts, m; the last step. */
        Aerodynamics dragHeightM(double height);
    }
}
