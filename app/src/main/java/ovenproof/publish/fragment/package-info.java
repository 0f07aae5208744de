/**
 * Pieces to copy into any publishing system: tables, facts boxes, for and against, how we tested,
 * captions, alternative texts and a narration sheet.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.fragment.Fragments}.
 *
 * <p><b>The trap.</b> A fragment leaves its page: each carries its intervals, number of runs, date
 * of price and version itself.
 */
@NullMarked
package ovenproof.publish.fragment;

import org.jspecify.annotations.NullMarked;
