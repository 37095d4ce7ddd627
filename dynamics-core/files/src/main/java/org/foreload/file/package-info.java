/**
 * Cars and corners as files: strict JSON and CSV in, the same JSON out.
 *
 * <p><b>The one thing to understand:</b> a file is either right or refused in one line that names the file, the field,
 * the value and what is allowed ({@link org.foreload.file.InputException}). Nothing is guessed: an unknown field, a
 * second copy of a field, a number in quotes and a NaN are all refused. Values that are possible but unusual are taken
 * as they are and answered with a {@link org.foreload.file.Warning}.
 *
 * <p><b>Ready pieces:</b> {@link org.foreload.file.CarFile} and {@link org.foreload.file.CornerFile} read and write;
 * {@link org.foreload.file.CentreLineFile} reads a measured line.
 *
 * <p><b>Units</b> are part of each field's name: {@code _m}, {@code _kg}, {@code _mps}, {@code _deg}. Inside the
 * records everything is SI.
 *
 * <p><b>Valid when</b> the file is UTF-8 text of at most 16 MB. <b>Neglects</b> comments and trailing commas: the files
 * are plain JSON, so that every other tool reads them too. <b>Fails when</b> a file changes while it is read.
 */
package org.foreload.file;
