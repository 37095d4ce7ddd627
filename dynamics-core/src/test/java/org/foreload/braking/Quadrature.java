package org.foreload.braking;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/** Integrals for tests, by a library that the tested code does not use. */
final class Quadrature {

    private static final int NODES = 64;
    private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();

    private Quadrature() {}

    /** Integral by one 64-node Gauss-Legendre rule: exact to rounding for smooth laws. */
    static double integral(DoubleUnaryOperator law, double from, double to) {
        GaussIntegrator rule = RULES.legendre(NODES, from, to);
        return rule.integrate(law::applyAsDouble);
    }
}
