/**
 * Corners in a row: what a lap gains, and where.
 *
 * <p><b>Key idea.</b> A corner is worth its own time and the speed that it hands on. Each corner is searched for its
 * best release; what its exit adds in speed goes into the next approach as kinetic energy.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.lap.Circuit} is the list of corners; {@link org.foreload.lap.Lap} drives
 * it and ranks the corners by what is to be gained.
 *
 * <p><b>Valid when</b> straights lie between the corners. <b>Neglects</b> the compromise between corners that follow
 * each other at once, and the choice of line. <b>Fails when</b> a carried speed is more than the next corner's brakes
 * can slow: the study of that corner refuses it.
 */
package org.foreload.lap;
