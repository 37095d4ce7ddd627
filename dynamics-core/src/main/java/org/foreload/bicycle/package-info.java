/**
 * The equations of motion.
 *
 * <p><b>Key idea.</b> The two wheels of an axle see the same slip angle but not the same load. So the car moves as a
 * single-track one, in the plane, with three speeds; yet each wheel has its own load, its own share of the friction and
 * its own lock. Load follows braking and cornering as a second-order response; slip follows over the relaxation length.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.bicycle.BicycleModel} turns a state, laid out by
 * {@link org.foreload.bicycle.BicycleState}, and {@link org.foreload.bicycle.Controls} into rates, and fills
 * {@link org.foreload.bicycle.WheelForces}, a buffer that its owner reuses. Who steers, and what the road does, is not
 * here; nor is the choice of the moment a wheel stops or turns again: the model only gives the margin.
 *
 * <p>A run that asks many times fills {@link org.foreload.bicycle.Inputs}, a buffer too, in place of controls: then no
 * objects are made. {@link org.foreload.bicycle.SlipLag} carries the relaxed slip in the form that integrators want.
 *
 * <p><b>Valid when</b> the car moves forward and slip angles of the two wheels of an axle differ little: the turn's
 * radius is large beside the track width. <b>Neglects</b> wheel inertia, body roll and pitch as motions with inertia of
 * their own, Ackermann steer, and rolling resistance. <b>Fails when</b> the car all but stops: slip angles lose their
 * meaning.
 */
package org.foreload.bicycle;
