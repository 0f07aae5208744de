/**
 * Evidence: files as they came in, and the readers that open them.
 *
 * <p><b>Where to start.</b> {@link ovenproof.evidence.EvidenceSource} gives bytes by name; its
 * sub-packages read traces, photos and rating tables.
 *
 * <p><b>The trap.</b> Evidence is never changed, not even to mend it: a correction is evidence of
 * its own.
 */
@NullMarked
package ovenproof.evidence;

import org.jspecify.annotations.NullMarked;
