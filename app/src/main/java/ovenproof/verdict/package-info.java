/**
 * The verdict: scores with intervals, ranks and tiers of a campaign at one moment.
 *
 * <p><b>Where to start.</b> {@link ovenproof.verdict.Verdict} is the result that screens, site and
 * JSON read.
 *
 * <p><b>The trap.</b> A tier boundary means "worse than that tier's best", nothing more; two
 * products in one tier are not shown to be equal.
 */
@NullMarked
package ovenproof.verdict;

import org.jspecify.annotations.NullMarked;
