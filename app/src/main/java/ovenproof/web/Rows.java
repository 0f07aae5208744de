package ovenproof.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The part of a long list that a page shows, and the way to the rest: a page of a thousand products
 * is no use on a phone. Lists that fit are shown whole, without a word about it.
 *
 * @param shown at most as many as fit a page
 * @param from how many of those found stand before them
 * @param most how many fit a page
 * @param found how many contain what was looked for
 * @param inAll how many there are
 * @param find what was looked for; empty for all
 * @param path of the page
 * @param kept the page's other questions, which its links keep
 */
public record Rows<T>(
    List<T> shown,
    int from,
    int most,
    int found,
    int inAll,
    String find,
    String path,
    Map<String, String> kept) {

  /**
   * @param query what the page was asked: {@code from} and {@code find}, and its own questions
   * @param words what {@code find} is looked for in
   */
  public static <T> Rows<T> of(
      List<T> all, int most, String path, Map<String, String> query, Function<T, String> words) {
    String find = query.getOrDefault("find", "").strip();
    List<T> found =
        find.isEmpty()
            ? all
            : all.stream().filter(t -> plain(words.apply(t)).contains(plain(find))).toList();
    int from = from(query.getOrDefault("from", ""), most, found.size());
    List<T> shown = List.copyOf(found.subList(from, Math.min(found.size(), from + most)));
    Map<String, String> kept = new TreeMap<>(query);
    kept.keySet().removeAll(List.of("from", "find", "_csrf"));
    kept.values().removeIf(String::isEmpty);
    return new Rows<>(shown, from, most, found.size(), all.size(), find, path, kept);
  }

  private static String plain(String words) {
    return words.toLowerCase(Locale.ROOT);
  }

  /** The beginning of a page: what is not one is taken for the nearest. */
  private static int from(String typed, int most, int found) {
    int asked = typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : 0;
    int last = found == 0 ? 0 : (found - 1) / most * most;
    return Math.min(asked / most * most, last);
  }

  /** Whether there is more than the page shows. */
  public boolean isPart() {
    return inAll > most;
  }

  /** Such as {@code 101 to 150 of 1000}. */
  public String words() {
    String of = find.isEmpty() ? "" : " that hold “" + find + "”";
    return found == 0
        ? "none of " + inAll + of
        : (from + 1) + " to " + (from + shown.size()) + " of " + found + of;
  }

  /** Where the rows before these are; empty at the first. */
  public String before() {
    return from == 0 ? "" : link(from - most);
  }

  /** Where the rows after these are; empty at the last. */
  public String after() {
    return from + shown.size() >= found ? "" : link(from + most);
  }

  private String link(int start) {
    Map<String, String> asked = new TreeMap<>(kept);
    asked.put("from", Integer.toString(start));
    if (!find.isEmpty()) {
      asked.put("find", find);
    }
    return asked.entrySet().stream()
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&", path + "?", ""));
  }
}
