package ovenproof.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * The classes that answer requests, listed in {@code controllers.txt} beside this one: a feature
 * keeps its controller to itself, and nobody searches the jar for it at the start.
 */
final class Controllers {
  private Controllers() {}

  static List<Class<?>> all() {
    return names().<Class<?>>map(Controllers::named).toList();
  }

  private static java.util.stream.Stream<String> names() {
    try (InputStream list = Controllers.class.getResourceAsStream("controllers.txt")) {
      byte[] text = Objects.requireNonNull(list, "controllers.txt").readAllBytes();
      return new String(text, StandardCharsets.UTF_8).lines().filter(line -> !line.isBlank());
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    }
  }

  private static Class<?> named(String name) {
    try {
      return Class.forName(name);
    } catch (ClassNotFoundException missing) {
      throw new IllegalStateException(
          "controllers.txt names " + name + ", which is no class", missing);
    }
  }
}
