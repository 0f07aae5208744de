package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import ovenproof.core.panel.Rating;

/** Repeated servings by design, or a row typed twice? */
final class Duplicates {

  static List<Rating> settle(
      List<FoundMark> found, List<TableProblem> problems, List<String> notes) {
    Map<String, List<FoundMark>> cells = new LinkedHashMap<>();
    for (FoundMark one : found) {
      cells.computeIfAbsent(key(one), any -> new ArrayList<>()).add(one);
    }
    if (isDesigned(cells)) {
      noteRepetitions(cells, notes);
      return found.stream().map(FoundMark::rating).toList();
    }
    List<Rating> ratings = new ArrayList<>();
    for (List<FoundMark> cell : cells.values()) {
      if (cell.size() > 1) {
        problems.add(problem(cell));
      }
      ratings.add(mean(cell));
    }
    return ratings;
  }

  private static String key(FoundMark one) {
    Rating r = one.rating();
    return r.assessor()
        + "\u0000"
        + r.product()
        + "\u0000"
        + r.session()
        + "\u0000"
        + r.batch()
        + "\u0000"
        + r.attribute()
        + "\u0000"
        + one.replicate()
        + "\u0000"
        + r.conditions();
  }

  /**
   * Repetition is designed when nobody is named, when most cells have more than one mark, or when
   * nearly everybody marked the same products (a blind duplicate), or at least some product, more
   * than once: rows typed twice happen to few.
   */
  private static boolean isDesigned(Map<String, List<FoundMark>> cells) {
    long repeated = cells.values().stream().filter(c -> c.size() > 1).count();
    if (repeated == 0) {
      return true;
    }
    boolean named = cells.values().stream().allMatch(c -> c.get(0).rating().assessor() != null);
    if (!named || repeated >= 0.5 * cells.size() || nearlyEverybodyRepeats(cells)) {
      return true;
    }
    Map<String, int[]> byProduct = new HashMap<>();
    for (List<FoundMark> cell : cells.values()) {
      Rating r = cell.get(0).rating();
      int[] count =
          byProduct.computeIfAbsent(r.product() + "\u0000" + r.attribute(), any -> new int[2]);
      count[0]++;
      count[1] += cell.size() > 1 ? 1 : 0;
    }
    return byProduct.values().stream().allMatch(c -> c[1] == 0 || c[0] > 1 && c[1] >= 0.7 * c[0]);
  }

  private static boolean nearlyEverybodyRepeats(Map<String, List<FoundMark>> cells) {
    Set<String> people = new HashSet<>();
    Set<String> repeating = new HashSet<>();
    for (List<FoundMark> cell : cells.values()) {
      String person = String.valueOf(cell.get(0).rating().assessor());
      people.add(person);
      if (cell.size() > 1) {
        repeating.add(person);
      }
    }
    return people.size() >= 4 && repeating.size() >= 0.7 * people.size();
  }

  private static void noteRepetitions(Map<String, List<FoundMark>> cells, List<String> notes) {
    int most = cells.values().stream().mapToInt(List::size).max().orElse(0);
    boolean named = cells.values().stream().allMatch(c -> c.get(0).rating().assessor() != null);
    if (most > 1 && named) {
      notes.add(
          "People marked a product up to "
              + most
              + " times without further distinction: read as repeated servings.");
    }
  }

  private static TableProblem problem(List<FoundMark> cell) {
    FoundMark first = cell.get(0);
    Rating r = first.rating();
    String lines =
        cell.stream().map(f -> String.valueOf(f.line())).collect(Collectors.joining(", "));
    String values =
        cell.stream()
            .map(f -> String.valueOf(f.rating().value()))
            .collect(Collectors.joining(", "));
    return new TableProblem(
        first.sheet(),
        cell.get(1).line(),
        cell.get(1).column(),
        r.assessor()
            + " marked "
            + r.product()
            + " ("
            + r.attribute()
            + ") "
            + cell.size()
            + " times: "
            + values
            + " in lines "
            + lines,
        "one mark",
        "their mean was used");
  }

  private static Rating mean(List<FoundMark> cell) {
    Rating r = cell.get(0).rating();
    double mean = cell.stream().mapToDouble(f -> f.rating().value()).average().orElse(r.value());
    return cell.size() == 1
        ? r
        : new Rating(
            r.assessor(),
            r.product(),
            r.session(),
            r.batch(),
            r.attribute(),
            mean,
            r.position(),
            r.conditions());
  }
}
