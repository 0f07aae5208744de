package ovenproof.core.panel.table;

import java.util.List;
import java.util.Map;
import ovenproof.core.panel.Rating;

/**
 * A rating table, read.
 *
 * @param ratings every mark that can be used
 * @param layout where products and people stand
 * @param columns how every column was read
 * @param scales per attribute, the scale its marks seem to be given on, e.g. "1 to 9, whole
 *     numbers"
 * @param missing cells that could hold a mark and do not
 * @param problems wrong cells, all of them
 * @param questions what a person must answer, because guessing would merge or separate silently
 * @param notes how the table was read, in sentences
 */
public record ReadTable(
    List<Rating> ratings,
    Layout layout,
    List<ColumnReading> columns,
    Map<String, String> scales,
    int missing,
    List<TableProblem> problems,
    List<String> questions,
    List<String> notes) {

  public ReadTable {
    ratings = List.copyOf(ratings);
    columns = List.copyOf(columns);
    problems = List.copyOf(problems);
    questions = List.copyOf(questions);
    notes = List.copyOf(notes);
  }
}
