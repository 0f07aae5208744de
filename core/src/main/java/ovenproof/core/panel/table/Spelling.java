package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import ovenproof.core.panel.Rating;

/** Names in two spellings. */
final class Spelling {

  private static final int MOST_WORDS = 400;

  static void ask(List<FoundMark> found, List<String> questions) {
    for (NameKind kind : NameKind.values()) {
      Map<String, Set<String>> company = new TreeMap<>();
      Map<String, Integer> count = new HashMap<>();
      for (FoundMark one : found) {
        String word = kind.of(one.rating());
        if (word != null) {
          company.computeIfAbsent(word, any -> new LinkedHashSet<>());
          count.merge(word, 1, Integer::sum);
        }
      }
      if (company.size() <= MOST_WORDS) {
        for (FoundMark one : found) {
          String word = kind.of(one.rating());
          if (word != null) {
            company.computeIfAbsent(word, any -> new LinkedHashSet<>()).add(rest(one, kind));
          }
        }
        compare(kind, company, count, questions);
      }
    }
  }

  /** The cell without the word itself. */
  private static String rest(FoundMark one, NameKind kind) {
    Rating r = one.rating();
    return (kind == NameKind.ASSESSOR ? "" : r.assessor())
        + "\u0000"
        + (kind == NameKind.PRODUCT ? "" : r.product())
        + "\u0000"
        + (kind == NameKind.SESSION ? "" : r.session())
        + "\u0000"
        + (kind == NameKind.ATTRIBUTE ? "" : r.attribute())
        + "\u0000"
        + one.replicate();
  }

  private static void compare(
      NameKind kind,
      Map<String, Set<String>> company,
      Map<String, Integer> count,
      List<String> questions) {
    List<String> words = new ArrayList<>(company.keySet());
    for (int i = 0; i < words.size(); i++) {
      for (int j = i + 1; j < words.size(); j++) {
        String a = words.get(i);
        String b = words.get(j);
        if (isSuspicious(a, b, company) || isOneBetweenThem(a, b, count)) {
          String fewer = count.getOrDefault(a, 0) < count.getOrDefault(b, 0) ? a : b;
          String more = fewer.equals(a) ? b : a;
          questions.add(
              "Are \""
                  + more
                  + "\" ("
                  + count.get(more)
                  + " marks) and \""
                  + fewer
                  + "\" ("
                  + count.get(fewer)
                  + ") the same among the "
                  + kind.plural
                  + "? They were kept apart; say --same \""
                  + fewer
                  + "="
                  + more
                  + "\" if they are.");
        }
      }
    }
  }

  private static boolean isSuspicious(String a, String b, Map<String, Set<String>> company) {
    String ka = Vocabulary.key(a);
    String kb = Vocabulary.key(b);
    if (ka.equals(kb)) {
      return !ka.isEmpty();
    }
    boolean numbered = ka.matches(".*\\d.*") || kb.matches(".*\\d.*");
    if (numbered) {
      return false;
    }
    return isNear(ka, kb)
        && isDisjoint(company.getOrDefault(a, Set.of()), company.getOrDefault(b, Set.of()));
  }

  private static boolean isNear(String a, String b) {
    int length = Math.min(a.length(), b.length());
    if (length < 3) {
      return false;
    }
    int distance = distance(a, b, 2);
    return distance == 1 || distance == 2 && length >= 7;
  }

  /** Near names that together have no more marks than each other name alone. */
  private static boolean isOneBetweenThem(String a, String b, Map<String, Integer> count) {
    String ka = Vocabulary.key(a);
    String kb = Vocabulary.key(b);
    boolean numbered = ka.matches(".*\\d.*") || kb.matches(".*\\d.*");
    if (numbered || count.size() < 4 || !isNear(ka, kb)) {
      return false;
    }
    int[] others =
        count.entrySet().stream()
            .filter(e -> !e.getKey().equals(a) && !e.getKey().equals(b))
            .mapToInt(Map.Entry::getValue)
            .sorted()
            .toArray();
    return count.getOrDefault(a, 0) + count.getOrDefault(b, 0) <= others[others.length / 2];
  }

  /** Two real people or products mark or get marked side by side; two spellings never. */
  private static boolean isDisjoint(Set<String> a, Set<String> b) {
    Set<String> smaller = a.size() <= b.size() ? a : b;
    Set<String> larger = smaller == a ? b : a;
    long shared = smaller.stream().filter(larger::contains).count();
    return shared <= 0.2 * smaller.size();
  }

  /** Insertions, deletions, replacements; more than {@code limit} counts as limit + 1. */
  private static int distance(String a, String b, int limit) {
    if (Math.abs(a.length() - b.length()) > limit) {
      return limit + 1;
    }
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] row = new int[b.length() + 1];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replace = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(replace, Math.min(last[j], row[j - 1]) + 1);
      }
      last = row;
    }
    return last[b.length()];
  }
}
