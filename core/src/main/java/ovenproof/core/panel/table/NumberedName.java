package ovenproof.core.panel.table;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names that hold a product and the number of its batch: "Alder #1", "Alder, loaf 2". */
final class NumberedName {

  private static final Pattern NUMBERED =
      Pattern.compile(
          "(.*\\p{L}[^\\d#]*?)[\\s,_#./(-]*(?:batch|loaf|load|lot|no\\.?|nr\\.?|rep)?[\\s_#.-]*(\\d{1,2})\\)?",
          Pattern.CASE_INSENSITIVE);

  private NumberedName() {}

  /** Whether all names are so: at least two products, each with at least two numbers. */
  static boolean all(Collection<String> names) {
    Map<String, Set<String>> numbers = new HashMap<>();
    for (String name : names) {
      Matcher parts = NUMBERED.matcher(name);
      if (!parts.matches()) {
        return false;
      }
      numbers.computeIfAbsent(parts.group(1).strip(), any -> new HashSet<>()).add(parts.group(2));
    }
    return numbers.size() >= 2 && numbers.values().stream().allMatch(n -> n.size() >= 2);
  }

  /** The product; the text itself where it is not so named. */
  static String name(String text) {
    Matcher parts = NUMBERED.matcher(text);
    return parts.matches() ? parts.group(1).strip() : text;
  }
}
