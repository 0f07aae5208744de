package ovenproof.publish.edition;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Lists and counts as sentences say them. */
public final class Words {
  private static final List<String> SMALL =
      List.of(
          "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve");

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

  private Words() {}

  /** {@code 16 March 2026}. */
  public static String day(LocalDate date) {
    return DAY.format(date);
  }

  /** {@code Alder, Siskin and Rowan}. */
  public static String list(List<String> names) {
    if (names.size() <= 1) {
      return names.isEmpty() ? "" : names.get(0);
    }
    return String.join(", ", names.subList(0, names.size() - 1))
        + " and "
        + names.get(names.size() - 1);
  }

  /** {@code three}, {@code 24}. */
  public static String number(int count) {
    return count >= 0 && count < SMALL.size() ? SMALL.get(count) : Integer.toString(count);
  }

  /** {@code three runs}, {@code one run}. */
  public static String count(int count, String singular, String plural) {
    return number(count) + " " + (count == 1 ? singular : plural);
  }

  public static String capital(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
