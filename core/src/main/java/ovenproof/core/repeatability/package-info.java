/**
 * How much runs of the same product differ, and whether one product or run stands out.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.repeatability.PooledDeviation}: the run-to-run
 * deviation pooled over the field. {@link ovenproof.core.repeatability.OutlierTests} holds
 * Cochran's and Grubbs's tests of ISO 5725-2, {@link ovenproof.core.repeatability.Precision} its
 * repeatability and reproducibility.
 *
 * <p><b>The trap.</b> The standard deviation of three runs is known to within a factor of six:
 * never say "most consistent" from it, never draw an interval from it alone. Pooled over eight
 * products it has sixteen degrees of freedom instead of two.
 */
@NullMarked
package ovenproof.core.repeatability;

import org.jspecify.annotations.NullMarked;
