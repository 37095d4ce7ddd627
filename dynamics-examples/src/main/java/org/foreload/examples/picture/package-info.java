/**
 * Charts as SVG and PNG, in one restrained style: white ground, colours that colour-blind people can distinguish, and
 * always a second cue, a dash pattern, a mark or a label.
 *
 * <p>Key idea: a {@link org.foreload.examples.picture.Picture} is a title, rows of
 * {@linkplain org.foreload.examples.picture.Panel panels}, and a caption that says what to see. Text is measured by a
 * table and not by the machine's fonts, so the same picture has the same bytes on every machine; SVG needs no font at
 * all.
 *
 * <p>Ready pieces: {@link org.foreload.examples.picture.XyChart} (lines, points, areas, marks),
 * {@link org.foreload.examples.picture.ChartStack} (several over one axis),
 * {@link org.foreload.examples.picture.BarChart}; {@link org.foreload.examples.picture.PictureFile} checks a place
 * before the work and writes after it. the work and writes after it. What the pictures show is said in
 * {@code org.foreload.examples.gallery}.
 */
package org.foreload.examples.picture;
