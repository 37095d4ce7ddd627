/**
 * Where along the line one entry gains on another, and what braking does to the front axle there.
 *
 * <p><b>Key idea.</b> Two entries between the same markers differ by one number, but at every station there is a gap so
 * far; its rise from place to place says where the time is made. The parts sum to the whole because they are
 * differences of one curve.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.gap.TimeSplit} has the parts, the curve and a sentence;
 * {@link org.foreload.gap.FrontGrip} the newtons that load transfer gives the front axle and those that the brake
 * takes; {@link org.foreload.gap.LossToLimit} what an entry loses to perfect hands and feet, and where.
 *
 * <p><b>Valid when</b> both entries were driven on the same line from the same approach, and both made the corner.
 * <b>Neglects</b> that the two may take different tracks within the line's width. <b>Fails when</b> an entry has no
 * profile: it says so.
 */
package org.foreload.gap;
