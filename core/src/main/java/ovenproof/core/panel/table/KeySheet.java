package ovenproof.core.panel.table;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import ovenproof.core.panel.Rating;

/** A sheet that says which blind code was which product. */
final class KeySheet {

  private KeySheet() {}

  /** Puts names for codes where one of {@code sheets} names every code that was rated. */
  static void apply(List<Grid> sheets, List<FoundMark> found, List<String> notes) {
    Set<String> codes =
        found.stream()
            .map(f -> f.rating().product())
            .collect(Collectors.toCollection(HashSet::new));
    for (Grid sheet : sheets) {
      for (int code = 0; code < sheet.width(); code++) {
        for (int name = 0; name < sheet.width(); name++) {
          Map<String, String> names = code == name ? Map.of() : names(sheet, code, name);
          if (!codes.isEmpty() && names.keySet().containsAll(codes)) {
            found.replaceAll(f -> renamed(f, names));
            notes.add("Codes were replaced by the names in sheet \"" + sheet.sheet() + "\".");
            return;
          }
        }
      }
    }
  }

  /** Code to name where both are written once each and the name is no number; else nothing. */
  private static Map<String, String> names(Grid sheet, int code, int name) {
    Map<String, String> names = new HashMap<>();
    for (Sheet.Row row : sheet.body()) {
      String word = row.cell(name);
      if (row.cell(code).isEmpty() || word.isEmpty() || !Double.isNaN(Mark.parse(word))) {
        return Map.of();
      }
      names.put(row.cell(code), word);
    }
    boolean once = new HashSet<>(names.values()).size() == sheet.body().size();
    return once && names.size() == sheet.body().size() ? names : Map.of();
  }

  private static FoundMark renamed(FoundMark mark, Map<String, String> names) {
    Rating r = mark.rating();
    Rating named =
        new Rating(
            r.assessor(),
            names.getOrDefault(r.product(), r.product()),
            r.session(),
            r.batch(),
            r.attribute(),
            r.value(),
            r.position(),
            r.conditions());
    return new FoundMark(named, mark.sheet(), mark.line(), mark.column(), mark.replicate());
  }
}
