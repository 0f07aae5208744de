package ovenproof.core.panel.table;

import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.Rating;

/**
 * A mark with where it stood.
 *
 * @param line in the file, from 1
 * @param column from 1
 * @param replicate which repetition, when the table says so
 */
record FoundMark(Rating rating, String sheet, int line, int column, @Nullable String replicate) {}
