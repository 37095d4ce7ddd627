/**
 * What one unit of each number is worth.
 *
 * <p><b>Key idea.</b> The best release lies on the edge of sliding or of stopping a wheel, so with a changed car the
 * same release falls over that edge to one side. For each changed car, corner or driver the best release is therefore
 * found again, from the known one, whose peak is first held as a share of what locks a wheel, and from what is known of
 * the releases near it. Numbers of the plan are turned without a search: they say what missing the plan costs, each
 * side by itself, since the best plan stands on an edge: slower to one side, it may be a spin to the other.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.sensitivity.Sensitivity} turns every
 * {@link org.foreload.sensitivity.Knob} that {@link org.foreload.sensitivity.Knobs} finds in a
 * {@link org.foreload.sensitivity.Setup}.
 *
 * <p><b>Valid when</b> the entry is the best one, or near it. <b>Neglects</b> that numbers are related, such as mass
 * and yaw inertia, and best releases far from the known one. <b>Fails when</b> another limit takes over within the
 * step: the row is then marked as not steady; so is one whose effect is lost in the accuracy of the searches, some
 * milliseconds, with fewer entries now and then a hundredth of a second.
 */
package org.foreload.sensitivity;
