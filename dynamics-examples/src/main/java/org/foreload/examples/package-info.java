/**
 * The program {@code foreload}: {@link org.foreload.examples.Main} starts it, {@code command} holds its verbs,
 * {@code file} reads and writes cars and corners, {@code demo} has the embedded ones, {@code output} prints.
 *
 * <p><b>Valid when</b> used from a shell or a script: exit status 0 for done, 2 for a wrong request or file, 1 for a
 * computation that failed. <b>Neglects</b> any window or chart. <b>Fails when</b> never with a stack trace, unless
 * {@code --debug} asks for one.
 */
package org.foreload.examples;
