/**
 * Opening loggers' files: bytes of text or a workbook, within limits, and the run that is measured
 * in them.
 *
 * <p><b>Where to start.</b> {@link ovenproof.evidence.trace.TraceOpener} opens a file; {@link
 * ovenproof.evidence.trace.TraceSession} decides which channel is what, when heat came on, and
 * takes every measure.
 *
 * <p><b>The trap.</b> A logger starts before the appliance does. Times of a run count from heat on,
 * which is found in the record when nobody says it, and said so.
 */
@NullMarked
package ovenproof.evidence.trace;

import org.jspecify.annotations.NullMarked;
