/**
 * Small programs that embed the core: the shortest way from files to an answer.
 *
 * <p><b>The one thing to understand:</b> a study puts a car and a corner together once; every question is then one
 * call.
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.examples.program.FirstStudy}, whose body stands in the README.
 *
 * <p><b>Valid when</b> read as a start. <b>Neglects</b> options and errors. <b>Fails when</b> a file is wrong: the
 * exception says which field.
 */
package org.foreload.examples.program;
