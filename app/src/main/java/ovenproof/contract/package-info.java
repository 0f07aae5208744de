/**
 * The JSON contract's common shapes: how a measurement is written wherever the program prints JSON.
 *
 * <p><b>Where to start.</b> {@link ovenproof.contract.MeasurementJson}.
 *
 * <p><b>The trap.</b> Others read these documents: later versions only add; a field never changes
 * its meaning or its unit.
 *
 * <p><b>Must not use</b> features: evidence, measure, verdict and the verbs all use it.
 */
@NullMarked
package ovenproof.contract;

import org.jspecify.annotations.NullMarked;
