package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import ovenproof.core.panel.Rating;

/** Marks that are places: everybody gave each of 1 … P once. */
final class Ranks {

  private Ranks() {}

  /** One note per attribute whose marks are ranks. */
  static List<String> notes(List<Rating> ratings) {
    Map<String, Map<String, List<Rating>>> byAttribute = new LinkedHashMap<>();
    for (Rating rating : ratings) {
      if (rating.assessor() != null) {
        byAttribute
            .computeIfAbsent(rating.attribute(), any -> new LinkedHashMap<>())
            .computeIfAbsent(
                rating.assessor() + "\u0000" + rating.session(), any -> new ArrayList<>())
            .add(rating);
      }
    }
    List<String> notes = new ArrayList<>();
    byAttribute.forEach(
        (attribute, people) -> {
          if (people.size() >= 3 && people.values().stream().allMatch(Ranks::isOrder)) {
            notes.add(
                "The marks for "
                    + attribute
                    + " are ranks: everybody gave each place once. 1 is read as the first place, so a"
                    + " low mean is a good one, and Friedman's test is the one to believe.");
          }
        });
    return notes;
  }

  private static boolean isOrder(List<Rating> marks) {
    Set<Double> places = new LinkedHashSet<>();
    Set<String> products = new LinkedHashSet<>();
    for (Rating mark : marks) {
      places.add(mark.value());
      products.add(mark.product());
    }
    boolean allPlaces = true;
    for (int place = 1; place <= marks.size(); place++) {
      allPlaces &= places.contains((double) place);
    }
    return marks.size() >= 3 && products.size() == marks.size() && allPlaces;
  }
}
