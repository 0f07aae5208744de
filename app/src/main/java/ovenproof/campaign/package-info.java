/**
 * Everything that is known of one campaign at one moment, immutable.
 *
 * <p><b>Where to start.</b> {@link ovenproof.campaign.Campaign}. Folder and desk load and save it;
 * measure, verdict and publish only read it.
 *
 * <p><b>The trap.</b> A run is never edited or deleted. What counts is folded from its entries: a
 * redo supersedes a run but does not hide it, a correction names the entry that it mends.
 *
 * <p><b>Must not use</b> files, the database, the web.
 */
@NullMarked
package ovenproof.campaign;

import org.jspecify.annotations.NullMarked;
