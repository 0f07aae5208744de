package ovenproof.core.panel.table;

/**
 * Something wrong with a cell or row.
 *
 * @param sheet name of the sheet; empty for a text file
 * @param line in the file, 0 when the whole table is meant
 * @param column from 1, 0 when the whole row is meant
 * @param found what stands there
 * @param expected what should
 * @param remedy what was done about it, or what to do
 */
public record TableProblem(
    String sheet, int line, int column, String found, String expected, String remedy) {}
