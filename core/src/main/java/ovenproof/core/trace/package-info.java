/**
 * What a heating curve says: reading a logger's bytes without being told how, cleaning, and the
 * measures of one trace.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.trace.TraceReader} turns bytes into a {@link
 * ovenproof.core.trace.TraceFile} that says how it was read and what it could not decide. {@link
 * ovenproof.core.trace.TraceMeasures} lists every measure; each takes a {@link
 * ovenproof.core.trace.TraceInput}, whose traces count seconds from the start of their window.
 *
 * <p><b>The trap.</b> A probe is not the air: it lags, shows a cycle smaller than it is, and its
 * calibration error is the same in every run. The calibration and placement of the probe are
 * therefore components with a shared name, and a cycle faster than the probe can follow is refused,
 * not reported small. Samples of a trace are not independent either: a thousand of them are one
 * run.
 *
 * <p><b>Must not use</b> files, clocks, databases or frameworks.
 */
@NullMarked
package ovenproof.core.trace;

import org.jspecify.annotations.NullMarked;
