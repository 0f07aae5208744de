package ovenproof.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.QuantityFormatException;
import ovenproof.core.quantity.QuantityParser;

/** What is wrong with a form, by field; collects all of it. */
public final class FormProblems {
  private static final int LONGEST = 2000;
  private static final Pattern DEGREES = Pattern.compile("[\\d.,]\\S*\\s*(°\\s*[CFcf]?|[CFK])");
  private final Map<String, String> byField = new LinkedHashMap<>();

  public Map<String, String> byField() {
    return byField;
  }

  public boolean any() {
    return !byField.isEmpty();
  }

  public void add(String field, String sentence) {
    byField.putIfAbsent(field, sentence);
  }

  /** What was typed, without blanks around it; said to be missing when there is nothing. */
  public String need(String field, @Nullable String typed, String expected) {
    String text = typed == null ? "" : typed.strip();
    if (text.isEmpty()) {
      add(field, "Nothing here yet. Expected " + expected + ".");
    } else if (text.length() > LONGEST) {
      add(field, text.length() + " characters; at most " + LONGEST + " fit.");
    }
    return text;
  }

  /** A quantity of the wanted dimension. */
  public Optional<Quantity> quantity(String field, @Nullable String typed, Dimension dimension) {
    String text = need(field, typed, dimension.words() + ", for example " + dimension.example());
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(QuantityParser.parse(text, dimension));
    } catch (QuantityFormatException wrong) {
      add(field, sentence(wrong));
      return Optional.empty();
    }
  }

  /** A day, such as 2026-03-02; empty when nothing was typed. */
  public Optional<LocalDate> day(String field, @Nullable String typed) {
    String text = typed == null ? "" : typed.strip();
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException wrong) {
      add(field, "Found “" + text + "”, expected a day such as 2026-03-02.");
      return Optional.empty();
    }
  }

  /**
   * What stands on a dial: degrees with their unit, or a word of its own. Whatever begins like a
   * number and names degrees must be one: “2o0 °C” is a slip of the hand, not a word on a dial.
   */
  public String dial(String field, @Nullable String typed) {
    String dial = typed == null ? "" : typed.strip();
    if (dial.matches("[\\d.,]+")) {
      add(
          field,
          dial + " what? Add °C or °F, or the word on the dial, such as “shade " + dial + "”.");
    } else if (DEGREES.matcher(dial).matches()) {
      quantity(field, dial, Dimension.TEMPERATURE);
    }
    return dial;
  }

  private static String sentence(QuantityFormatException wrong) {
    String remedy = wrong.remedy().isEmpty() ? "" : " " + capital(wrong.remedy()) + ".";
    return "Found “" + wrong.found() + "”, expected " + wrong.expected() + "." + remedy;
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
  }
}
