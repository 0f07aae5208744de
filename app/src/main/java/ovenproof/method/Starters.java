package ovenproof.method;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The methods that the program ships with, to begin from. */
public final class Starters {
  private static final List<String> NAMES =
      List.of("countertop-ovens", "toasters", "basket-air-fryers");

  private Starters() {}

  public static List<String> names() {
    return NAMES;
  }

  /**
   * The text of {@code method.yaml}, comments included.
   *
   * @throws IllegalArgumentException if there is no such starter
   */
  public static String text(String name) {
    if (!NAMES.contains(name)) {
      throw new IllegalArgumentException("name must be one of " + NAMES + ", found " + name);
    }
    try (InputStream in = Starters.class.getResourceAsStream("starters/" + name + ".yaml")) {
      if (in == null) {
        throw new IllegalStateException("the starter " + name + " is missing from the program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
