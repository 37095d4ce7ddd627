/**
 * One corner entry, simulated, with events and an outcome.
 *
 * <p><b>Key idea.</b> Car, driver and line are one set of equations over station instead of time: line, release and
 * track edge are given by station. What switches at a known station (a kink of the line, the brake point, the release)
 * is a border between steps; what switches by itself (a wheel locks, the car spins or tips) is located by a root
 * finder. How an entry ends is a value, {@link org.foreload.entry.Outcome}; an exception means only that the equations
 * could not be followed to an end.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.entry.EntrySimulator} drives one car through one corner with one brake
 * plan after another and returns an {@link org.foreload.entry.EntryResult} with events, margins and, where asked for,
 * the profile. {@link org.foreload.entry.SimulationSettings#STANDARD} has numerical defaults only.
 *
 * <p><b>Valid when</b> the car makes way along the line, at heading errors well below a right angle. <b>Neglects</b>
 * all that car, tyre, line and driver neglect, and in a probe what becomes of a car that has come to rest on the
 * straight after the corner. <b>Fails when</b> the car slides sideways or backwards along the line: the run ends before
 * that, as a spin.
 */
package org.foreload.entry;
