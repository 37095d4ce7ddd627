/**
 * What a verb found, and its three faces: a table for people, JSON and CSV for programs.
 *
 * <p><b>The one thing to understand:</b> a {@link org.foreload.examples.output.Report} is filled once, with names that
 * carry their unit ({@code front_axle_load_n}). JSON and CSV use these names as they are; the table reads the unit off
 * the name, writes it in the heading, and rounds. Nothing is printed before the report is complete.
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.examples.output.Report}, {@link org.foreload.examples.output.Format},
 * {@link org.foreload.examples.output.Quantity}.
 *
 * <p><b>Valid when</b> a report fits in memory. <b>Neglects</b> locales: numbers always have a point. <b>Fails when</b>
 * a column's name lacks its unit: the table then shows none.
 */
package org.foreload.examples.output;
