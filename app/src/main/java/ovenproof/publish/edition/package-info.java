/**
 * What one publication says: its facts in order, and what may be said of them.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.edition.Edition}, then {@link
 * ovenproof.publish.edition.Findings} for the sentences.
 *
 * <p><b>The trap.</b> The first of a list is not the best: two products of one tier are not shown
 * to differ.
 */
@NullMarked
package ovenproof.publish.edition;

import org.jspecify.annotations.NullMarked;
