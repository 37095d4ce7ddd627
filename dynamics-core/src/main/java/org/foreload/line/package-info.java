/**
 * Lines on a road, and what each of them is worth.
 *
 * <p><b>Key idea.</b> A later brake and a trailed release ask for another line than the middle of the road. So the same
 * car is driven by the same perfect hands ({@link org.foreload.limit}) on several lines, between the same two places of
 * the road: the given one, one of constant radius, one with a late apex, and the quickest that is found.
 *
 * <p><b>Ready pieces.</b> {@link org.foreload.line.RoadLine} is a line on a road; read off at even distances it is
 * smooth enough to be driven along by any other part of the library. {@link org.foreload.line.RoadLines} draws lines
 * that know the road only, {@link org.foreload.line.LineStudy} drives them, {@link org.foreload.line.LineRun} is what
 * came out.
 *
 * <p><b>Valid when</b> the road bends one way and the line goes along it everywhere. <b>Neglects</b> what
 * {@link org.foreload.limit} neglects. <b>Fails when</b> the road is hardly wider than the car. The quickest line is
 * the best of three searches, not of all lines.
 */
package org.foreload.line;
