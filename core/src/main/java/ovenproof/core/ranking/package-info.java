/**
 * Which differences between products are real: tiers, rank sets, probabilities.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.ranking.FieldComparison} takes estimates and the
 * draws of their errors, and returns a {@link ovenproof.core.ranking.Comparison}.
 *
 * <p><b>The trap.</b> Ten identical ovens lie three standard errors apart from best to worst by
 * luck alone; a rule that looks at one pair at a time splits nearly every such field. Tiers and
 * rank sets here use one margin for the whole field, and probabilities are pulled towards the field
 * as far as the field says they should be.
 *
 * <p><b>Must not depend on</b> how scores came about.
 */
@NullMarked
package ovenproof.core.ranking;

import org.jspecify.annotations.NullMarked;
