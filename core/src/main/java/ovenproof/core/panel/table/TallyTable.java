package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ovenproof.core.panel.Rating;

/**
 * A table that counts marks: one row per product, one column per step of the scale, in the cells
 * how many people gave it. It is told from marks by its header (1, 2, 3 … and nothing else) and by
 * rows that all add up to the size of one panel.
 *
 * @param product the column that names the rows
 * @param steps the columns of the scale's steps
 */
record TallyTable(Grid grid, Column product, List<Column> steps) {

  /** More people than this are no tasting; the table is read as it stands. */
  private static final int MOST_MARKS = 100_000;

  private static final double ROUNDING = 1e-9;

  static Optional<TallyTable> in(Grid grid) {
    if (grid.width() < 4 || grid.body().size() < 2 || !hasStepsAbove(grid)) {
      return Optional.empty();
    }
    List<Column> columns = new ArrayList<>();
    for (int c = 0; c < grid.width(); c++) {
      columns.add(new Column(grid, c));
    }
    Column product = columns.get(0);
    List<Column> steps =
        columns.subList(1, columns.size()).stream()
            .filter(c -> !c.isEmpty() && !Vocabulary.isSummary(c.header))
            .toList();
    TallyTable table = new TallyTable(grid, product, steps);
    boolean named = product.isUnique() && !product.isNumeric();
    return named && table.isScale() && table.isOnePanel() ? Optional.of(table) : Optional.empty();
  }

  private static boolean hasStepsAbove(Grid grid) {
    double first = Mark.parse(grid.header(1));
    return Mark.parse(grid.header(2)) == first + 1 && Mark.parse(grid.header(3)) == first + 2;
  }

  private boolean isScale() {
    for (int s = 0; s < steps.size(); s++) {
      double step = Mark.parse(steps.get(s).header);
      boolean next = s == 0 || step == Mark.parse(steps.get(s - 1).header) + 1;
      if (!next || Double.isNaN(step) || !steps.get(s).whole || steps.get(s).smallest < 0) {
        return false;
      }
    }
    return steps.size() >= 3;
  }

  /** Every row adds up to the same number of people, more than there are steps. */
  private boolean isOnePanel() {
    double[] people = new double[grid.body().size()];
    for (Column step : steps) {
      for (int r = 0; r < people.length; r++) {
        people[r] += Double.isNaN(step.number[r]) ? 0 : step.number[r];
      }
    }
    double first = people[0];
    return first > steps.size()
        && first * people.length <= MOST_MARKS
        && Arrays.stream(people).allMatch(p -> Math.abs(p - first) < ROUNDING);
  }

  /** One mark per person counted; nobody is named. */
  List<FoundMark> marks() {
    List<FoundMark> marks = new ArrayList<>();
    for (Column step : steps) {
      double value = Mark.parse(step.header);
      for (int r = 0; r < grid.body().size(); r++) {
        Rating rating =
            new Rating(null, product.text[r], null, null, "mark", value, null, Map.of());
        FoundMark one =
            new FoundMark(
                rating, grid.sheet(), grid.line(r, step.index), grid.column(r, step.index), null);
        for (int count = 0; count < step.number[r]; count++) {
          marks.add(one);
        }
      }
    }
    return marks;
  }

  List<ColumnReading> columns() {
    List<ColumnReading> all = new ArrayList<>();
    all.add(new ColumnReading(grid.sheet(), product.name(), Role.PRODUCT, "one row each"));
    for (Column step : steps) {
      all.add(
          new ColumnReading(
              grid.sheet(), step.name(), Role.MARK, "how many people gave this mark"));
    }
    return all;
  }

  String note() {
    return "The cells count people: every row adds up to the same number, and the header is a scale."
        + " Each count was read as so many marks of people who are not named.";
  }
}
