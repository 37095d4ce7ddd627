/**
 * Columns of numbers over distance or time, with units.
 *
 * <p><b>Key idea.</b> A run, simulated or recorded, is a table whose first column is its axis. Columns go by name, and
 * the name carries the unit ({@code speed_mps}), so that a reader of the table needs no second document.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.trace.Trace}, its columns and its builder. Reading and writing files is
 * not here.
 *
 * <p><b>Valid when</b> all columns share one axis. <b>Neglects</b> anything between the rows: how to interpolate is up
 * to who asks. <b>Fails when</b> columns differ in length or share a name: the constructor says so.
 */
package org.foreload.trace;
