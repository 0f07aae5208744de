/**
 * What readers get: the review site, fragments for other publishing systems, cards and markers for
 * video.
 *
 * <p><b>Where to start.</b> {@link ovenproof.publish.Publisher} writes everything from one {@link
 * ovenproof.publish.edition.Edition}; {@link ovenproof.publish.figure.Figures} decides every digit.
 *
 * <p><b>The trap.</b> A reader adds up what is printed. Totals follow the printed sub-scores, units
 * are converted once from the stored value and rounded last, floors are rounded up, and a word like
 * "best" is used only where the tiers carry it.
 *
 * <p><b>Must not depend on</b> the command line, the web application or the desk; it computes no
 * score.
 */
@NullMarked
package ovenproof.publish;

import org.jspecify.annotations.NullMarked;
