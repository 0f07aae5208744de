package ovenproof.core.panel.table;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Sheets that use different words for what may be the same. */
final class SheetWords {

  static void ask(List<String> sheets, List<FoundMark> found, String use, List<String> questions) {
    for (NameKind kind : NameKind.values()) {
      if (kind.name().toLowerCase(Locale.ROOT).equals(use)) {
        continue;
      }
      Map<String, Set<String>> bySheet = new LinkedHashMap<>();
      sheets.forEach(s -> bySheet.put(s, new LinkedHashSet<>()));
      for (FoundMark one : found) {
        String word = kind.of(one.rating());
        if (word != null) {
          bySheet.computeIfAbsent(one.sheet(), any -> new LinkedHashSet<>()).add(word);
        }
      }
      for (int i = 0; i < sheets.size(); i++) {
        for (int j = i + 1; j < sheets.size(); j++) {
          compare(kind, sheets.get(i), sheets.get(j), bySheet, questions);
        }
      }
    }
  }

  private static void compare(
      NameKind kind,
      String first,
      String second,
      Map<String, Set<String>> bySheet,
      List<String> questions) {
    Set<String> onlyFirst = new LinkedHashSet<>(bySheet.getOrDefault(first, Set.of()));
    onlyFirst.removeAll(bySheet.getOrDefault(second, Set.of()));
    Set<String> onlySecond = new LinkedHashSet<>(bySheet.getOrDefault(second, Set.of()));
    onlySecond.removeAll(bySheet.getOrDefault(first, Set.of()));
    boolean some = onlyFirst.size() < bySheet.getOrDefault(first, Set.of()).size();
    boolean few = onlyFirst.size() + onlySecond.size() <= 6;
    if (!onlyFirst.isEmpty() && !onlySecond.isEmpty() && (some || few)) {
      questions.add(
          "Sheets \""
              + first
              + "\" and \""
              + second
              + "\" use different words for "
              + kind.plural
              + ": only in the first "
              + String.join(", ", onlyFirst)
              + "; only in the second "
              + String.join(", ", onlySecond)
              + ". Are some of them the same? They were kept apart; say --same \"WORD=MEANT\".");
    }
  }
}
