/**
 * Integrates ordinary differential equations of which a few components decay quickly by themselves.
 *
 * <p><b>Key idea.</b> A component that runs after what drives it, over a length or a time much shorter than anything
 * else takes, holds every explicit rule to steps of about that length, however smooth the solution. Here its decay is
 * solved exactly within the step, by the exponential, and only what drives it is stepped. All other components see the
 * classic rule of fourth order.
 *
 * <p><b>Ready pieces.</b> A {@link org.foreload.integrate.DecayingSystem} says what its rates are and which components
 * decay; an {@link org.foreload.integrate.Integration} takes it to an end, or to the first
 * {@link org.foreload.integrate.Crossing}, as finely as its {@link org.foreload.integrate.Accuracy} says; a
 * {@link org.foreload.integrate.StepObserver} sees every {@link org.foreload.integrate.Step} and the solution within.
 * Every integration comes to rest with a {@link org.foreload.integrate.Stop}: its work is bounded. Nothing here knows
 * of cars.
 *
 * <p><b>Valid when</b> the stiff part is a decay of single components, and what drives them varies slowly: choose the
 * components so, for instance the distance of a lagging value from what it follows. <b>Neglects</b> decay that couples
 * components. <b>Fails when</b> rates jump inside a step: end the step there, and
 * {@link org.foreload.integrate.Integration#restart} beyond.
 */
package org.foreload.integrate;
