/**
 * What one unit of each number is worth.
 *
 * <p><b>Key idea.</b> Around the best release the release itself needs no change: to first order the best time moves as
 * the time of the same release does, from its new latest brake point (the envelope theorem; see e.g. A. Mas-Colell, M.
 * Whinston, J. Green, Microeconomic Theory, appendix M.L, from memory). So no new search is needed for each number. The
 * peak is held as a share of what locks a wheel: the one limit at which a best release likes to lie.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.sensitivity.Sensitivity} turns every
 * {@link org.foreload.sensitivity.Knob} that {@link org.foreload.sensitivity.Knobs} finds in a
 * {@link org.foreload.sensitivity.Setup}.
 *
 * <p><b>Valid when</b> the entry is the best one, or near it. <b>Neglects</b> that numbers hang together, such as mass
 * and yaw inertia. <b>Fails when</b> another limit takes over within the step: the row is then marked as not steady.
 */
package org.foreload.sensitivity;
