package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.panel.Rating;

/**
 * A table of placings: one row per person, one column per place, in the cells the products ("1st",
 * "2nd", "3rd").
 *
 * @param person the column that names the rows; null when there is none
 * @param places the columns in order of place
 */
record PlacingsTable(Grid grid, @Nullable Column person, List<Column> places) {

  private static final Pattern PLACE =
      Pattern.compile(
          "(?:(?:rank|place|position|pos|platz|rang|choice)[ _.#-]*)?(\\d{1,2})"
              + "(?:st|nd|rd|th|\\.|º|ª|er|e|ème)?(?:[ _-]*(?:place|choice|rank|platz|lugar))?");

  private static final List<String> ORDINALS =
      List.of("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth");

  static Optional<PlacingsTable> in(Grid grid) {
    List<Column> places = new ArrayList<>();
    Column person = null;
    boolean placed = IntStream.range(0, grid.width()).anyMatch(c -> place(grid.header(c)) == 3);
    if (!placed) {
      return Optional.empty();
    }
    for (int c = 0; c < grid.width(); c++) {
      Column column = new Column(grid, c);
      if (!column.isNumeric() && place(column.header) == places.size() + 1) {
        places.add(column);
      } else if (places.isEmpty() && column.isUnique()) {
        person = column;
      }
    }
    PlacingsTable table = new PlacingsTable(grid, person, places);
    return places.size() >= 3 && grid.body().size() >= 2 && table.placesEachOnce()
        ? Optional.of(table)
        : Optional.empty();
  }

  /** The place that a header names; 0 when none. */
  private static int place(String header) {
    String folded = Vocabulary.fold(header);
    Matcher number = PLACE.matcher(folded);
    return number.matches()
        ? Integer.parseInt(number.group(1))
        : 1 + ORDINALS.indexOf(folded.replaceAll("[ _-]*(place|choice|rank)$", ""));
  }

  /** Every row deals the same few names out, none twice. */
  private boolean placesEachOnce() {
    Set<String> names = new HashSet<>();
    for (int r = 0; r < grid.body().size(); r++) {
      Set<String> row = new HashSet<>();
      for (Column place : places) {
        if (!Mark.isMissing(place.text[r]) && !row.add(place.text[r])) {
          return false;
        }
      }
      names.addAll(row);
    }
    return names.size() <= 2 * places.size() && names.size() >= places.size();
  }

  List<FoundMark> marks() {
    List<FoundMark> marks = new ArrayList<>();
    for (int r = 0; r < grid.body().size(); r++) {
      String name = person == null ? "row " + (r + 1) : person.text[r];
      for (int p = 0; p < places.size(); p++) {
        Column place = places.get(p);
        if (!Mark.isMissing(place.text[r])) {
          Rating rating =
              new Rating(name, place.text[r], null, null, "place", p + 1, null, Map.of());
          marks.add(
              new FoundMark(
                  rating,
                  grid.sheet(),
                  grid.line(r, place.index),
                  grid.column(r, place.index),
                  null));
        }
      }
    }
    return marks;
  }

  List<ColumnReading> columns() {
    List<ColumnReading> all = new ArrayList<>();
    if (person != null) {
      all.add(new ColumnReading(grid.sheet(), person.name(), Role.ASSESSOR, "one row each"));
    }
    for (Column place : places) {
      all.add(
          new ColumnReading(
              grid.sheet(), place.name(), Role.PRODUCT, "the product that took this place"));
    }
    return all;
  }
}
