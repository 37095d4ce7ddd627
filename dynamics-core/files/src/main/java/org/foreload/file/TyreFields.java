package org.foreload.file;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.foreload.tyre.FrictionTyre;
import org.foreload.tyre.SlipCurve;
import org.foreload.tyre.Tyre;

/** The object {@code front_tyre} or {@code rear_tyre} of a car file. */
final class TyreFields {

    static final List<String> NAMES = List.of(
            "model",
            "peak_friction_x",
            "peak_friction_y",
            "load_sensitivity",
            "reference_load_n",
            "relaxation_length_m",
            "cornering_stiffness_per_rad",
            "slip_stiffness",
            "shape_factor",
            "curvature_factor");

    private enum Model {
        LINEAR,
        BRUSH,
        MAGIC_FORMULA
    }

    private static final Map<String, Model> MODELS = new LinkedHashMap<>();

    static {
        MODELS.put("linear", Model.LINEAR);
        MODELS.put("brush", Model.BRUSH);
        MODELS.put("magic-formula", Model.MAGIC_FORMULA);
    }

    private TyreFields() {}

    static FrictionTyre read(JsonFields fields) {
        Model model = fields.choice("model", MODELS);
        SlipCurve curve = curve(model, fields);
        double frictionX = fields.number("peak_friction_x");
        double frictionY = fields.number("peak_friction_y");
        double loadSensitivity = fields.number("load_sensitivity", 0);
        double referenceLoad = fields.number("reference_load_n");
        double relaxationLength = fields.number("relaxation_length_m", 0);
        double corneringStiffness = fields.number("cornering_stiffness_per_rad");
        double slipStiffness = fields.number("slip_stiffness");
        return fields.build(() -> new FrictionTyre(
                curve,
                frictionX,
                frictionY,
                loadSensitivity,
                referenceLoad,
                relaxationLength,
                corneringStiffness,
                slipStiffness));
    }

    private static SlipCurve curve(Model model, JsonFields fields) {
        if (model == Model.MAGIC_FORMULA) {
            double shape = fields.number("shape_factor");
            double curvature = fields.number("curvature_factor", 0);
            return fields.build(() -> new SlipCurve.MagicFormula(shape, curvature));
        }
        for (String name : List.of("shape_factor", "curvature_factor")) {
            if (fields.has(name)) {
                fields.number(name);
                fields.warn(name, "has no effect; only the magic-formula model uses it");
            }
        }
        return model == Model.LINEAR ? new SlipCurve.Linear() : new SlipCurve.Brush();
    }

    /** Writes the tyre; only {@link FrictionTyre} has a form in files. */
    static void write(Tyre tyre, ObjectNode out) {
        if (!(tyre instanceof FrictionTyre friction)) {
            throw new IllegalArgumentException("a tyre model of your own has no form in a car file: " + tyre);
        }
        SlipCurve curve = friction.curve();
        out.put(
                "model",
                curve instanceof SlipCurve.Linear
                        ? "linear"
                        : curve instanceof SlipCurve.Brush ? "brush" : "magic-formula");
        out.put("peak_friction_x", friction.frictionX());
        out.put("peak_friction_y", friction.frictionY());
        out.put("load_sensitivity", friction.loadSensitivity());
        out.put("reference_load_n", friction.referenceLoad());
        out.put("relaxation_length_m", friction.relaxationLength());
        out.put("cornering_stiffness_per_rad", friction.corneringStiffnessPerLoad());
        out.put("slip_stiffness", friction.slipStiffnessPerLoad());
        if (curve instanceof SlipCurve.MagicFormula magic) {
            out.put("shape_factor", magic.shapeFactor());
            out.put("curvature_factor", magic.curvatureFactor());
        }
    }
}
