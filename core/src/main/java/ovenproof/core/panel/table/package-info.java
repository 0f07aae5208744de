/**
 * Which cell of a rating table means what: people type tables long and wide, with products in rows
 * or in columns, with titles, totals, ages and comments.
 *
 * <p><b>Where to start.</b> {@link ovenproof.core.panel.table.RatingTableReader} takes sheets of
 * cells and gives ratings, how every column was read and why, questions, and problems with their
 * place.
 *
 * <p><b>The trap.</b> A table that is read wrongly still gives numbers. So every decision is said;
 * words that may mean one thing are asked about, never merged; and what stays unread is listed.
 *
 * <p>Knows no files and no separators: text becomes cells elsewhere.
 */
@NullMarked
package ovenproof.core.panel.table;

import org.jspecify.annotations.NullMarked;
