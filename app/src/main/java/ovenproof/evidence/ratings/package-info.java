/**
 * Rating tables as files: text with any separator, and workbooks.
 *
 * <p><b>Where to start.</b> {@link ovenproof.evidence.ratings.RatingFile}.
 *
 * <p><b>The trap.</b> A file that opens is not yet understood: what the cells mean is decided in
 * {@link ovenproof.core.panel.table}, and said.
 */
@NullMarked
package ovenproof.evidence.ratings;

import org.jspecify.annotations.NullMarked;
