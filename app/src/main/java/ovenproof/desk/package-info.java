/**
 * One workspace: a database and an evidence folder, and everything that must not be lost in them.
 *
 * <p><b>Where to start.</b> {@link ovenproof.desk.Desk} loads and saves the same immutable {@code
 * Campaign} as a campaign folder does. Data is of three kinds: {@link ovenproof.desk.EvidenceStore
 * evidence} (files by their SHA-256), {@link ovenproof.desk.StoredEntry entries} (appended, mended
 * by later entries) and {@link ovenproof.desk.Document documents} (numbered revisions).
 *
 * <p><b>The trap.</b> "Saved" may be said only when the bytes are on the disk: a file is forced
 * there before the row that names it, and a row before the answer. A request that is sent twice
 * must change things once; therefore the sender makes the key of an entry.
 *
 * <p>Knows Spring's JDBC and transactions, nothing of the web.
 */
@NullMarked
package ovenproof.desk;

import org.jspecify.annotations.NullMarked;
