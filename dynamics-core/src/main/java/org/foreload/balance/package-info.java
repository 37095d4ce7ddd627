/**
 * Which brake share, roll stiffness, CG height or downforce makes the quickest entry that still forgives.
 *
 * <p><b>Key idea.</b> Too little brake in front, and the unloaded rear wheels lock first; too much, and the front
 * wheels, which must also steer, do all the work. Between the two lies the share that is quickest; a share a little in
 * front of it is the one to drive with, since a foot that is a little too hard then costs time and not the car.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.balance.BalanceStudy} sweeps one {@link org.foreload.balance.BalanceAxis}
 * of a car and recommends a value, in words; {@link org.foreload.balance.AdhesionUse} is the regulation's picture of a
 * share.
 *
 * <p><b>Valid when</b> the driver model drives each car alike. <b>Neglects</b> that a driver would change line and
 * habit with the car. <b>Fails when</b> differences between values are smaller than the search is fine, a tenth of a
 * second ({@link org.foreload.balance.Balance#ACCURACY}): then the order of neighbours is chance.
 */
package org.foreload.balance;
