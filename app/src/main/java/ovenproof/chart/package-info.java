/**
 * Pictures of numbers: SVG as text, drawn on the server, the same on a page, in print and on the
 * published site.
 *
 * <p><b>Where to start.</b> {@link ovenproof.chart.ScoreChart} draws a score as a bead in the tray
 * of its interval; {@link ovenproof.chart.LineChart} draws values over time; {@link
 * ovenproof.chart.DotPlot} draws single observations; {@link ovenproof.chart.CurveChart} draws what
 * a measurement is worth.
 *
 * <p><b>The trap.</b> A picture without its interval says more than is known. Whatever is drawn
 * takes a {@link ovenproof.chart.Tray}, and each kind of ignorance has a shape of its own.
 *
 * <p>Horizontal positions are in per cent and vertical ones in pixels, so that text is never
 * stretched. Nothing carries a style attribute (the pages forbid it); classes are those of {@code
 * look.css}. The package depends on nothing of the program.
 */
@NullMarked
package ovenproof.chart;

import org.jspecify.annotations.NullMarked;
