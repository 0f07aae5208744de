/**
 * From evidence to measurements: the registry of measures, and the pure, cached pipeline.
 *
 * <p><b>Where to start.</b> {@link ovenproof.measure.MeasureRegistry} lists every measure with its
 * description; the pipeline applies those that a method uses.
 *
 * <p><b>The trap.</b> The same measure taken with other parameters is another measurement: the key
 * of a result holds the measure's revision, the fingerprints of the files, the corrections, the
 * calibrations and the parameters.
 */
@NullMarked
package ovenproof.measure;

import org.jspecify.annotations.NullMarked;
