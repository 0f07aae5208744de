package ovenproof.core.panel.table;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import ovenproof.core.panel.Rating;

/** Names in two spellings. */
final class Spelling {

  private static final int MOST_WORDS = 400;

  static void ask(List<FoundMark> found, List<String> questions) {
    for (NameKind kind : NameKind.values()) {
      Map<String, Integer> count = new TreeMap<>();
      for (FoundMark one : found) {
        String word = kind.of(one.rating());
        if (word != null) {
          count.merge(word, 1, Integer::sum);
        }
      }
      if (count.size() > 1 && count.size() <= MOST_WORDS) {
        compare(kind, found, count, questions);
      }
    }
  }

  /** Beside whom or what the word's marks stand. */
  private static Set<String> company(String word, NameKind kind, List<FoundMark> found) {
    return found.stream()
        .filter(one -> word.equals(kind.of(one.rating())))
        .map(one -> rest(one, kind))
        .collect(Collectors.toSet());
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
      NameKind kind, List<FoundMark> found, Map<String, Integer> count, List<String> questions) {
    List<String> words = new ArrayList<>(count.keySet());
    List<String> bare = words.stream().map(Vocabulary::key).toList();
    for (int i = 0; i < words.size(); i++) {
      for (int j = i + 1; j < words.size(); j++) {
        String a = words.get(i);
        String b = words.get(j);
        boolean same = bare.get(i).equals(bare.get(j)) && !bare.get(i).isEmpty();
        if (same
            || isNear(bare.get(i), bare.get(j))
                && (isDisjoint(company(a, kind, found), company(b, kind, found))
                    || isOneBetweenThem(a, b, count))) {
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

  /** One or two letters apart; names that end in different numbers are different names. */
  private static boolean isNear(String a, String b) {
    int length = Math.min(a.length(), b.length());
    if (length < 3 || hasDigit(a) || hasDigit(b)) {
      return false;
    }
    int distance = distance(a, b, 2);
    return distance == 1 || distance == 2 && length >= 7;
  }

  private static boolean hasDigit(String text) {
    return text.chars().anyMatch(Character::isDigit);
  }

  /** Near names that together have no more marks than each other name alone. */
  private static boolean isOneBetweenThem(String a, String b, Map<String, Integer> count) {
    if (count.size() < 4) {
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
