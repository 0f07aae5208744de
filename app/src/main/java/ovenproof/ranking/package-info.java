/**
 * Pages: the verdict as pages: from the ranking down to a run and its file.
 *
 * <p><b>Where to start.</b> VerdictController, and the templates of the same name.
 *
 * <p><b>The trap.</b> Every score on a page is one click from what it was computed from; a score
 * without that way does not belong there.
 *
 * <p>Depends on the desk and the web frame; nothing depends on it.
 */
@NullMarked
package ovenproof.ranking;

import org.jspecify.annotations.NullMarked;
