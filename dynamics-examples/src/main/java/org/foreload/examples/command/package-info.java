/**
 * The verbs of the command line.
 *
 * <p><b>The one thing to understand:</b> a {@link org.foreload.examples.command.Verb} turns options into one
 * {@link org.foreload.examples.output.Report}; {@link org.foreload.examples.command.Foreload} parses, runs, prints the
 * report once it is complete, and turns every failure into one line and an exit status (2 for the request, 1 for the
 * computation).
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.examples.command.CommonOptions},
 * {@link org.foreload.examples.command.CarOptions} and {@link org.foreload.examples.command.CornerOptions} are mixed
 * into the verbs, so that an option means the same everywhere.
 *
 * <p><b>Valid when</b> one verb runs per call. <b>Neglects</b> configuration files and environment variables: what
 * counts is on the command line. <b>Fails when</b> standard output cannot be written: status 1, but quiet if the reader
 * has merely gone away.
 */
package org.foreload.examples.command;
