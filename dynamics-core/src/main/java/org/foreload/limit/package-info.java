/**
 * What the car could do at most, all its lags included: perfect hands and feet.
 *
 * <p><b>Key idea.</b> The quickest way through a corner is a problem of optimal control: the equations of motion of
 * {@link org.foreload.bicycle} per metre of the line, three controls (how fast the wheel is turned, how fast the foot
 * goes down or up on the brake, what it asks of the engine), bounds from tyres, rolling over, actuators and road, and
 * the time as the price. Written down at a few hundred points it becomes a large but simple system: each interval knows
 * only its neighbours, so Newton's step is found by walking once back and once forth.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.limit.Limit} solves it for a car, a corner, a
 * {@link org.foreload.limit.Band} and {@link org.foreload.limit.Hands}; {@link org.foreload.limit.LimitResult} is the
 * car along the line, with the residual of the optimality conditions and whether they hold. The start needs no driver:
 * it is the quasi-steady profile. Not here: who could drive it.
 *
 * <p><b>Valid when</b> both axles stay below their peak: they are held at a share of it, because beyond it no hand
 * holds a car; and while the inner wheels of both axles have load left: the body's lateral force is held at that at
 * which the last of it goes, as {@link org.foreload.load.LoadTransfer#tipping} has it. Anti-lock brakes, if the car has
 * them, hold each wheel at a share of its peak, and the foot may ask for more. <b>Neglects</b> the lag between hand and
 * front wheels (their greatest rate is kept), and all that {@link org.foreload.bicycle} neglects among it; one foot
 * serves both pedals. Before the corner the wheel is held when the car keeps to the line, and turning it has a small
 * price elsewhere: free hands weave under braking to scrub off speed. <b>Fails when</b> the corner cannot be driven
 * from that approach, and where no optimum is found: then it says so. What it finds is the best near where it started,
 * which need not be the best of all.
 */
package org.foreload.limit;
