package ovenproof.core.panel.table;

/**
 * How one column was read.
 *
 * @param sheet name of the sheet; empty for a text file
 * @param header as written; "column 1" when there is none
 * @param role what it says
 * @param why what decided that, for a person
 */
public record ColumnReading(String sheet, String header, Role role, String why) {}
