/**
 * Small programs that embed the library: one question each, answered as a story, with numbers that are computed as it
 * runs, and a picture.
 *
 * <p><b>The one thing to understand:</b> a study puts a car and a corner together once; every question is then one
 * call.
 *
 * <p><b>Ready pieces,</b> in the order in which they build on each other:
 * {@link org.foreload.examples.program.FirstStudy}, whose body stands in the README;
 * {@link org.foreload.examples.program.FrictionCircle}, {@link org.foreload.examples.program.GentleBrake},
 * {@link org.foreload.examples.program.TooMuch}, {@link org.foreload.examples.program.WhyTheRearGoes},
 * {@link org.foreload.examples.program.PerfectRelease}, {@link org.foreload.examples.program.HairpinAndFastCorner},
 * {@link org.foreload.examples.program.BrakeBalance}, {@link org.foreload.examples.program.SmoothFoot},
 * {@link org.foreload.examples.program.FourLines}, {@link org.foreload.examples.program.BestPair},
 * {@link org.foreload.examples.program.YourOwnTyre}, {@link org.foreload.examples.program.EmbedIt}. Run one with
 * {@code java -cp foreload.jar org.foreload.examples.program.GentleBrake picture.svg}.
 *
 * <p><b>Valid when</b> read as a start. <b>Neglects</b> options and errors. <b>Fails when</b> a file is wrong: the
 * exception says which field.
 */
package org.foreload.examples.program;
