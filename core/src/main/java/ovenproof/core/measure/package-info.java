/**
 * What a measurement is, whatever it was taken from.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.measure.Measurement}: value, unit, standard
 * uncertainty with its components, n, and where it came from. {@link
 * ovenproof.core.measure.MeasureDescription} is the one description that screens, exports and
 * documentation read.
 *
 * <p><b>The trap.</b> The deviation between runs already contains what varies within each run. A
 * component named {@link ovenproof.core.measure.Component#RUN} is therefore never added to a
 * between-run deviation; only shared components are.
 */
@NullMarked
package ovenproof.core.measure;

import org.jspecify.annotations.NullMarked;
