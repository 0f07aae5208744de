/**
 * Campaign folders: plain files that any editor or script can make, in and out.
 *
 * <p><b>Where to start.</b> {@link ovenproof.files.CampaignFolder} loads, checks and saves; {@link
 * ovenproof.files.Tables} declares every table and column once, for the reader, the writer, the
 * schemas and {@code docs/files.md}.
 *
 * <p><b>The trap.</b> A desk mends a folder in the order in which it is told of its faults, so all
 * of them are told at once, and one fault must not be told twice: a row that could not be read
 * still lends its key to those that refer to it.
 *
 * <p><b>Must not use</b> the database, the web.
 */
@NullMarked
package ovenproof.files;

import org.jspecify.annotations.NullMarked;
