package org.foreload.vehicle;

import org.foreload.conventions.Checks;

/**
 * Drag and downforce: force = ½ ρ v² × area, where an area is coefficient times reference area.
 *
 * @param dragArea m², zero or above
 * @param frontDownforceArea m², positive presses the front axle down; negative is lift
 * @param rearDownforceArea m², positive presses the rear axle down; negative is lift
 * @param airDensity kg/m³
 * @param dragHeight height above the road at which drag acts, m
 */
public record Aerodynamics(
        double dragArea, double frontDownforceArea, double rearDownforceArea, double airDensity, double dragHeight) {

    /** No drag and no downforce. */
    public static final Aerodynamics NONE = new Aerodynamics(0, 0, 0, 0, 0);

    /** Checks the numbers; throws {@link org.foreload.conventions.InvalidValueException} with the field's name. */
    public Aerodynamics {
        Checks.notNegative("drag_area_m2", dragArea);
        Checks.finite("front_downforce_area_m2", frontDownforceArea);
        Checks.finite("rear_downforce_area_m2", rearDownforceArea);
        Checks.notNegative("air_density_kg_m3", airDensity);
        Checks.notNegative("drag_height_m", dragHeight);
    }

    /** Makes aerodynamics step by step, each number by its name and unit. */
    public static AerodynamicsBuilder.Drag builder() {
        return AerodynamicsBuilder.start();
    }

    /** Drag in newtons at a speed squared in m²/s². */
    public double drag(double speedSquared) {
        return 0.5 * airDensity * dragArea * speedSquared;
    }

    /** Downforce on the front axle in newtons at a speed squared in m²/s². */
    public double frontDownforce(double speedSquared) {
        return 0.5 * airDensity * frontDownforceArea * speedSquared;
    }

    /** Downforce on the rear axle in newtons at a speed squared in m²/s². */
    public double rearDownforce(double speedSquared) {
        return 0.5 * airDensity * rearDownforceArea * speedSquared;
    }
}
