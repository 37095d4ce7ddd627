/**
 * Cars and corners that come with the program, so that every verb runs bare.
 *
 * <p>They are the cars of an invented workshop and the corners of its closed test ground, Tarnhollow, invented too:
 * plausible numbers, measured on nothing. They are ordinary files, read by the ordinary reader; copy one from the jar's
 * {@code demo} folder to start a file of your own.
 *
 * <p><b>Valid when</b> used to learn and to try. <b>Neglects</b> every real car. <b>Fails when</b> taken for data.
 */
package org.foreload.examples.demo;
