package ovenproof.web;

import java.text.Normalizer;
import java.util.Locale;
import java.util.function.Predicate;

/** Makes a key from a name: letters, digits and hyphens. */
public final class Slug {
  private Slug() {}

  /**
   * @param fallback for names without a Latin letter or digit
   * @param taken whether a key is in use; then a number is put behind it
   */
  public static String of(String name, String fallback, Predicate<String> taken) {
    String plain = Normalizer.normalize(name, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
    String key =
        plain.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
    key = key.isEmpty() ? fallback : key.substring(0, Math.min(60, key.length()));
    String free = key;
    for (int n = 2; taken.test(free); n++) {
      free = key + "-" + n;
    }
    return free;
  }
}
