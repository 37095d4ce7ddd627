package org.foreload.entry;

import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketedUnivariateSolver;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;

/** Watches one switching function for the integrator. */
final class Watch implements ODEEventDetector {

    /** Longest stretch, m, in which a sign change could go unseen: shorter than any pulse of load that matters. */
    private static final double CHECK_INTERVAL = 2;

    /** Events are located to a tenth of a millimetre, a few microseconds at speed. */
    private static final double LOCATION_ACCURACY = 1e-4;

    private static final int MOST_ITERATIONS = 100;

    private final ToDoubleFunction<ODEStateAndDerivative> function;
    private final ODEEventHandler handler;

    private Watch(ToDoubleFunction<ODEStateAndDerivative> function, ODEEventHandler handler) {
        this.function = function;
        this.handler = handler;
    }

    /** Stops the integration where the function falls through zero. */
    static Watch stopWhenFalling(ToDoubleFunction<ODEStateAndDerivative> function) {
        return new Watch(function, (state, detector, rising) -> rising ? Action.CONTINUE : Action.STOP);
    }

    /** Reports where the function rises through zero and goes on. */
    static Watch reportWhenRising(
            ToDoubleFunction<ODEStateAndDerivative> function,
            java.util.function.Consumer<ODEStateAndDerivative> report) {
        return new Watch(function, (state, detector, rising) -> {
            if (rising) {
                report.accept(state);
            }
            return Action.CONTINUE;
        });
    }

    @Override
    public AdaptableInterval getMaxCheckInterval() {
        return AdaptableInterval.of(CHECK_INTERVAL);
    }

    @Override
    public int getMaxIterationCount() {
        return MOST_ITERATIONS;
    }

    @Override
    public BracketedUnivariateSolver<UnivariateFunction> getSolver() {
        return new BracketingNthOrderBrentSolver(0, LOCATION_ACCURACY, 0, 5);
    }

    @Override
    public ODEEventHandler getHandler() {
        return handler;
    }

    @Override
    public double g(ODEStateAndDerivative state) {
        return function.applyAsDouble(state);
    }
}
